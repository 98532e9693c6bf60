#include "exposure/surroundings.hpp"

#include "base/error.hpp"
#include "base/stopped.hpp"
#include "exposure/detail/shells.hpp"
#include "units/constants.hpp"

#include <algorithm>
#include <cmath>
#include <limits>

namespace loopwright::exposure {

namespace {

using Complex = std::complex<double>;
using units::constants::pi;

constexpr double room_above_m = 12.0;     // over loop and people, for outlines from the side
constexpr double highest_table_m = 300.0; // of QuickField

double top_for(const loop::SolvedLoop& loop, double level_m) {
    double top = level_m + person_height_m;
    for (const auto& element : loop.elements()) {
        top = std::max(top, element.position_m[2]);
    }
    return std::min(highest_table_m, top + room_above_m);
}

double squared(const std::array<Complex, 3>& v) {
    return std::norm(v[0]) + std::norm(v[1]) + std::norm(v[2]);
}

/// Even steps over `span` from `from`; both ends where `closed`.
std::vector<double> even_steps(double from, double span, int steps, bool closed) {
    std::vector<double> all;
    all.reserve(static_cast<std::size_t>(steps) + 1);
    for (int i = 0; i < steps + (closed ? 1 : 0); ++i) {
        all.push_back(from + span * i / steps);
    }
    return all;
}

} // namespace

double Surroundings::Squares::over(const Threshold& t) const {
    if (touch) {
        return std::numeric_limits<double>::infinity();
    }
    return std::max(electric / (t.electric_V_m * t.electric_V_m),
                    magnetic / (t.magnetic_A_m * t.magnetic_A_m));
}

Surroundings::Surroundings(loop::SolvedLoop loop, units::Length standing_level, const base::StopToken& stop)
    : stop_(stop), level_m_(standing_level.value()), top_m_(top_for(loop, level_m_)),
      field_(std::move(loop), units::metres(1.1 * farthest_established_m), units::metres(top_m_)) {
    if (!(level_m_ >= 0 && level_m_ <= 100)) {
        throw base::ProgramError("Surroundings: a standing level from 0 to 100 m");
    }
    const detail::Moments moments = detail::moments_of(field_.loop());
    electric_moment_C_m_ = moments.electric_C_m;
    magnetic_moment_A_m2_ = moments.magnetic_A_m2;
    const detail::HeightRule rule = detail::clenshaw_curtis(field_.free_space() ? 9 : 7);
    shares_ = rule.shares;
    share_weights_ = rule.weights;
    heed(stop);
    touch_ = field_.farthest_within(nearest_established_m, level_m_, level_m_ + person_height_m);
    find_symmetry();
}

// Fields mirrored in x or in y spare half of the azimuths each. Three places tell.
void Surroundings::find_symmetry() {
    const double reach = field_.extent().horizontal_m + 0.7;
    bool in_x = true, in_y = true;
    const double base = field_.free_space() ? 0.0 : level_m_;
    for (const auto& [x, y, z] :
         std::vector<std::array<double, 3>>{{0.8 * reach, 1.1 * reach, base + 0.31},
                                            {1.3 * reach, 0.4 * reach, base + 1.17},
                                            {0.3 * reach, 1.6 * reach, base + 1.83}}) {
        const Squares here = squares_at({x, y, z});
        const auto same = [&](const Squares& other) {
            return std::abs(other.electric - here.electric) < 2e-3 * here.electric &&
                   std::abs(other.magnetic - here.magnetic) < 2e-3 * here.magnetic;
        };
        in_x = in_x && same(squares_at({-x, y, z}));
        in_y = in_y && same(squares_at({x, -y, z}));
    }
    if (in_x && in_y) {
        azimuths_rad_ = even_steps(0, pi / 2, 4, true);
    } else if (in_y) {
        azimuths_rad_ = even_steps(0, pi, 8, true);
    } else if (in_x) {
        azimuths_rad_ = even_steps(-pi / 2, pi, 8, true);
    } else {
        azimuths_rad_ = even_steps(-pi, 2 * pi, 16, false);
    }
    azimuth_step_rad_ = pi / 8;
}

std::array<double, 3> Surroundings::point(double distance_m, const Place& place) const {
    const double c = std::cos(place.azimuth_rad), s = std::sin(place.azimuth_rad);
    if (field_.free_space()) {
        const double polar = pi * place.share;
        const double across = distance_m * std::sin(polar);
        return {across * c, across * s, distance_m * std::cos(polar)};
    }
    return {distance_m * c, distance_m * s, level_m_ + person_height_m * place.share};
}

Surroundings::Squares Surroundings::squares_at(const std::array<double, 3>& point_m) const {
    base::leave_if_stopped(stop_);
    if (!field_.is_clear(point_m, nearest_established_m)) {
        return {0, 0, true};
    }
    const field::Field at = field_.at_1W(point_m);
    return {squared(at.electric_V_m), squared(at.magnetic_A_m), false};
}

Surroundings::Squares Surroundings::squares(double distance_m, const Place& place) const {
    return squares_at(point(distance_m, place));
}

bool Surroundings::exceeds(const Threshold& threshold, const std::array<double, 3>& point_m) const {
    return squares_at(point_m).over(threshold) >= 1;
}

bool Surroundings::exceeds_on_person(const Threshold& threshold, double distance_m,
                                     double azimuth_rad) const {
    return std::any_of(shares_.begin(), shares_.end(), [&](double share) {
        return squares(distance_m, {azimuth_rad, share}).over(threshold) >= 1;
    });
}

double Surroundings::share_at(const Threshold& threshold, const Farthest& place) const {
    const double d = place.distance.value(), a = place.azimuth.value();
    return squares_at({d * std::cos(a), d * std::sin(a), place.height.value()}).over(threshold);
}

Surroundings::Squares Surroundings::mean_of(const Squares* by_share) const {
    Squares mean;
    for (std::size_t i = 0; i < shares_.size(); ++i) {
        mean.electric += share_weights_[i] * by_share[i].electric;
        mean.magnetic += share_weights_[i] * by_share[i].magnetic;
        mean.touch = mean.touch || by_share[i].touch;
    }
    return mean;
}

Surroundings::Squares Surroundings::body_mean(double distance_m, double azimuth_rad) const {
    std::vector<Squares> by_share;
    by_share.reserve(shares_.size());
    for (const double share : shares_) {
        by_share.push_back(squares(distance_m, {azimuth_rad, share}));
    }
    return mean_of(by_share.data());
}

double Surroundings::shell_distance_m(int index) const {
    return index == edge_shell ? just_outside * touch_.distance_m : detail::shell_distance_m(index);
}

const Surroundings::Shell& Surroundings::shell(int index) {
    if (const auto found = shells_.find(index); found != shells_.end()) {
        return found->second;
    }
    Shell made;
    const double distance = shell_distance_m(index);
    made.nodes.reserve(azimuths_rad_.size() * shares_.size());
    for (const double azimuth : azimuths_rad_) {
        for (const double share : shares_) {
            made.nodes.push_back(squares(distance, {azimuth, share}));
        }
        if (!field_.free_space()) {
            made.means.push_back(mean_of(&made.nodes[made.nodes.size() - shares_.size()]));
        }
    }
    return shells_.emplace(index, std::move(made)).first->second;
}

std::array<double, 3> Surroundings::capacitor_place_m() const {
    return detail::capacitor_place(field_.loop());
}

} // namespace loopwright::exposure
