#include "survey/card_safety.hpp"

#include <algorithm>

namespace loopwright::survey {
namespace {

void add_voltage(CardSafety& safety, const Keying& keying) {
    for (const KeyingBand& band : keying.bands) {
        if (band.verdict != KeyingVerdict::out_of_reach && !band.point.resonance) {
            safety.voltage_complete = false;
        }
    }
    if (const KeyingBand* worst = worst_voltage(keying)) {
        safety.voltage_peak = worst->voltage_peak.high;
        safety.voltage_band = worst->band;
        safety.usable_voltage = worst->usable_voltage;
    }
}

} // namespace

CardSafety safety_of(const Keying& keying) {
    CardSafety safety;
    if (keying.request.design.station.reach) {
        safety.reach = keying.request.design.station.reach->value;
    }
    add_voltage(safety, keying);
    bool first = true, known = true;
    for (const KeyingBand& band : keying.bands) {
        if (band.verdict == KeyingVerdict::out_of_reach) {
            continue;
        }
        const auto power = least_power_for_tuning(band);
        known = known && power;
        if (known) {
            safety.tuning_power = first ? *power : std::min(*safety.tuning_power, *power);
        }
        first = false;
    }
    if (!known) {
        safety.tuning_power.reset();
    }
    const LargestDistance largest = largest_distance(keying);
    if (largest.distance != nullptr && largest.complete) {
        safety.distance = largest.distance->range.high;
        safety.distance_band = largest.band->band;
        safety.distance_standard = largest.distance->standard;
    }
    return safety;
}

} // namespace loopwright::survey
