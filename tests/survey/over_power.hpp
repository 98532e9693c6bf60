#pragma once
// A distance over the power, read between the points that a chart has.
#include "survey/keying_outlines.hpp"

#include <cmath>
#include <optional>
#include <vector>

namespace loopwright::survey {

/// The upper end at a power [m], straight in the logarithms; nothing where it is not established there.
[[nodiscard]] inline std::optional<double> upper_end_at(const std::vector<DistanceAtPower>& all,
                                                        double watts) {
    for (std::size_t i = 1; i < all.size(); ++i) {
        const DistanceAtPower &low = all[i - 1], &high = all[i];
        if (low.power.value() <= watts && watts < high.power.value() && low.upper && high.upper) {
            const double part =
                std::log(watts / low.power.value()) / std::log((high.power / low.power).value());
            return low.upper->value() * std::pow((*high.upper / *low.upper).value(), part);
        }
    }
    return std::nullopt;
}

} // namespace loopwright::survey
