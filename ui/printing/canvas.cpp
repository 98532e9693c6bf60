#include "printing/canvas.hpp"

#include <QFontMetricsF>

#include <algorithm>
#include <cmath>

namespace loopwright::printing {

namespace {
constexpr double mm_per_point = 25.4 / 72.0;
constexpr double tall = 1e6;
constexpr int flags = Qt::TextWordWrap;
} // namespace

Canvas::Canvas(QPainter& painter, const QPointF& origin, double units_per_mm)
    : painter_(painter), origin_(origin), units_per_mm_(units_per_mm) {}

QRectF Canvas::on_device(const QRectF& mm) const {
    return {origin_.x() + mm.x() * units_per_mm_, origin_.y() + mm.y() * units_per_mm_,
            mm.width() * units_per_mm_, mm.height() * units_per_mm_};
}

QFont Canvas::font(double points, bool bold) const {
    QFont font(QStringLiteral("DejaVu Sans"));
    font.setPixelSize(std::max(1, static_cast<int>(std::lround(points * mm_per_point * units_per_mm_))));
    font.setHintingPreference(QFont::PreferNoHinting);
    font.setBold(bold);
    return font;
}

double Canvas::height_of(const QString& text, double width_mm, double points, bool bold) const {
    const QFontMetricsF metrics(font(points, bold), painter_.device());
    const QRectF room(0, 0, width_mm * units_per_mm_, tall);
    return metrics.boundingRect(room, flags, text).height() / units_per_mm_;
}

double Canvas::width_of(const QString& text, double points, bool bold) const {
    return QFontMetricsF(font(points, bold), painter_.device()).horizontalAdvance(text) / units_per_mm_;
}

double Canvas::write(const QRectF& mm, const QString& text, double points, bool bold,
                     Qt::Alignment alignment) {
    const double height = height_of(text, mm.width(), points, bold);
    painter_.setFont(font(points, bold));
    painter_.drawText(on_device({mm.x(), mm.y(), mm.width(), height + 1.0}),
                      flags | static_cast<int>(alignment) | Qt::AlignTop, text);
    return height;
}

void Canvas::write_line(const QRectF& mm, const QString& text, double points, bool bold,
                        Qt::Alignment alignment) {
    const QFont used = font(points, bold);
    const QFontMetricsF metrics(used, painter_.device());
    painter_.setFont(used);
    painter_.drawText(on_device(mm), static_cast<int>(alignment) | Qt::AlignVCenter | Qt::TextSingleLine,
                      metrics.elidedText(text, Qt::ElideRight, mm.width() * units_per_mm_));
}

void Canvas::rule(const QPointF& from_mm, const QPointF& to_mm, double width_mm, const QColor& colour) {
    painter_.save();
    painter_.setPen(QPen(colour, width_mm * units_per_mm_));
    painter_.drawLine(on_device({from_mm, QSizeF()}).topLeft(), on_device({to_mm, QSizeF()}).topLeft());
    painter_.restore();
}

} // namespace loopwright::printing
