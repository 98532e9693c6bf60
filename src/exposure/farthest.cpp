// The search for distances: shells from outside inward, then the remembered curves of the worst field.
#include "exposure/detail/shells.hpp"
#include "exposure/surroundings.hpp"
#include "units/constants.hpp"

#include <algorithm>
#include <cmath>
#include <limits>

namespace loopwright::exposure {

namespace {

using detail::WorstCurve;
using units::constants::pi;
using units::constants::speed_of_light_m_s;

// A curve that comes this near to a limit on a shell is looked at half way to the next too.
constexpr double lobe_share = 0.85;

double square_of(const Threshold& t, Cause cause) {
    const double limit = cause == Cause::electric ? t.electric_V_m : t.magnetic_A_m;
    return limit * limit;
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

double Surroundings::rough_reach_m(const Threshold& threshold) const {
    return detail::shell_distance_m(first_shell(threshold));
}

std::optional<Surroundings::Found> Surroundings::crossing_between(Taken taken, const Threshold& threshold,
                                                                  int inner, int outer) {
    std::optional<Found> found;
    for (const Cause cause : causes) {
        const double square = square_of(threshold, cause);
        if (worst_on_shell(taken, cause, inner, square) < square) {
            continue;
        }
        static_cast<void>(worst_on_shell(taken, cause, outer, 0)); // known from here on
        take_farther(found, taken, cause, shell_distance_m(inner), shell_distance_m(outer), square);
    }
    return found;
}

// Where a curve comes near to the limit on a shell without reaching it, half way to the next shell.
std::optional<Surroundings::Found> Surroundings::lobe_between(Taken taken, const Threshold& threshold,
                                                              int inner, int outer) {
    std::optional<Found> found;
    const double inside_m = shell_distance_m(inner), outside_m = shell_distance_m(outer);
    const double middle_m = std::sqrt(inside_m * outside_m);
    for (const Cause cause : causes) {
        const double square = square_of(threshold, cause);
        if (inside_m <= 0 || worst_on_shell(taken, cause, inner, lobe_share * square) < lobe_share * square) {
            continue;
        }
        static_cast<void>(worst_on_shell(taken, cause, outer, 0));
        if (curve(taken, cause).between(inside_m, middle_m, outside_m, maker(taken, cause)).square >=
            square) {
            take_farther(found, taken, cause, middle_m, outside_m, square);
        }
    }
    return found;
}

void Surroundings::take_farther(std::optional<Found>& found, Taken taken, Cause cause, double inside_m,
                                double outside_m, double square) {
    const WorstCurve::Crossing at =
        curve(taken, cause).crossing(inside_m, outside_m, square, maker(taken, cause));
    if (!found || at.distance_m > found->distance_m) {
        found = Found{at.distance_m, cause, at.place, at.at_touch};
    }
}

std::optional<Surroundings::Found> Surroundings::outermost(Taken taken, const Threshold& threshold) {
    const auto over = [&](int index) { // the largest share of a limit on a shell; 0 where clearly below
        double most = 0;
        for (const Cause cause : causes) {
            const double square = square_of(threshold, cause);
            most = std::max(most, worst_on_shell(taken, cause, index, lobe_share * square) / square);
        }
        return most;
    };
    int outer = first_shell(threshold);
    while (over(outer) >= 1) {
        if (++outer > detail::last_shell + 1) {
            return std::nullopt;
        }
    }
    // As far in as the model speaks; shell 0 is the axis.
    const double touch_m = touch_.distance_m;
    for (; outer > 0 && (touch_m <= 0 || shell_distance_m(outer - 1) > shell_distance_m(edge_shell));
         --outer) {
        const double share = over(outer - 1);
        auto found = share >= 1            ? crossing_between(taken, threshold, outer - 1, outer)
                     : share >= lobe_share ? lobe_between(taken, threshold, outer - 1, outer)
                                           : std::nullopt;
        if (found) {
            return found;
        }
    }
    if (touch_m <= 0) {
        return Found{};
    }
    if (auto found = crossing_between(taken, threshold, edge_shell, outer)) {
        return found;
    }
    const double azimuth = std::atan2(touch_.point_m[1], touch_.point_m[0]);
    const double share = field_.free_space()
                             ? std::acos(std::clamp(touch_.point_m[2] / touch_m, -1.0, 1.0)) / pi
                             : (touch_.point_m[2] - level_m_) / person_height_m;
    return Found{touch_m, Cause::magnetic, {0, azimuth, share}, true};
}

std::optional<Farthest> Surroundings::described(Taken taken, const Threshold& threshold) {
    const std::optional<Found> found = outermost(taken, threshold);
    if (!found || found->distance_m > farthest_established_m) {
        return std::nullopt;
    }
    Farthest result;
    if (found->distance_m <= 0) {
        return result;
    }
    const Place place{found->place.azimuth_rad, found->place.share};
    result.distance = units::metres(found->distance_m);
    result.azimuth = units::degrees(std::remainder(place.azimuth_rad, 2 * pi) * 180 / pi);
    result.height = units::metres(point(found->distance_m, place)[2]);
    result.cause = found->cause;
    result.at_model_edge = found->at_touch;
    if (found->at_touch) {
        const double outside_m = just_outside * found->distance_m;
        const Squares at =
            taken == Taken::mean ? body_mean(outside_m, place.azimuth_rad) : squares(outside_m, place);
        result.cause = at.electric * square_of(threshold, Cause::magnetic) >
                               at.magnetic * square_of(threshold, Cause::electric)
                           ? Cause::electric
                           : Cause::magnetic;
    }
    return result;
}

std::optional<Farthest> Surroundings::farthest(const Threshold& threshold) {
    return described(Taken::largest, threshold);
}

std::optional<Farthest> Surroundings::farthest_body_average(const Threshold& threshold) {
    if (field_.free_space()) {
        return std::nullopt;
    }
    return described(Taken::mean, threshold);
}

double Surroundings::worst_share(const Threshold& threshold, units::Length distance) {
    const double from = distance.value();
    if (from <= touch_.distance_m) {
        return std::numeric_limits<double>::infinity();
    }
    int first = 0;
    while (first <= detail::last_shell && detail::shell_distance_m(first) <= from) {
        ++first;
    }
    double worst = 0;
    for (const Cause cause : causes) {
        const double square = square_of(threshold, cause);
        const auto take = [&](double value) { worst = std::max(worst, value / square); };
        // At the distance itself and half way between shells, the neighbours' places known first.
        const auto between = [&](int inner, double distance_m) {
            for (const int index : {inner, inner + 1}) {
                static_cast<void>(worst_on_shell(Taken::largest, cause, index, 0));
            }
            return curve(Taken::largest, cause)
                .between(detail::shell_distance_m(inner), distance_m, detail::shell_distance_m(inner + 1),
                         maker(Taken::largest, cause))
                .square;
        };
        take(between(first - 1, from));
        // A lobe farther out can be stronger than what lies at the distance itself.
        for (int index = first; index <= detail::last_shell; ++index) {
            const double here = worst_on_shell(Taken::largest, cause, index, lobe_share * worst * square);
            take(here);
            const double d = detail::shell_distance_m(index), next = detail::shell_distance_m(index + 1);
            if (here >= lobe_share * worst * square) {
                take(between(index, std::sqrt(d * next)));
            }
            if (d > 3 * from && d > 2 * field_.extent().highest_m && here < 0.25 * worst * square) {
                break;
            }
        }
    }
    return worst;
}

Surroundings::Squares Surroundings::worst_around_capacitor(units::Length reach) {
    if (const auto found = around_capacitor_.find(reach.value()); found != around_capacitor_.end()) {
        return found->second;
    }
    const std::array<double, 3> place_m = capacitor_place_m();
    Squares worst;
    constexpr int sides = 24;
    for (int i = 0; i < sides; ++i) {
        const double a = 2 * pi * i / sides;
        for (const double share : shares_) {
            const double z = field_.free_space() ? place_m[2] + person_height_m * (share - 0.5)
                                                 : level_m_ + person_height_m * share;
            const Squares here = squares_at(
                {place_m[0] + reach.value() * std::cos(a), place_m[1] + reach.value() * std::sin(a), z});
            worst.electric = std::max(worst.electric, here.electric);
            worst.magnetic = std::max(worst.magnetic, here.magnetic);
            worst.touch = worst.touch || here.touch;
        }
    }
    if (around_capacitor_.size() >= most_reaches) {
        around_capacitor_.clear();
    }
    return around_capacitor_.emplace(reach.value(), worst).first->second;
}

} // namespace loopwright::exposure
