#include "charts/layers.hpp"

#include "charts/measures.hpp"
#include "charts/strokes.hpp"

#include <QFontMetricsF>
#include <QPainter>

#include <algorithm>
#include <cmath>

namespace loopwright::charts {

namespace {

constexpr double marker_every_px = 90.0;
constexpr double shade_every_px = 6.0;
constexpr int shade_alpha = 38, halo_alpha = 205;

/// A column of the plot between two frequencies; empty outside it. At least as wide as a hair.
QRectF column(const PlotGeometry& geometry, double from_Hz, double to_Hz) {
    constexpr double hair_px = 1.5;
    double left = geometry.px_of_frequency(from_Hz), right = geometry.px_of_frequency(to_Hz);
    if (right - left < hair_px) {
        const double middle = (left + right) / 2.0;
        left = middle - hair_px / 2.0;
        right = middle + hair_px / 2.0;
    }
    const QRectF wide(QPointF(left, geometry.area.top()), QPointF(right, geometry.area.bottom()));
    return wide.intersected(geometry.area);
}

/// The point of a polyline at an x inside it.
QPointF point_at(const QPolygonF& piece, double x) {
    const auto after = std::lower_bound(piece.begin(), piece.end(), x,
                                        [](const QPointF& point, double at) { return point.x() < at; });
    if (after == piece.begin() || after == piece.end()) {
        return after == piece.end() ? piece.last() : *after;
    }
    const QPointF a = *(after - 1), b = *after;
    return a + (b - a) * ((x - a.x()) / (b.x() - a.x()));
}

} // namespace

void Layer::renew() {
    if (state_.paper != rect_) {
        prepareGeometryChange();
        rect_ = state_.paper;
    }
    stale_ = true;
    update();
}

bool Layer::take_stale() {
    return std::exchange(stale_, false);
}

void Backdrop::paint(QPainter* painter, const QStyleOptionGraphicsItem* /*option*/, QWidget* /*widget*/) {
    painter->save();
    painter->setRenderHint(QPainter::Antialiasing, false);
    paint_columns(*painter);
    paint_shades(*painter);
    painter->restore();
}

void Backdrop::paint_columns(QPainter& painter) const {
    const LayerState& s = state();
    for (const models::Zone& zone : s.content->zones) {
        painter.fillRect(column(s.geometry, zone.from_Hz, zone.to_Hz), s.look->zone);
    }
    for (const models::BandStripe& band : s.content->bands) {
        const bool focus = band.name == s.focus_band;
        painter.fillRect(column(s.geometry, band.low_Hz, band.high_Hz),
                         focus ? s.look->focus_stripe : s.look->stripe);
    }
}

void Backdrop::paint_shades(QPainter& painter) const {
    const LayerState& s = state();
    for (const models::Shade& shade : s.content->shades) {
        const double top = s.geometry.px_of_y(position_on_scale(s.content->scale, shade.high_si));
        const double bottom = s.geometry.px_of_y(position_on_scale(s.content->scale, shade.low_si));
        QColor colour = s.look->curve(shade.meaning);
        colour.setAlpha(shade_alpha);
        const QRectF wide(QPointF(s.geometry.area.left(), top), QPointF(s.geometry.area.right(), bottom));
        painter.fillRect(wide.intersected(s.geometry.area), colour);
    }
}

void Foreground::prepare() {
    const LayerState& s = state();
    pieces_.clear();
    for (const QList<QPointF>& curve : s.positions) {
        pieces_.append(pieces_on_paper(curve, s.geometry));
    }
    words_ = arrange_words(*s.content, s.geometry, pieces_, *s.look, s.focus_band);
}

void Foreground::paint(QPainter* painter, const QStyleOptionGraphicsItem* /*option*/, QWidget* /*widget*/) {
    if (take_stale()) {
        prepare();
    }
    painter->save();
    painter->setClipRect(state().geometry.area.adjusted(-0.5, -0.5, 0.5, 0.5));
    paint_focus(*painter);
    paint_limits(*painter);
    paint_markers(*painter);
    painter->setClipping(false);
    paint_title(*painter);
    for (const Word& word : words_) {
        paint_word(*painter, word);
    }
    painter->restore();
}

void Foreground::paint_limits(QPainter& painter) const {
    const LayerState& s = state();
    const QRectF& area = s.geometry.area;
    for (const models::Limit& limit : s.content->limits) {
        const double y = s.geometry.px_of_y(position_on_scale(s.content->scale, limit.value_si));
        if (!(y >= area.top() - 1.0 && y <= area.bottom() + 1.0)) {
            continue;
        }
        painter.setPen(QPen(s.look->ink, 1.2));
        painter.drawLine(QPointF(area.left(), y), QPointF(area.right(), y));
        if (limit.hurts == models::Side::neither) {
            continue;
        }
        const double reach = limit.hurts == models::Side::above ? -hatch_px : hatch_px;
        QList<QLineF> hatch;
        for (const double x : places(area.left(), area.right(), shade_every_px)) {
            hatch.append({x, y, x + hatch_px, y + reach});
        }
        painter.setPen(QPen(s.look->ink, 0.8));
        painter.drawLines(hatch);
    }
}

void Foreground::paint_markers(QPainter& painter) const {
    const LayerState& s = state();
    const auto count = static_cast<double>(std::max<qsizetype>(pieces_.size(), 1));
    for (qsizetype i = 0; i < pieces_.size(); ++i) {
        const models::Curve& curve = s.content->curves[static_cast<std::size_t>(i)];
        // Curves of one chart have their markers at different places, so that none hides another.
        const double start =
            s.geometry.area.left() + marker_every_px * (static_cast<double>(i) + 0.5) / count;
        for (const QPolygonF& piece : pieces_[i]) {
            for (const double x : places(start, piece.last().x(), marker_every_px)) {
                if (x >= piece.first().x()) {
                    paint_marker(painter, point_at(piece, x), curve, *s.look);
                }
            }
        }
    }
}

void Foreground::paint_focus(QPainter& painter) const {
    const LayerState& s = state();
    const QRectF& area = s.geometry.area;
    const double x = s.focus_Hz > 0 ? s.geometry.px_of_frequency(s.focus_Hz) : -1.0;
    if (x < area.left() || x > area.right()) {
        return;
    }
    constexpr double arrow_px = 5.0;
    painter.setPen(QPen(s.look->focus, 1.0));
    painter.drawLine(QPointF(x, area.top()), QPointF(x, area.bottom()));
    painter.setBrush(s.look->focus);
    painter.drawPolygon(QPolygonF{QPointF(x - arrow_px, area.bottom()), QPointF(x + arrow_px, area.bottom()),
                                  QPointF(x, area.bottom() - arrow_px)});
}

void Foreground::paint_title(QPainter& painter) const {
    const LayerState& s = state();
    QFont bold = s.look->font;
    bold.setBold(true);
    const QFontMetricsF metrics(bold);
    // The button of the menu stands in the upper right corner of a chart on the screen.
    const double beside = 2.0 * metrics.height();
    const QRectF room(s.paper.left() + beside, s.paper.top() + 3.0, s.paper.width() - 2.0 * beside,
                      metrics.height());
    painter.setFont(bold);
    painter.setPen(s.look->ink);
    painter.drawText(room, Qt::AlignHCenter | Qt::AlignTop | Qt::TextSingleLine,
                     metrics.elidedText(s.content->title, Qt::ElideRight, room.width()));
}

void Foreground::paint_word(QPainter& painter, const Word& word) const {
    const LayerState& s = state();
    if (word.kind != Word::Kind::band) {
        QColor halo = s.look->paper;
        halo.setAlpha(halo_alpha);
        if (word.kind != Word::Kind::zone) {
            painter.fillRect(word.rect, halo);
        }
    }
    QRectF room = word.rect;
    if (word.curve) {
        paint_sample(painter, QPointF(room.left(), room.center().y()), sample_px,
                     s.content->curves[*word.curve], *s.look);
        room.setLeft(room.left() + sample_px + 2.0);
    }
    const bool quiet = (word.kind == Word::Kind::band && !word.strong) || word.kind == Word::Kind::zone;
    painter.setPen(quiet ? s.look->quiet_ink : s.look->ink);
    QFont font = s.look->font;
    font.setBold(word.strong);
    painter.setFont(font);
    if (word.upright) {
        painter.save();
        painter.translate(room.left(), room.bottom());
        painter.rotate(-90.0);
        painter.drawText(QRectF(0, 0, room.height(), room.width()), Qt::AlignCenter | Qt::TextSingleLine,
                         word.text);
        painter.restore();
    } else {
        painter.drawText(room, Qt::AlignCenter | Qt::TextSingleLine | Qt::TextDontClip, word.text);
    }
}

} // namespace loopwright::charts
