#include "charts/lettering.hpp"

#include "charts/strokes.hpp"
#include "charts/words.hpp"

#include <QPainter>

#include <algorithm>
#include <cmath>

namespace loopwright::charts {

namespace {
constexpr int lettering_halo_alpha = 205;
constexpr double tall_px = 1e5;
} // namespace

Lettering::Lettering(QPainter& painter, const QRectF& room, const Appearance& look)
    : painter_(painter), look_(look), metrics_(look.font), placer_(room) {}

QFont Lettering::font_of(Tone tone) const {
    QFont font = look_.font;
    font.setBold(tone == Tone::strong);
    return font;
}

QSizeF Lettering::size_of(const QString& text, Tone tone) const {
    const QFontMetricsF metrics(font_of(tone));
    return {metrics.horizontalAdvance(text) + 2.0, metrics.height()};
}

void Lettering::record(const QRectF& rect, const QString& text) {
    words_.append({rect, text});
    placer_.take(rect);
}

void Lettering::paint_text(const QRectF& rect, const QString& text, Tone tone, int flags) {
    painter_.setFont(font_of(tone));
    painter_.setPen(tone == Tone::quiet ? look_.quiet_ink : look_.ink);
    painter_.drawText(rect, flags, text);
}

void Lettering::write(const QRectF& rect, const QString& text, Qt::Alignment alignment, Tone tone) {
    if (text.isEmpty()) {
        return;
    }
    const QFontMetricsF metrics(font_of(tone));
    const QString fitting = metrics.elidedText(text, Qt::ElideRight, rect.width());
    const int flags = static_cast<int>(alignment) | Qt::TextSingleLine | Qt::TextDontClip;
    const QRectF used = metrics.boundingRect(rect, flags, fitting);
    paint_text(rect, fitting, tone, flags);
    record(used, fitting);
}

double Lettering::wrapped_height(double width, const QString& text) const {
    return text.isEmpty()
               ? 0.0
               : metrics_.boundingRect(QRectF(0, 0, width, tall_px), Qt::TextWordWrap, text).height();
}

double Lettering::write_wrapped(const QRectF& rect, const QString& text, Qt::Alignment alignment, Tone tone) {
    if (text.isEmpty()) {
        return 0.0;
    }
    const int flags = static_cast<int>(alignment) | Qt::TextWordWrap;
    const QFontMetricsF metrics(font_of(tone));
    const QRectF used = metrics.boundingRect(rect, flags, text);
    paint_text(rect, text, tone, flags);
    record(used, text);
    return used.height();
}

void Lettering::write_upright(const QRectF& rect, const QString& text) {
    if (text.isEmpty()) {
        return;
    }
    painter_.save();
    painter_.translate(rect.left(), rect.bottom());
    painter_.rotate(-90.0);
    const QString fitting = metrics_.elidedText(text, Qt::ElideRight, rect.height());
    paint_text(QRectF(0, 0, rect.height(), rect.width()), fitting, Tone::plain,
               Qt::AlignCenter | Qt::TextSingleLine);
    painter_.restore();
    const double length = std::min(rect.height(), metrics_.horizontalAdvance(fitting));
    record(QRectF(rect.left(), rect.center().y() - length / 2.0, rect.width(), length), fitting);
}

bool Lettering::write_at(const QList<QRectF>& candidates, const QString& text, Tone tone, bool always) {
    if (text.isEmpty() || candidates.isEmpty()) {
        return false;
    }
    LabelPlacer trial = placer_;
    const QRectF place = trial.place(candidates);
    if (!always && !trial.last_is_free()) {
        return false;
    }
    QColor halo = look_.paper;
    halo.setAlpha(lettering_halo_alpha);
    painter_.fillRect(place, halo);
    paint_text(place, text, tone, Qt::AlignCenter | Qt::TextSingleLine | Qt::TextDontClip);
    record(place, text);
    return true;
}

void Lettering::write_curve_name(const QList<QPointF>& candidates, const models::Curve& curve) {
    const QSizeF size = size_of(curve.label) + QSizeF(sample_px + 4.0, 0.0);
    QList<QRectF> rects;
    for (const QPointF& corner : candidates) {
        rects.append(QRectF(corner, size));
    }
    const QRectF place = placer_.place(rects);
    QColor halo = look_.paper;
    halo.setAlpha(lettering_halo_alpha);
    painter_.fillRect(place, halo);
    paint_sample(painter_, QPointF(place.left(), place.center().y()), sample_px, curve, look_);
    paint_text(place.adjusted(sample_px + 3.0, 0, 0, 0), curve.label, Tone::plain,
               Qt::AlignLeft | Qt::AlignVCenter | Qt::TextSingleLine | Qt::TextDontClip);
    words_.append({place, curve.label});
}

bool Lettering::write_beside(const QPointF& at, const QString& text, double off_px, Tone tone) {
    const QSizeF size = size_of(text, tone);
    QList<QRectF> candidates;
    for (const double off : {off_px, 2.0 * off_px, 4.0 * off_px}) {
        for (const QPointF& side : {QPointF(1, 0), QPointF(-1, 0), QPointF(0.7, -0.7), QPointF(-0.7, -0.7),
                                    QPointF(0.7, 0.7), QPointF(-0.7, 0.7), QPointF(0, -1), QPointF(0, 1)}) {
            const double half_w = size.width() / 2.0, half_h = size.height() / 2.0;
            const QPointF centre(
                at.x() + side.x() * off + std::copysign(side.x() != 0.0 ? half_w : 0.0, side.x()),
                at.y() + side.y() * off + std::copysign(side.y() != 0.0 ? half_h : 0.0, side.y()));
            candidates.append(QRectF(centre - QPointF(half_w, half_h), size));
        }
    }
    return write_at(candidates, text, tone);
}

void write_title(Lettering& words, const QRectF& room, const QString& title, const QString& shorter) {
    const double height = words.line();
    // The button of the menu stands in the upper right corner of a chart on the screen.
    const double beside = 2.0 * height, width = room.width() - 2.0 * beside;
    const bool fits = shorter.isEmpty() || words.size_of(title, Tone::strong).width() <= width;
    words.write(QRectF(room.left() + beside, room.top() + 3.0, width, height), fits ? title : shorter,
                Qt::AlignHCenter | Qt::AlignTop, Tone::strong);
}

} // namespace loopwright::charts
