#pragma once
// Dimension lines and texts as in a workshop drawing, painted with the pen of the painter.
#include <QLineF>
#include <QPointF>
#include <QRectF>
#include <QString>

class QPainter;

namespace loopwright::drawings {

/// A line with arrow heads between two points and its text in the middle, along the line, readable from below
/// or from the right. The text stands beside the line (to the left of it as drawn from a to b), never across
/// it.
void paint_dimension(QPainter& painter, const QLineF& line, const QString& text);

/// Thin lines from what is measured to the dimension line.
void paint_extension(QPainter& painter, const QPointF& from, const QPointF& to);

/// Text centred on a point, kept inside bounds; wrapped where it is wider than they are, growing upward.
/// Answers where it stands.
QRectF paint_label(QPainter& painter, const QPointF& centre, const QString& text, const QRectF& bounds);

/// The part of bounds that lies inside the ellipse in `outline` at the height y, less a margin to each side,
/// but as wide as `least` at the least: room for a text that is not to cross a loop's conductor.
[[nodiscard]] QRectF room_inside(const QRectF& outline, double y, double margin, double least,
                                 const QRectF& bounds);

/// The ground: a line with hatching below it.
void paint_ground(QPainter& painter, const QLineF& line, double depth_px);

} // namespace loopwright::drawings
