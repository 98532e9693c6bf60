#include "survey/keying_outlines.hpp"

#include "design/validation.hpp"
#include "survey/detail/keying_band.hpp"
#include "survey/detail/remembered_surroundings.hpp"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace loopwright::survey {

namespace {

constexpr int azimuths = 72, powers = 24;
constexpr double height_step_m = 0.1, above_loop_m = 1.5, least_top_m = 2.5, highest_top_m = 25;

using exposure::Surroundings;
using exposure::Threshold;

Threshold threshold_of(const exposure::FieldLimit& fields, double averaged_W) {
    const double root = std::sqrt(averaged_W);
    return {fields.electric.value() / root, fields.magnetic.value() / root};
}

std::vector<detail::HeldLimit> tiers_of(const design::Design& design, units::Frequency frequency,
                                        const std::string& limit) {
    const bool is_own = limit.rfind("own_", 0) == 0; // exposure::own_limit()
    KeyingRequest request;
    request.design = design;
    if (!is_own) {
        request.limits = {limit};
    }
    std::vector<detail::HeldLimit> held = detail::held_limits(request, frequency);
    held.erase(std::remove_if(held.begin(), held.end(), [&](const auto& h) { return h.id != limit; }),
               held.end());
    return held;
}

/// From the ground (free space: from below the loop) to above loop and people.
std::vector<units::Length> heights_for(const design::Design& design, double loop_top_m) {
    const bool free = design.site.ground.kind == design::GroundKind::free_space;
    const double people_m = design.site.standing_level.value.value() + least_top_m;
    const double top = std::min(highest_top_m, free ? loop_top_m + above_loop_m
                                                    : std::max(people_m, loop_top_m + above_loop_m));
    std::vector<units::Length> heights;
    const double from = free ? -top : 0.0;
    const int steps = static_cast<int>(std::ceil((top - from) / height_step_m));
    for (int i = 0; i <= steps; ++i) {
        heights.push_back(units::metres(from + (top - from) * i / steps));
    }
    return heights;
}

void fill_power(TierOutlines& tier, const exposure::FieldLimit& fields, Surroundings& around) {
    for (int i = 0; i < powers; ++i) {
        const double watts = lowest_power_W * std::pow(highest_power_W / lowest_power_W, i / (powers - 1.0));
        const auto found = around.farthest(threshold_of(fields, watts * tier.duty));
        tier.over_power.push_back(
            {units::watts(watts), found ? std::optional(found->distance) : std::nullopt});
    }
}

} // namespace

std::optional<KeyingOutlines> keying_outlines(const design::Design& design, units::Frequency frequency,
                                              const std::string& limit, const base::StopToken& stop) {
    design::require_valid(design);
    KeyingOutlines all;
    all.design = design;
    all.frequency = frequency;
    all.limit = limit;
    const std::vector<detail::HeldLimit> held = tiers_of(design, frequency, limit);
    const auto shared = detail::surroundings_of(design, frequency, true);
    if (!shared->around) {
        return std::nullopt;
    }
    for (const detail::HeldLimit& one : held) {
        TierOutlines tier;
        all.standard = one.standard;
        tier.tier = one.tier;
        tier.from_memory = one.fields.from_memory;
        tier.duty = one.duty;
        const double averaged_W = one.duty * design.station.power.value.value();
        const Threshold threshold = threshold_of(one.fields, averaged_W);
        // A lock a step: the sheet of all bands asks the same surroundings.
        const auto step = [&](const auto& work) {
            if (!stop.stop_requested()) {
                const std::lock_guard lock(shared->mutex);
                work(*shared->around);
            }
        };
        step([&](Surroundings& around) {
            if (all.heights.empty()) {
                all.heights = heights_for(design, around.capacitor_place_m()[2]);
            }
            tier.farthest = around.farthest(threshold);
            if (tier.farthest && all.tiers.empty()) {
                all.side_azimuth = tier.farthest->azimuth;
            }
        });
        step([&](Surroundings& around) { tier.from_above = around.outline(threshold, azimuths); });
        step([&](Surroundings& around) {
            tier.toward = around.side_outline(threshold, all.side_azimuth, all.heights);
        });
        step([&](Surroundings& around) {
            tier.away = around.side_outline(threshold, all.side_azimuth + units::radians(std::numbers::pi),
                                            all.heights);
        });
        step([&](Surroundings& around) { fill_power(tier, one.fields, around); });
        if (stop.stop_requested()) {
            return all;
        }
        all.tiers.push_back(std::move(tier));
    }
    all.complete = true;
    return all;
}

} // namespace loopwright::survey
