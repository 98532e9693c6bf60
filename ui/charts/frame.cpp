#include "charts/frame.hpp"

#include "charts/measures.hpp"
#include "charts/words.hpp"

#include <QPainter>

#include <algorithm>
#include <cmath>
#include <utility>

namespace loopwright::charts {

namespace {
constexpr double right_px = 14.0;
constexpr double hatch_every_px = 6.0;
} // namespace

Frame::Frame(const QRectF& room, const Appearance& look, FrameAxis x, FrameAxis y)
    : x_(std::move(x)), y_(std::move(y)) {
    const QFontMetricsF metrics(look.font);
    line_ = metrics.height();
    label_width_ = y_.least_label_px;
    for (const Tick& tick : y_.ticks) {
        label_width_ = std::max(label_width_, metrics.horizontalAdvance(tick.text) + 2.0);
    }
    const double title = y_.title.isEmpty() ? 0.0 : line_;
    const double below = x_.title.isEmpty() ? (x_.ticks.empty() ? pad_px : 1.5 * line_) : 2.5 * line_;
    area_ = room.adjusted(title + label_width_ + 2.0 * pad_px, line_ / 2.0, -right_px, -below - pad_px);
}

double Frame::px_of_x(double position) const {
    return area_.left() + (position - x_.span.low) / (x_.span.high - x_.span.low) * area_.width();
}

double Frame::px_of_y(double position) const {
    return area_.bottom() - (position - y_.span.low) / (y_.span.high - y_.span.low) * area_.height();
}

void Frame::paint(QPainter& painter, const Appearance& look) const {
    painter.setPen(QPen(look.grid, 1.0));
    for (const Tick& tick : x_.ticks) {
        painter.drawLine(QPointF(px_of_x(tick.value), area_.top()),
                         QPointF(px_of_x(tick.value), area_.bottom()));
    }
    for (const Tick& tick : y_.ticks) {
        painter.drawLine(QPointF(area_.left(), px_of_y(tick.value)),
                         QPointF(area_.right(), px_of_y(tick.value)));
    }
    painter.setPen(QPen(look.quiet_ink, 1.0));
    painter.drawLine(area_.bottomLeft(), area_.topLeft());
    painter.drawLine(area_.bottomLeft(), area_.bottomRight());
}

void Frame::write(Lettering& words) const {
    double taken_to = -1e9;
    for (const Tick& tick : x_.ticks) {
        const QString& text = tick.text;
        const double width = words.size_of(text).width(), centre = px_of_x(tick.value);
        if (centre - width / 2.0 <= taken_to) {
            continue;
        }
        words.write(QRectF(centre - width / 2.0, area_.bottom() + 0.5 * line_, width, line_), text,
                    Qt::AlignCenter);
        taken_to = centre + width / 2.0 + pad_px;
    }
    double above = 1e9; // ticks ascend: each label stands above the one before, or is left out
    for (const Tick& tick : y_.ticks) {
        const double middle = px_of_y(tick.value);
        if (middle + line_ / 2.0 > above) {
            continue;
        }
        above = middle - line_ / 2.0;
        words.write(QRectF(area_.left() - label_width_ - pad_px, px_of_y(tick.value) - line_ / 2.0,
                           label_width_, line_),
                    tick.text, Qt::AlignRight | Qt::AlignVCenter);
    }
    if (!x_.title.isEmpty()) {
        const bool fits = x_.shorter_title.isEmpty() || words.size_of(x_.title).width() <= area_.width();
        words.write(QRectF(area_.left(), area_.bottom() + 1.5 * line_, area_.width(), line_),
                    fits ? x_.title : x_.shorter_title, Qt::AlignCenter);
    }
    if (!y_.title.isEmpty()) {
        words.write_upright(
            QRectF(area_.left() - label_width_ - 2.0 * pad_px - line_, area_.top(), line_, area_.height()),
            y_.title);
    }
}

std::vector<Tick> ticks_at_log10(std::vector<Tick> ticks) {
    for (Tick& tick : ticks) {
        tick.value = std::log10(tick.value);
    }
    return ticks;
}

QRectF paint_limit(QPainter& painter, const QRectF& area, double y, bool hatch_above,
                   const Appearance& look) {
    painter.setPen(QPen(look.ink, 1.2));
    painter.drawLine(QPointF(area.left(), y), QPointF(area.right(), y));
    const double reach = hatch_above ? -hatch_px : hatch_px;
    QList<QLineF> hatch;
    for (const double x : places(area.left(), area.right() - hatch_px, hatch_every_px)) {
        hatch.append({x, y, x + hatch_px, y + reach});
    }
    painter.setPen(QPen(look.ink, 0.8));
    painter.drawLines(hatch);
    return QRectF(QPointF(area.left(), std::min(y, y + reach)),
                  QPointF(area.right(), std::max(y, y + reach)));
}

} // namespace loopwright::charts
