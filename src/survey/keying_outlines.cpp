#include "survey/keying_outlines.hpp"

#include "base/stopped.hpp"
#include "design/validation.hpp"
#include "survey/detail/keying_band.hpp"
#include "survey/detail/remembered_surroundings.hpp"

#include <algorithm>
#include <cmath>
#include <functional>

namespace loopwright::survey {

namespace {

constexpr int azimuths = 72, powers = 24;

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

/// upper_ratio: nothing where no upper end is known.
void fill_power(TierOutlines& tier, const exposure::FieldLimit& fields, std::optional<double> upper_ratio,
                Surroundings& around) {
    const auto distance = [&](double watts) {
        const auto found = around.farthest(threshold_of(fields, watts * tier.duty));
        return found ? std::optional(found->distance) : std::nullopt;
    };
    for (int i = 0; i < powers; ++i) {
        const double watts = lowest_power_W * std::pow(highest_power_W / lowest_power_W, i / (powers - 1.0));
        tier.over_power.push_back({units::watts(watts), distance(watts),
                                   upper_ratio ? distance(*upper_ratio * watts) : std::nullopt});
    }
}

using Step = std::function<void(const std::function<void(Surroundings&)>&)>;

void fill_outline(Outline& outline, const Threshold& threshold, const KeyingOutlines& all, const Step& step) {
    step([&](Surroundings& around) {
        outline.from_above = exposure::outline_from_above({{&around, threshold}}, azimuths);
    });
    step([&](Surroundings& around) {
        outline.side = exposure::outline_from_the_side({{&around, threshold}}, all.side_azimuth);
    });
}

/// The power that puts the nominal outline at the upper end, over the power; 1 where the end is no farther.
double power_ratio(Surroundings& around, const Threshold& threshold, units::Length upper) {
    const double share = around.worst_share(threshold, upper);
    return share > 0 && share < 1 ? 1 / share : 1;
}

/// Also returns the power ratio.
std::optional<double> fill_upper(TierOutlines& tier, const std::vector<UpperEnd>& upper,
                                 const exposure::FieldLimit& fields, double averaged_W,
                                 const KeyingOutlines& all, const Step& step) {
    const auto given =
        std::find_if(upper.begin(), upper.end(), [&](const UpperEnd& end) { return end.tier == tier.tier; });
    if (given == upper.end() || !tier.farthest) {
        return std::nullopt;
    }
    double ratio = 1;
    step([&](Surroundings& around) {
        ratio = power_ratio(around, threshold_of(fields, averaged_W), given->distance);
    });
    tier.upper_distance = given->distance;
    if (ratio == 1) {
        tier.upper = tier.nominal;
    } else {
        fill_outline(tier.upper.emplace(), threshold_of(fields, ratio * averaged_W), all, step);
    }
    return ratio;
}

/// One more tier of `all`. Throws base::Stopped after a stop.
void add_tier(KeyingOutlines& all, const detail::HeldLimit& one, const std::vector<UpperEnd>& upper,
              const Step& step) {
    TierOutlines tier;
    all.standard = one.standard;
    tier.tier = one.tier;
    tier.from_memory = one.fields.from_memory;
    tier.duty = one.duty;
    const double averaged_W = one.duty * all.design.station.power.value.value();
    const Threshold threshold = threshold_of(one.fields, averaged_W);
    step([&](Surroundings& around) {
        tier.farthest = around.farthest(threshold);
        if (tier.farthest && all.tiers.empty()) {
            all.side_azimuth = tier.farthest->azimuth;
        }
    });
    fill_outline(tier.nominal, threshold, all, step);
    const auto ratio = fill_upper(tier, upper, one.fields, averaged_W, all, step);
    step([&](Surroundings& around) { fill_power(tier, one.fields, ratio, around); });
    all.tiers.push_back(std::move(tier));
}

} // namespace

std::vector<UpperEnd> upper_ends(const Keying& keying, const KeyingBand& band, const std::string& limit) {
    std::vector<UpperEnd> ends;
    for (const KeyingDistance& d : band.distances) {
        if (keying.request.intervals && d.limit == limit && d.farthest) {
            ends.push_back({d.tier, d.range.high});
        }
    }
    return ends;
}

std::optional<KeyingOutlines> keying_outlines(const design::Design& design, units::Frequency frequency,
                                              const std::string& limit, const base::StopToken& stop,
                                              const std::vector<UpperEnd>& upper) {
    design::require_valid(design);
    KeyingOutlines all;
    all.design = design;
    all.frequency = frequency;
    all.limit = limit;
    const std::vector<detail::HeldLimit> held = tiers_of(design, frequency, limit);
    try {
        const auto shared = detail::surroundings_of(design, frequency, stop);
        if (!shared->around) {
            return std::nullopt;
        }
        // A lock a step: the sheet of all bands asks the same surroundings.
        const Step step = [&](const std::function<void(Surroundings&)>& work) {
            base::leave_if_stopped(stop);
            const std::lock_guard lock(shared->mutex);
            shared->around->heed(stop);
            work(*shared->around);
        };
        for (const detail::HeldLimit& one : held) {
            add_tier(all, one, upper, step);
        }
        all.complete = true;
    } catch (const base::Stopped&) {
        all.complete = false;
    }
    return all;
}

} // namespace loopwright::survey
