#pragma once
// How a curve is told apart without colour: its dash and its marker; hollow and finely dashed for a second
// design.
#include "charts/chart_palette.hpp"

#include <QPen>
#include <QPointF>

class QPainter;

namespace loopwright::charts {

[[nodiscard]] QPen pen_of(const models::Curve& curve, const Appearance& look);

enum class Marker { circle, square, triangle, diamond, cross };
struct MarkerStyle {
    Marker shape = Marker::circle;
    bool hollow = false;
    bool operator==(const MarkerStyle&) const = default;
};
[[nodiscard]] MarkerStyle marker_of(const models::Curve& curve);

void paint_marker(QPainter& painter, const QPointF& at, const models::Curve& curve, const Appearance& look);

/// A short piece of the curve with one marker, of the given length, for labels and headers.
void paint_sample(QPainter& painter, const QPointF& left, double length_px, const models::Curve& curve,
                  const Appearance& look);

} // namespace loopwright::charts
