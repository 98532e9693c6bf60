#include "loop/detail/closed_form_parts.hpp"

#include "loop/operating_point.hpp"

#include "conductor/curvature.hpp"
#include "conductor/proximity.hpp"
#include "loop/inductance.hpp"
#include "units/constants.hpp"

#include <algorithm>
#include <cmath>
#include <string>

namespace loopwright::loop::detail {
namespace {

using geometry::Outline;
using units::constants::magnetic_constant_H_m;
using units::constants::pi;

// Turns as coaxial rings; straight-sided turns as circles of their perimeter, good enough for the fields that
// neighbouring turns put on each other.
std::vector<Ring> rings_of(const geometry::Winding& w) {
    std::vector<Ring> rings;
    const double outer = geometry::perimeter(w).value() / (2 * pi);
    for (int turn = 0; turn < w.turns; ++turn) {
        const double shift = turn * w.spacing.value();
        const bool spiral = w.arrangement == geometry::Arrangement::spiral;
        rings.push_back({units::metres(spiral ? std::max(0.1 * outer, outer - shift) : outer),
                         units::metres(spiral ? 0.0 : shift)});
    }
    return rings;
}

ExternalInductance of_turns(const geometry::Winding& w, double radius_m) {
    ExternalInductance result;
    const std::vector<Ring> rings = rings_of(w);
    const units::Length a = units::metres(radius_m);
    result.redistribution_H = rings_redistribution(rings, a).value();
    const double sum = rings_inductance(rings, a).value();
    result.relative_error = 0.003 + 0.3 * std::abs(result.redistribution_H) / sum;
    return result;
}

// Directions at the low elevation.
std::array<geometry::Vector3, ring_azimuths> low_ring() {
    std::array<geometry::Vector3, ring_azimuths> ring;
    const double elevation = low_elevation_deg * pi / 180;
    for (std::size_t i = 0; i < ring_azimuths; ++i) {
        const double azimuth = 2 * pi * double(i) / double(ring_azimuths);
        ring[i] = {std::cos(elevation) * std::cos(azimuth), std::cos(elevation) * std::sin(azimuth),
                   std::sin(elevation)};
    }
    return ring;
}

} // namespace

std::string not_modelled(const geometry::Winding& w, double length_m, double radius_m) {
    const double thickness_m = 2 * radius_m;
    if (w.gap.value() > 0.25 * length_m) {
        return "The gap takes over a quarter of the conductor";
    }
    if (!(std::sqrt(geometry::area(w).value()) > 3 * thickness_m)) {
        return "The conductor is thicker than a third of the loop's width";
    }
    if (w.turns > 1 && !(w.spacing.value() > 1.02 * thickness_m)) {
        return "The turns nearly touch";
    }
    if (w.turns > 1 && !(w.lead.value() > thickness_m)) {
        return "The leads are too short for the link to the capacitor to clear the turns";
    }
    return {};
}

ExternalInductance external_inductance(const geometry::Winding& w, double radius_m) {
    const units::Length a = units::metres(radius_m);
    if (w.turns > 1) {
        return of_turns(w, radius_m);
    }
    ExternalInductance result;
    if (w.outline == Outline::circle) {
        const conductor::RingCurrent ring = conductor::ring_current(geometry::circumradius(w), a);
        result.henries = ring.inductance.value();
        result.curvature_factor = ring.resistance_factor;
        result.redistribution_H =
            (ring.inductance - circle_inductance_thin(geometry::circumradius(w), a)).value();
        result.relative_error = 0.0005;
        return result;
    }
    // Straight sides: the sum over the path, corners included as tubes that meet on their axes. What a corner
    // really does is of the order of a third of mu0 a for a right angle.
    const bool rectangle = w.outline == Outline::rectangle;
    const double plain = rectangle ? rectangle_inductance(w.width, w.height, a).value()
                                   : polygon_inductance(w.sides, geometry::perimeter(w), a).value();
    const int corners = rectangle ? 4 : w.sides;
    const double turn = 2 * pi / corners;
    result.relative_error =
        0.0005 + 0.3 * magnetic_constant_H_m * radius_m * corners * std::min(1.0, turn / (pi / 2)) / plain;
    return result;
}

Cutting cutting_for(const geometry::Winding& w) {
    Cutting cutting;
    if (w.turns > 1) {
        cutting.longest = 1.0 / (16 * w.turns);
        cutting.even_turns = true;
    }
    return cutting;
}

double share_of_turns(const geometry::Winding& w, double length_m) {
    return w.turns < 2 ? 1 : 1 - (2 * w.lead.value() + w.turns * w.spacing.value()) / length_m;
}

double own_capacitance_error(const geometry::Winding& w, double radius_m) {
    if (w.turns < 2) {
        return 0.01;
    }
    const double ratio = w.spacing.value() / (2 * radius_m);
    return 0.02 + std::log(2 * ratio) / std::acosh(ratio) - 1;
}

Symmetry symmetry_of(const geometry::Winding& w) noexcept {
    return {w.turns == 1 || w.arrangement == geometry::Arrangement::stack, w.turns == 1};
}

Directions gain_directions(const geometry::Frame& frame, const Symmetry& symmetry) {
    Directions directions;
    directions.all.reserve(6 + ring_azimuths);
    // Of those alike the one with x and y not negative, as far as that can be had.
    const auto standing_for = [&](const geometry::Vector3& n) {
        geometry::Vector3 own{dot(n, frame.right), dot(n, frame.rise), dot(n, frame.up)};
        if (symmetry.half_turn && (own.x < -1e-12 || (own.x < 1e-12 && own.y < 0))) {
            own = {-own.x, -own.y, own.z};
        }
        if (symmetry.mirror && own.y < 0) {
            own.y = -own.y;
        }
        return own;
    };
    const auto place_of = [&](const geometry::Vector3& n) {
        const geometry::Vector3 own = standing_for(n);
        const auto known =
            std::find_if(directions.all.begin(), directions.all.end(), [&](const geometry::Vector3& held) {
                const geometry::Vector3 between = held - own;
                return dot(between, between) < 1e-24;
            });
        const auto place = static_cast<std::size_t>(known - directions.all.begin());
        if (known == directions.all.end()) {
            directions.all.push_back(own);
        }
        return place;
    };
    for (const geometry::Vector3& axis : {frame.up, frame.right, frame.rise}) {
        for (const double sign : {1.0, -1.0}) {
            if (sign * axis.z >= -1e-9) {
                (void)place_of(sign * axis);
            }
        }
    }
    directions.best_count = directions.all.size();
    static const std::array<geometry::Vector3, ring_azimuths> ring = low_ring();
    std::transform(ring.begin(), ring.end(), directions.ring.begin(), place_of);
    return directions;
}

} // namespace loopwright::loop::detail
