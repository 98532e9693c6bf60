#include "coupling/detail/tap_path.hpp"

#include "base/error.hpp"
#include "coupling/tap_rod.hpp"
#include "design/winding.hpp"
#include "geometry/winding.hpp"

#include <algorithm>
#include <cmath>

namespace loopwright::coupling::detail {

namespace {

using geometry::Vector3;

constexpr double piece_m = 1.0 / 360; ///< longest piece, of the conductor's length

/// Places along the conductor from s to e: even, and every corner on the way.
std::vector<double> places(const geometry::WirePath& path, double begin_m, double end_m) {
    std::vector<double> corners{begin_m};
    for (std::size_t i = 1; i < path.pieces().size(); ++i) {
        if (path.begin_m(i) > begin_m + 1e-9 && path.begin_m(i) < end_m - 1e-9) {
            corners.push_back(path.begin_m(i));
        }
    }
    corners.push_back(end_m);
    std::vector<double> all{begin_m};
    for (std::size_t i = 0; i + 1 < corners.size(); ++i) {
        const double span = corners[i + 1] - corners[i];
        const int parts = std::max(1, static_cast<int>(std::ceil(span / (piece_m * path.length_m()))));
        for (int k = 1; k <= parts; ++k) {
            all.push_back(corners[i] + span * k / parts);
        }
    }
    return all;
}

/// Half the width and height that a parallel copy is measured from.
Vector3 half_extent(const geometry::Winding& winding) {
    if (winding.outline == geometry::Outline::rectangle) {
        return {0.5 * winding.width.value(), 0, 0.5 * winding.height.value()};
    }
    const double radius = geometry::circumradius(winding).value();
    const bool circle = winding.outline == geometry::Outline::circle;
    const double apothem = circle ? radius : radius * std::cos(3.14159265358979323846 / winding.sides);
    return {apothem, 0, apothem};
}

} // namespace

TapPath tap_path(const design::LoopShape& loop, const design::Coupling& coupling, double conductor_radius_m) {
    const geometry::Winding winding = design::as_winding(loop);
    const geometry::WirePath path = geometry::wire_path(winding);
    if (winding.turns != 1) {
        throw base::InputError("coupling.kind", "tap", "loop or transformer: a tap is computed for one turn");
    }
    const double spacing_m = coupling.tap_spacing.value.value();
    const Vector3 half = half_extent(winding);
    const auto inside = [&](const Vector3& p) {
        return Vector3{p.x * (1 - spacing_m / half.x), p.y, p.z * (1 - spacing_m / half.z)};
    };
    const double begin_m = 0.5 * path.length_m();
    const double rod_radius_m = 0.5 * coupling.conductor_diameter.value.value();
    std::vector<Vector3> on_conductor;
    for (const double s : places(path, begin_m, begin_m + coupling.tap_length.value.value())) {
        on_conductor.push_back(path.point(s));
    }
    TapPath tap;
    const auto add = [&](const Vector3& from, const Vector3& to, double radius_m, int conductor) {
        tap.circuit.push_back({from, to, radius_m, conductor});
        tap.rod_length_m += conductor == loop_conductor ? 0 : norm(to - from);
    };
    add(on_conductor.front(), inside(on_conductor.front()), rod_radius_m, tap_links);
    for (std::size_t i = 0; i + 1 < on_conductor.size(); ++i) {
        add(inside(on_conductor[i]), inside(on_conductor[i + 1]), rod_radius_m, tap_rod);
    }
    add(inside(on_conductor.back()), on_conductor.back(), rod_radius_m, tap_links);
    for (std::size_t i = on_conductor.size() - 1; i > 0; --i) {
        add(on_conductor[i], on_conductor[i - 1], conductor_radius_m, loop_conductor);
    }
    return tap;
}

std::vector<WirePiece> conductor_pieces(const design::LoopShape& loop, double conductor_radius_m) {
    const geometry::WirePath path = geometry::wire_path(design::as_winding(loop));
    const std::vector<double> at = places(path, 0, path.length_m());
    std::vector<WirePiece> pieces;
    for (std::size_t i = 0; i + 1 < at.size(); ++i) {
        pieces.push_back({path.point(at[i]), path.point(at[i + 1]), conductor_radius_m, loop_conductor});
    }
    return pieces;
}

} // namespace loopwright::coupling::detail

namespace loopwright::coupling {

std::vector<geometry::Vector3> tap_rod(const design::LoopShape& loop, const design::Coupling& coupling) {
    const detail::TapPath tap = detail::tap_path(loop, coupling, 0);
    std::vector<geometry::Vector3> points;
    for (const WirePiece& piece : tap.circuit) {
        if (piece.conductor == detail::loop_conductor) {
            break; // the rest leads back along the loop's conductor
        }
        if (points.empty()) {
            points.push_back(piece.from);
        }
        points.push_back(piece.to);
    }
    return points;
}

} // namespace loopwright::coupling
