#pragma once
// The loop as seen, in metres: the conductor's path looked at along the loop's axis and from the side.
#include "design/design.hpp"

#include <QPointF>
#include <QPolygonF>
#include <QRectF>

#include <optional>

namespace loopwright::drawings {

/// One view, y upward. The path runs from one end of the gap to the other.
struct View {
    QPolygonF conductor;
    QPointF capacitor;       ///< middle of the gap
    QPointF along_capacitor; ///< direction of the conductor there, unit length; zero: seen end-on
    QRectF extent;           ///< of the conductor's centre line
    double width_m = 0;      ///< of the conductor as seen
    double lowest_x_m = 0;   ///< where it is lowest, the middle of what is equally low
};

/// The rod of a tapped match in the front view, with both links: from the conductor opposite the capacitor,
/// along the rod, to where it is joined.
struct RodView {
    QPolygonF path;
    double width_m = 0;
};

/// Where the core of a transformer sits on the conductor. Its size is not part of a design.
struct CoreView {
    QPointF at;
    QPointF along; ///< of the conductor there, unit length
};

struct LoopViews {
    View front;               ///< along the loop's axis, capacitor at the top
    std::optional<View> side; ///< where depth, tilt or a horizontal plane make it worth drawing; y is height
    double conductor_length_m = 0;
    /// Height of the lowest point of the side view's (or else the front view's) centre line above the ground;
    /// nothing in free space.
    std::optional<double> clearance_m;
    /// Height above the ground of the floor that people stand on, where it is not the ground itself.
    std::optional<double> standing_m;
    /// Centre of the coupling loop in the front view.
    std::optional<QPointF> coupling_centre;
    std::optional<RodView> rod;
    std::optional<CoreView> core;
};

/// Views of a design that has no refusals. Throws what geometry::wire_path throws for one that has.
[[nodiscard]] LoopViews views_of(const design::Design& design);

} // namespace loopwright::drawings
