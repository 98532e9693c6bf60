#pragma once
// A person of 1.75 m as an outline, for scale.
#include <QPointF>

class QPainter;

namespace loopwright::charts {

inline constexpr double person_m = 1.75, person_width_m = 0.5;

/// Standing; feet: where they stand. px_per_m: both ways.
void paint_person(QPainter& painter, const QPointF& feet, double px_per_m);
/// Seen from above: shoulders and head.
void paint_person_from_above(QPainter& painter, const QPointF& centre, double px_per_m);

} // namespace loopwright::charts
