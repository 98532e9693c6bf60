#include "exposure/detail/worst_curve.hpp"

#include "units/constants.hpp"

#include <algorithm>
#include <cmath>
#include <iterator>
#include <utility>

namespace loopwright::exposure::detail {

namespace {

using units::constants::pi;

// Of the distance: where the worst place stays, and where another becomes the worst.
constexpr double close_enough = 0.018, close_enough_at_a_kink = 0.003;
constexpr double close_enough_m = 1e-3;
constexpr double same_azimuth_rad = 0.2, same_share = 0.12;

using Entry = std::pair<const double, WorstSample>;

bool close(const Entry& low, const Entry& high) {
    const double width = high.first - low.first;
    const bool same_place = std::abs(std::remainder(low.second.azimuth_rad - high.second.azimuth_rad,
                                                    2 * pi)) < same_azimuth_rad &&
                            std::abs(low.second.share - high.second.share) < same_share;
    const double enough = same_place ? close_enough : close_enough_at_a_kink;
    return width <= close_enough_m || (!std::isinf(low.second.square) && width <= enough * low.first);
}

} // namespace

WorstCurve::Samples::iterator WorstCurve::sample(double distance_m, const Make& make) {
    const auto above = samples_.lower_bound(distance_m);
    if (above != samples_.end() && above->first == distance_m) {
        return above;
    }
    const WorstSample* outer = above == samples_.end() ? nullptr : &above->second;
    const WorstSample* inner = above == samples_.begin() ? nullptr : &std::prev(above)->second;
    return samples_.emplace_hint(above, distance_m, make(distance_m, inner, outer));
}

const WorstSample& WorstCurve::at(double distance_m, const Make& make) {
    return sample(distance_m, make)->second;
}

WorstCurve::Crossing WorstCurve::crossing(double inside_m, double outside_m, double square,
                                          const Make& make) {
    const auto innermost = sample(inside_m, make);
    auto high = sample(outside_m, make);
    while (std::prev(high) != innermost && std::prev(high)->second.square < square) {
        --high;
    }
    auto low = std::prev(high);
    while (!close(*low, *high)) {
        const double middle =
            low->first > 0 ? std::sqrt(low->first * high->first) : 0.5 * (low->first + high->first);
        const auto between = sample(middle, make);
        (between->second.square < square ? high : low) = between;
    }
    if (std::isinf(low->second.square)) {
        return {high->first, high->second, true};
    }
    const double fall = std::log(low->second.square / high->second.square);
    const double part = fall > 0 ? std::clamp(std::log(low->second.square / square) / fall, 0.0, 1.0) : 1.0;
    const double distance = low->first > 0 ? low->first * std::pow(high->first / low->first, part)
                                           : low->first + part * (high->first - low->first);
    return {distance, part < 0.5 ? low->second : high->second, false};
}

} // namespace loopwright::exposure::detail
