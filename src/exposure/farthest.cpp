// The search for distances: shells from outside inward, then the exact place.
#include "exposure/detail/shells.hpp"
#include "exposure/surroundings.hpp"
#include "units/constants.hpp"

#include <algorithm>
#include <boost/math/tools/toms748_solve.hpp>
#include <cmath>
#include <limits>

namespace loopwright::exposure {

namespace {

using units::constants::pi;
using units::constants::speed_of_light_m_s;

constexpr double distance_tolerance = 5e-4;
constexpr double worth_a_closer_look = 0.6; // of the squared limit, on a shell's nodes

/// The distance in [inside, outside] where log share crosses 0: over 1 inside, under 1 outside. Shares may be
/// infinite inside.
template <class Share>
double crossing(double inside_m, double outside_m, const Share& share) {
    const auto logarithm = [&](double distance) {
        return std::clamp(std::log(share(distance)), -30.0, 30.0);
    };
    double low = logarithm(inside_m);
    const double high = logarithm(outside_m);
    if (!(low > 0) || !(high < 0)) {
        return low > 0 ? outside_m : inside_m;
    }
    std::uintmax_t steps = 40;
    const auto close = [](double a, double b) {
        return std::abs(b - a) <= std::max(1e-3, distance_tolerance * a);
    };
    const auto found =
        boost::math::tools::toms748_solve(logarithm, inside_m, outside_m, low, high, close, steps);
    return found.second; // the outer end
}

} // namespace

int Surroundings::first_shell(const Threshold& threshold) const {
    const detail::Moments moments{electric_moment_C_m_, magnetic_moment_A_m2_};
    const double f = field_.loop().frequency.value();
    const double k = 2 * pi * f / speed_of_light_m_s;
    const double close = 2.0 * field_.extent().horizontal_m + nearest_established_m;
    for (int i = detail::last_shell; i > 0; --i) {
        const double d = detail::shell_distance_m(i);
        if (d <= close || detail::rough_share(moments, k, f, d, threshold) > 1) {
            return std::min(i + 2, detail::last_shell);
        }
    }
    return 1;
}

// Pattern search: the four neighbours, the step halved when none is larger.
Surroundings::Place Surroundings::best_near(double distance_m, Place from, const Threshold& threshold,
                                            double& share) {
    double azimuth_step = 0.5 * azimuth_step_rad_, share_step = 0.12;
    share = squares(distance_m, from).over(threshold);
    for (int halvings = 0; halvings < 3;) {
        Place best = from;
        for (const auto& [a, s] : {std::pair{1, 0}, std::pair{-1, 0}, std::pair{0, 1}, std::pair{0, -1}}) {
            const Place next{from.azimuth_rad + a * azimuth_step,
                             std::clamp(from.share + s * share_step, 0.0, 1.0)};
            if (s != 0 && next.share == from.share) {
                continue;
            }
            const double there = squares(distance_m, next).over(threshold);
            if (there > share) {
                share = there;
                best = next;
            }
        }
        if (best.azimuth_rad == from.azimuth_rad && best.share == from.share) {
            azimuth_step *= 0.5;
            share_step *= 0.5;
            ++halvings;
        }
        from = best;
        if (std::isinf(share)) {
            break;
        }
    }
    return from;
}

// The means vary slowly with azimuth: the vertex of a parabola through three of them.
double Surroundings::best_azimuth(const std::vector<Squares>& means, std::size_t best,
                                  const Threshold& threshold) const {
    const auto share = [&](std::size_t n) { return means[n].over(threshold); };
    if (best == 0 || best + 1 == means.size() || std::isinf(share(best - 1)) || std::isinf(share(best + 1))) {
        return azimuths_rad_[best]; // an end is a plane of symmetry, or close enough
    }
    const double before = share(best - 1), here = share(best), after = share(best + 1);
    const double bend = before - 2 * here + after;
    const double steps = bend < 0 ? 0.5 * (before - after) / bend : 0.0;
    return azimuths_rad_[best] + std::clamp(steps, -0.5, 0.5) * azimuth_step_rad_;
}

std::optional<Farthest> Surroundings::farthest(const Threshold& threshold) {
    const std::size_t heights = shares_.size();
    for (int index = first_shell(threshold); index >= 0; --index) {
        const std::vector<Squares>& nodes = shell(index).nodes;
        std::size_t best = 0;
        for (std::size_t n = 1; n < nodes.size(); ++n) {
            best = nodes[n].over(threshold) > nodes[best].over(threshold) ? n : best;
        }
        double share = nodes[best].over(threshold);
        if (share < worth_a_closer_look) {
            continue;
        }
        double inside = detail::shell_distance_m(index);
        Place place{azimuths_rad_[best / heights], shares_[best % heights]};
        place = best_near(inside, place, threshold, share);
        if (share < 1) {
            continue;
        }
        double outside = detail::shell_distance_m(index + 1);
        for (int round = 0; round < 6; ++round) {
            while (squares(outside, place).over(threshold) >= 1) {
                outside *= 1.05;
                if (outside > farthest_established_m) {
                    return std::nullopt;
                }
            }
            inside = crossing(inside, outside, [&](double d) { return squares(d, place).over(threshold); });
            const Place next = best_near(inside, place, threshold, share);
            if (share < 1.002) {
                break;
            }
            place = next;
            outside = inside * 1.02;
        }
        return described(inside, place, threshold);
    }
    return Farthest{};
}

std::optional<Farthest> Surroundings::farthest_body_average(const Threshold& threshold) {
    if (field_.free_space()) {
        return std::nullopt;
    }
    for (int index = first_shell(threshold); index >= 0; --index) {
        const std::vector<Squares>& means = shell(index).means;
        std::size_t best = 0;
        for (std::size_t n = 1; n < means.size(); ++n) {
            best = means[n].over(threshold) > means[best].over(threshold) ? n : best;
        }
        if (means[best].over(threshold) < worth_a_closer_look) {
            continue;
        }
        double inside = detail::shell_distance_m(index);
        const double azimuth = best_azimuth(means, best, threshold);
        const auto share = [&](double d) { return body_mean(d, azimuth).over(threshold); };
        double outside = detail::shell_distance_m(index + 1);
        if (share(inside) < 1) {
            continue;
        }
        while (share(outside) >= 1) {
            outside *= 1.05;
            if (outside > farthest_established_m) {
                return std::nullopt;
            }
        }
        inside = crossing(inside, outside, share);
        Farthest result = described(inside, {azimuth, 0.5}, threshold);
        const Squares mean = body_mean(inside * 1.002, azimuth);
        result.at_model_edge = mean.over(threshold) < 0.9;
        result.cause = mean.electric * threshold.magnetic_A_m * threshold.magnetic_A_m >
                               mean.magnetic * threshold.electric_V_m * threshold.electric_V_m
                           ? Cause::electric
                           : Cause::magnetic;
        return result;
    }
    return Farthest{};
}

double Surroundings::worst_share(const Threshold& threshold, units::Length distance) {
    const std::size_t heights = shares_.size();
    const double from = distance.value();
    double worst = 0;
    Place place{};
    for (const double azimuth : azimuths_rad_) {
        for (const double share : shares_) {
            const double there = squares(from, {azimuth, share}).over(threshold);
            if (there > worst) {
                worst = there;
                place = {azimuth, share};
            }
        }
    }
    double refined = worst;
    place = best_near(from, place, threshold, refined);
    worst = std::max(worst, refined);
    // A lobe farther out can be stronger than what lies at the distance itself.
    for (int index = 0; index <= detail::last_shell; ++index) {
        const double d = detail::shell_distance_m(index);
        if (d <= from) {
            continue;
        }
        double here = 0;
        for (std::size_t n = 0; n < azimuths_rad_.size() * heights; ++n) {
            here = std::max(here, shell(index).nodes[n].over(threshold));
        }
        worst = std::max(worst, here);
        if (d > 3 * from && d > 2 * field_.extent().highest_m && here < 0.25 * worst) {
            break;
        }
    }
    return worst;
}

double Surroundings::worst_share_around(const Threshold& threshold, const std::array<double, 2>& place_m,
                                        units::Length reach) {
    double worst = 0;
    constexpr int sides = 24;
    for (int i = 0; i < sides; ++i) {
        const double a = 2 * pi * i / sides;
        for (const double share : shares_) {
            const double z = field_.free_space()
                                 ? detail::capacitor_place(field_.loop())[2] + person_height_m * (share - 0.5)
                                 : level_m_ + person_height_m * share;
            worst = std::max(worst, squares_at({place_m[0] + reach.value() * std::cos(a),
                                                place_m[1] + reach.value() * std::sin(a), z})
                                        .over(threshold));
        }
    }
    return worst;
}

} // namespace loopwright::exposure
