#include "drawings/dimension.hpp"

#include <QFontMetricsF>
#include <QPainter>
#include <QPainterPath>

#include <algorithm>
#include <cmath>

namespace loopwright::drawings {

namespace {

void paint_arrow(QPainter& painter, const QPointF& tip, const QPointF& from, double size) {
    const QLineF shaft(from, tip);
    if (shaft.length() <= 0.0) {
        return;
    }
    const QPointF along = QPointF(shaft.dx(), shaft.dy()) / shaft.length();
    const QPointF across(-along.y(), along.x());
    QPainterPath head(tip);
    head.lineTo(tip - size * along + 0.33 * size * across);
    head.lineTo(tip - size * along - 0.33 * size * across);
    head.closeSubpath();
    painter.fillPath(head, painter.pen().color());
}

} // namespace

void paint_dimension(QPainter& painter, const QLineF& line, const QString& text) {
    const QFontMetricsF metrics(painter.font(), painter.device());
    const double arrow = 0.55 * metrics.height();
    painter.drawLine(line);
    const bool roomy = line.length() > 2.5 * arrow;
    if (roomy) {
        paint_arrow(painter, line.p2(), line.p1(), arrow);
        paint_arrow(painter, line.p1(), line.p2(), arrow);
    }
    painter.save();
    painter.translate(line.center());
    double angle = -line.angle();
    while (angle <= -90.5) {
        angle += 180.0; // readable from below or from the right
    }
    painter.rotate(angle);
    const double width = metrics.horizontalAdvance(text);
    painter.drawText(QPointF(-width / 2.0, -0.25 * metrics.height()), text);
    painter.restore();
}

void paint_extension(QPainter& painter, const QPointF& from, const QPointF& to) {
    const QLineF line(from, to);
    if (line.length() > 0.0) {
        const QPointF along = QPointF(line.dx(), line.dy()) / line.length();
        painter.drawLine(from + 3.0 * along, to + 4.0 * along);
    }
}

QRectF paint_label(QPainter& painter, const QPointF& centre, const QString& text, const QRectF& bounds) {
    const QFontMetricsF metrics(painter.font(), painter.device());
    constexpr int flags = Qt::AlignHCenter | Qt::AlignTop | Qt::TextWordWrap;
    QRectF box(0, 0, metrics.horizontalAdvance(text), metrics.height());
    const bool wrapped = box.width() > bounds.width();
    if (wrapped) { // in as many lines as it takes, growing upward
        box = metrics.boundingRect(QRectF(0, 0, bounds.width(), bounds.height()), flags, text);
        box.setWidth(bounds.width());
    }
    box.moveCenter({centre.x(), centre.y() - (box.height() - metrics.height()) / 2.0});
    box.moveLeft(
        std::clamp(box.left(), bounds.left(), std::max(bounds.left(), bounds.right() - box.width())));
    box.moveTop(std::clamp(box.top(), bounds.top(), std::max(bounds.top(), bounds.bottom() - box.height())));
    if (wrapped) {
        painter.drawText(box, flags, text);
    } else {
        painter.drawText(QPointF(box.left(), box.top() + metrics.ascent()), text);
    }
    return box;
}

QRectF room_inside(const QRectF& outline, double y, double margin, double least, const QRectF& bounds) {
    const double half_height = outline.height() / 2.0;
    const double off =
        half_height > 0.0 ? std::clamp((y - outline.center().y()) / half_height, -1.0, 1.0) : 0.0;
    const double chord = outline.width() * std::sqrt(1.0 - off * off) - 2.0 * margin;
    const double wide = std::max(chord, least);
    return bounds.intersected(QRectF(outline.center().x() - wide / 2.0, bounds.top(), wide, bounds.height()));
}

void paint_ground(QPainter& painter, const QLineF& line, double depth_px) {
    painter.drawLine(line);
    const double step = 1.6 * depth_px;
    const int strokes = static_cast<int>(std::floor((line.x2() - line.x1() - depth_px) / step)) + 1;
    for (int i = 0; i < strokes; ++i) {
        const double x = line.x1() + depth_px + i * step;
        painter.drawLine(QPointF(x, line.y1()), QPointF(x - depth_px, line.y1() + depth_px));
    }
}

} // namespace loopwright::drawings
