#include "survey/card_safety.hpp"

#include <algorithm>

namespace loopwright::survey {
namespace {

/// Over the public limits of a band; nothing where one is missing or none was held.
std::optional<units::Power> tuning_power(const KeyingBand& band) {
    std::optional<units::Power> least;
    for (const KeyingDistance& d : band.distances) {
        if (d.tier != exposure::Tier::general_public) {
            continue;
        }
        if (!d.power_for_tuning) {
            return std::nullopt;
        }
        least = least ? std::min(*least, *d.power_for_tuning) : *d.power_for_tuning;
    }
    return least;
}

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
        const auto power = tuning_power(band);
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
