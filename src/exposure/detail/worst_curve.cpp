#include "exposure/detail/worst_curve.hpp"

#include "units/constants.hpp"

#include <algorithm>
#include <cmath>
#include <utility>
#include <vector>

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

WorstCurve::Place WorstCurve::alone(double distance_m, const Make& make) {
    const auto found = samples_.find(distance_m);
    return found != samples_.end() ? found
                                   : samples_.emplace(distance_m, make(distance_m, nullptr, nullptr)).first;
}

WorstCurve::Place WorstCurve::middle(Place inner, Place outer, const Make& make) {
    const double distance_m =
        inner->first > 0 ? std::sqrt(inner->first * outer->first) : 0.5 * (inner->first + outer->first);
    const auto found = samples_.find(distance_m);
    return found != samples_.end()
               ? found
               : samples_.emplace(distance_m, make(distance_m, &inner->second, &outer->second)).first;
}

const WorstSample& WorstCurve::at(double distance_m, const Make& make) {
    return alone(distance_m, make)->second;
}

const WorstSample& WorstCurve::between(double inner_m, double distance_m, double outer_m, const Make& make) {
    if (const auto found = samples_.find(distance_m); found != samples_.end()) {
        return found->second;
    }
    const WorstSample &inner = at(inner_m, make), &outer = at(outer_m, make);
    return samples_.emplace(distance_m, make(distance_m, &inner, &outer)).first->second;
}

WorstCurve::Crossing WorstCurve::crossing(double inside_m, double outside_m, double square,
                                          const Make& make) {
    std::vector<Place> quarters{alone(inside_m, make), alone(outside_m, make)};
    quarters.reserve(5);
    for (int halvings = 0; halvings < 2; ++halvings) {
        for (std::size_t i = 1; i < quarters.size(); ++i) {
            if (!close(*quarters[i - 1], *quarters[i])) {
                const Place between = middle(quarters[i - 1], quarters[i], make);
                quarters.insert(quarters.begin() + static_cast<std::ptrdiff_t>(i), between);
                ++i;
            }
        }
    }
    std::size_t outer = quarters.size() - 1;
    while (outer > 1 && quarters[outer - 1]->second.square < square) {
        --outer;
    }
    Place high = quarters[outer], low = quarters[outer - 1];
    while (!close(*low, *high)) {
        const Place between = middle(low, high, make);
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
