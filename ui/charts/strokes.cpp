#include "charts/strokes.hpp"

#include <QPainter>
#include <QPolygonF>

#include <array>

namespace loopwright::charts {

namespace {

constexpr double width_px = 1.5, compared_width_px = 1.2, radius_px = 3.0;
/// In pen widths; empty: solid.
const std::array<QList<qreal>, 5> dashes = {
    QList<qreal>{}, {7.0, 3.0}, {7.0, 3.0, 1.0, 3.0}, {1.0, 2.5}, {12.0, 3.0, 3.0, 3.0}};
const std::array<QList<qreal>, 5> compared_dashes = {
    QList<qreal>{3.0, 3.0}, {5.0, 5.0}, {5.0, 5.0, 1.0, 5.0}, {1.0, 5.0}, {9.0, 6.0, 3.0, 6.0}};

std::size_t place(const models::Curve& curve) {
    return static_cast<std::size_t>(curve.stroke) % dashes.size();
}

} // namespace

QPen pen_of(const models::Curve& curve, const Appearance& look) {
    QPen pen(look.curve(curve.meaning), curve.compared ? compared_width_px : width_px);
    const QList<qreal>& dash = (curve.compared ? compared_dashes : dashes)[place(curve)];
    if (!dash.isEmpty()) {
        pen.setDashPattern(dash);
    }
    pen.setCapStyle(Qt::FlatCap);
    pen.setJoinStyle(Qt::RoundJoin);
    return pen;
}

MarkerStyle marker_of(const models::Curve& curve) {
    constexpr std::array<Marker, 5> shapes = {Marker::circle, Marker::square, Marker::triangle,
                                              Marker::diamond, Marker::cross};
    return {shapes[place(curve)], curve.compared};
}

void paint_marker(QPainter& painter, const QPointF& at, const models::Curve& curve, const Appearance& look) {
    const MarkerStyle style = marker_of(curve);
    const QColor colour = look.curve(curve.meaning);
    const double r = radius_px;
    painter.setPen(QPen(colour, 1.2));
    painter.setBrush(style.hollow ? look.paper : colour);
    switch (style.shape) {
    case Marker::circle:
        painter.drawEllipse(at, r, r);
        break;
    case Marker::square:
        painter.drawRect(QRectF(at.x() - 0.9 * r, at.y() - 0.9 * r, 1.8 * r, 1.8 * r));
        break;
    case Marker::triangle:
        painter.drawPolygon(QPolygonF{at + QPointF(0, -1.2 * r), at + QPointF(1.15 * r, 0.85 * r),
                                      at + QPointF(-1.15 * r, 0.85 * r)});
        break;
    case Marker::diamond:
        painter.drawPolygon(QPolygonF{at + QPointF(0, -1.3 * r), at + QPointF(1.3 * r, 0),
                                      at + QPointF(0, 1.3 * r), at + QPointF(-1.3 * r, 0)});
        break;
    case Marker::cross:
        painter.drawLine(at + QPointF(-r, -r), at + QPointF(r, r));
        painter.drawLine(at + QPointF(-r, r), at + QPointF(r, -r));
        break;
    }
}

void paint_sample(QPainter& painter, const QPointF& left, double length_px, const models::Curve& curve,
                  const Appearance& look) {
    painter.setPen(pen_of(curve, look));
    painter.drawLine(left, left + QPointF(length_px, 0));
    paint_marker(painter, left + QPointF(length_px / 2.0, 0), curve, look);
}

} // namespace loopwright::charts
