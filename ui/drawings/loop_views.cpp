#include "drawings/loop_views.hpp"

#include "coupling/tap_rod.hpp"
#include "geometry/winding.hpp"
#include "loop/design_parts.hpp"

#include <algorithm>
#include <cmath>

namespace loopwright::drawings {

namespace {

using geometry::Vector3;
using geometry::WirePath;

double lowest_x_m(const View& view) {
    const double low = view.extent.top() + 0.02 * view.extent.height(); // y is upward here
    double from = view.extent.right(), to = view.extent.left();
    for (const QPointF& point : view.conductor) {
        if (point.y() <= low) {
            from = std::min(from, point.x());
            to = std::max(to, point.x());
        }
    }
    return (from + to) / 2.0;
}

/// Projects the path on two directions seen from an origin.
View project(const WirePath& path, const Vector3& origin, const Vector3& right, const Vector3& up) {
    const auto flat = [&](const Vector3& point) {
        return QPointF(dot(point - origin, right), dot(point - origin, up));
    };
    View view;
    const double half_gap_m = path.gap_m() / 2.0;
    const auto add = [&](double s_m) {
        if (s_m >= half_gap_m && s_m <= path.length_m() - half_gap_m) {
            view.conductor << flat(path.point(s_m));
        }
    };
    view.conductor << flat(path.point(half_gap_m));
    for (std::size_t i = 0; i < path.pieces().size(); ++i) {
        const auto& piece = path.pieces()[i];
        // Two degrees a step: under a pixel off for any circle on a page.
        const int steps = piece.is_straight()
                              ? 1
                              : 1 + static_cast<int>(std::abs(piece.turning_angle()) * 180.0 / 3.14159 / 2.0);
        for (int step = 0; step < steps; ++step) {
            add(path.begin_m(i) + piece.length_m() * step / steps);
        }
    }
    view.conductor << flat(path.point(path.length_m() - half_gap_m));
    view.extent = view.conductor.boundingRect();
    view.lowest_x_m = lowest_x_m(view);
    view.capacitor = flat(path.capacitor_point());
    const QPointF along = flat(path.tangent(0) + origin);
    const double length = std::hypot(along.x(), along.y());
    view.along_capacitor = length > 0.3 ? along / length : QPointF();
    return view;
}

double seen_width_m(const design::Conductor& conductor, bool from_side) {
    if (conductor.form == design::ConductorForm::strip) {
        return from_side ? conductor.width.value.value() : conductor.thickness.value.value();
    }
    return conductor.diameter.value.value();
}

RodView rod_of(const design::Design& design) {
    const geometry::Frame frame = geometry::frame_of(loop::winding_of(design.loop), {});
    RodView rod{{}, design.coupling->conductor_diameter.value.value()};
    for (const Vector3& point : coupling::tap_rod(design.loop, *design.coupling)) {
        rod.path << QPointF(dot(point - frame.origin, frame.right), dot(point - frame.origin, frame.up));
    }
    return rod;
}

double distance_m(const QPointF& from, const QPointF& a, const QPointF& b) {
    const QPointF along = b - a, to = from - a;
    const double length2 = QPointF::dotProduct(along, along);
    const double share = length2 > 0 ? std::clamp(QPointF::dotProduct(to, along) / length2, 0.0, 1.0) : 0.0;
    const QPointF apart = to - share * along;
    return std::hypot(apart.x(), apart.y());
}

/// Above the lowest point, `apart` from the conductor where that is nearest: in a corner that is further in.
QPointF coupling_centre(const View& view, double apart_m) {
    constexpr int steps = 500;
    const double lowest_m = view.extent.top(); // y is upward here: top() is the least
    for (int i = 0; i < steps; ++i) {
        const QPointF centre(0, lowest_m + apart_m + view.extent.height() * i / steps);
        double nearest = INFINITY;
        for (qsizetype k = 0; k + 1 < view.conductor.size(); ++k) {
            nearest = std::min(nearest, distance_m(centre, view.conductor[k], view.conductor[k + 1]));
        }
        if (nearest > 0.998 * apart_m) {
            return centre;
        }
    }
    return {0, lowest_m + apart_m}; // it does not fit; the match says so
}

void add_coupling(const design::Design& design, const WirePath& path, const geometry::Frame& frame,
                  LoopViews& views) {
    if (!design.coupling) {
        return;
    }
    const double radius_m = design.coupling->diameter.value.value() / 2.0;
    const double opposite_m = path.length_m() / 2.0;
    const Vector3 at = path.point(opposite_m) - frame.origin, along = path.tangent(opposite_m);
    switch (design.coupling->kind) {
    case design::CouplingKind::loop:
        views.coupling_centre =
            coupling_centre(views.front, design.coupling->axis_offset.value.value() + radius_m);
        break;
    case design::CouplingKind::tap:
        views.rod = rod_of(design);
        break;
    case design::CouplingKind::transformer:
        views.core = CoreView{{dot(at, frame.right), dot(at, frame.up)},
                              {dot(along, frame.right), dot(along, frame.up)}};
        break;
    }
}

} // namespace

LoopViews views_of(const design::Design& design) {
    const auto winding = loop::winding_of(design.loop);
    const auto placement = loop::placement_of(design.site);
    const WirePath path = geometry::wire_path(winding, placement);
    const geometry::Frame frame = geometry::frame_of(winding, placement);

    LoopViews views;
    views.front = project(path, frame.origin, frame.right, frame.up);
    views.front.width_m = seen_width_m(design.conductor, false);
    views.conductor_length_m = path.length_m();
    const bool stack = design.loop.turns > 1 && design.loop.arrangement == design::Arrangement::stack;
    if (stack || placement.tilt.value() != 0.0) {
        views.side = project(path, frame.origin, Vector3{0, 1, 0}, Vector3{0, 0, 1});
        views.side->width_m = seen_width_m(design.conductor, true);
    }
    if (!placement.free_space) {
        views.clearance_m = placement.clearance.value();
        if (design.site.standing_level.value.value() > 0.0) {
            views.standing_m = design.site.standing_level.value.value();
        }
    }
    add_coupling(design, path, frame, views);
    return views;
}

} // namespace loopwright::drawings
