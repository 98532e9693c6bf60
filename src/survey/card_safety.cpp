#include "survey/card_safety.hpp"

#include "survey/detail/keying_band.hpp"

#include <algorithm>

namespace loopwright::survey {
namespace {

bool asks_more(const Keying& keying, const CardRow& row) {
    KeyingRequest other = keying.request;
    other.design.station.emission = row.emission.id;
    other.design.station.use.reset(); // the habit of the design belongs to its own emission
    const auto held = detail::held_limits(keying.request, row.tuned());
    const auto others = detail::held_limits(other, row.tuned());
    for (std::size_t i = 0; i < std::min(held.size(), others.size()); ++i) {
        if (others[i].tier == exposure::Tier::general_public && others[i].duty > held[i].duty * (1 + 1e-9)) {
            return true;
        }
    }
    return false;
}

} // namespace

std::vector<band::Emission> emissions_asking_more(const Card& card, const Keying& keying) {
    std::vector<band::Emission> all;
    for (const CardRow& row : card.rows) {
        const bool there = std::any_of(all.begin(), all.end(), [&row](const band::Emission& each) {
            return each.id == row.emission.id;
        });
        if (!there && row.emission.id != keying.request.design.station.emission && !row.emission.id.empty() &&
            asks_more(keying, row)) {
            all.push_back(row.emission);
        }
    }
    return all;
}

CardSafety safety_of(const Keying& keying) {
    CardSafety safety;
    if (keying.request.design.station.reach) {
        safety.reach = keying.request.design.station.reach->value;
    }
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
