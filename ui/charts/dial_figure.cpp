#include "charts/dial_figure.hpp"

#include "charts/lettering.hpp"
#include "charts/measures.hpp"
#include "charts/scales.hpp"
#include "charts/text.hpp"
#include "models/match_plot.hpp"
#include "models/quantity_words.hpp"

#include <QCoreApplication>
#include <QPainter>

#include <algorithm>
#include <cmath>

namespace loopwright::charts {

namespace {

using models::DialMark;
using models::DialPlot;

constexpr double dial_pad_px = 10.0, tick_px = 6.0, mark_px = 9.0, label_every_px = 46.0,
                 stopped_every_px = 5.0;

/// A straight scale on the paper.
struct Scale {
    Span span;
    double left = 0, right = 0, y = 0;
    [[nodiscard]] double at(double reading) const {
        return left + (reading - span.low) / (span.high - span.low) * (right - left);
    }
    [[nodiscard]] bool holds(double reading) const { return reading >= span.low && reading <= span.high; }
    [[nodiscard]] double within(double reading) const { return at(std::clamp(reading, span.low, span.high)); }
};

Span whole_of(const DialPlot& plot) {
    return {std::min(plot.first_stop, plot.last_stop), std::max(plot.first_stop, plot.last_stop)};
}

/// Around the mark: some spans, the intervals and a few steps wide; inside the stops as far as it can be.
Span near_of(const DialPlot& plot) {
    const Span whole = whole_of(plot);
    const DialMark& mark = *plot.mark();
    double half = 4.0 * plot.step;
    if (plot.span_low && plot.span_high) {
        half = std::max(half, 1.5 * std::abs(*plot.span_high - *plot.span_low));
    }
    for (const auto& one : {plot.predicted, plot.calibrated}) {
        if (one && one == plot.mark()) {
            half = std::max(
                half, 1.4 * std::max(std::abs(one->high - one->reading), std::abs(one->low - one->reading)));
        }
    }
    half = std::min(half, (whole.high - whole.low) / 4.0);
    return {mark.reading - half, mark.reading + half};
}

void paint_scale(QPainter& painter, Lettering& words, const Scale& scale, const Span& stops,
                 const Appearance& look) {
    painter.setPen(QPen(look.ink, 1.2));
    painter.drawLine(QPointF(scale.within(stops.low), scale.y), QPointF(scale.within(stops.high), scale.y));
    for (const double stop : {stops.low, stops.high}) {
        if (scale.holds(stop)) {
            painter.setPen(QPen(look.ink, 2.4));
            painter.drawLine(QPointF(scale.at(stop), scale.y - tick_px),
                             QPointF(scale.at(stop), scale.y + tick_px));
        }
    }
    const int most = std::clamp(static_cast<int>((scale.right - scale.left) / label_every_px), 2, 19);
    for (const Tick& tick : linear_ticks(scale.span, most)) {
        if (tick.value < stops.low || tick.value > stops.high) {
            continue;
        }
        const double x = scale.at(tick.value), width = words.size_of(tick.text).width();
        painter.setPen(QPen(look.ink, 1.0));
        painter.drawLine(QPointF(x, scale.y), QPointF(x, scale.y + tick_px));
        words.write(QRectF(x - width / 2.0, scale.y + tick_px + 1.0, width, words.line()), tick.text,
                    Qt::AlignCenter);
    }
}

/// Where a mark's interval is drawn, from its low to its high end.
QPolygonF interval_line(const Scale& scale, const DialMark& mark, double level) {
    const double y = scale.y - level - mark_px / 2.0;
    return {{scale.within(std::min(mark.low, mark.high)), y},
            {scale.within(std::max(mark.low, mark.high)), y}};
}

/// Filled for the one to set, hollow for the other; the interval as a bar with ends.
void paint_mark(QPainter& painter, Lettering& words, const Scale& scale, const DialMark& mark, bool filled,
                double level, const QString& text, const Appearance& look) {
    const double y = scale.y - level, x = scale.within(mark.reading);
    const QPolygonF interval = interval_line(scale, mark, level);
    const double low = interval.first().x(), high = interval.last().x();
    const QColor colour = look.curve(models::Meaning::capacitor);
    painter.setPen(QPen(colour, 1.6));
    painter.drawPolyline(interval);
    for (const double end : {low, high}) {
        painter.drawLine(QPointF(end, y - mark_px), QPointF(end, y));
    }
    if (scale.holds(mark.reading)) {
        painter.setBrush(filled ? QBrush(colour) : QBrush(look.paper));
        painter.drawPolygon(
            QPolygonF{{x, y}, {x - mark_px / 2.0, y - mark_px}, {x + mark_px / 2.0, y - mark_px}});
        painter.setPen(QPen(colour, 1.0, filled ? Qt::SolidLine : Qt::DotLine));
        painter.drawLine(QPointF(x, y), QPointF(x, scale.y));
    }
    if (text.isEmpty()) {
        return;
    }
    const QSizeF size = words.size_of(text, filled ? Tone::strong : Tone::plain);
    const double top = y - mark_px / 2.0 - size.height() / 2.0;
    words.write_at({QRectF(QPointF(std::max(high, x) + 6.0, top), size),
                    QRectF(QPointF(std::min(low, x) - 6.0 - size.width(), top), size),
                    QRectF(QPointF(x - size.width() / 2.0, y - mark_px - size.height() - 1.0), size)},
                   text, filled ? Tone::strong : Tone::plain, true);
}

void paint_span(QPainter& painter, const Scale& scale, const DialPlot& plot, const Appearance& look) {
    if (!plot.span_low || !plot.span_high) {
        return;
    }
    const double low = scale.within(std::min(*plot.span_low, *plot.span_high));
    const double high = scale.within(std::max(*plot.span_low, *plot.span_high));
    const QRectF box(low, scale.y - tick_px, std::max(high - low, 1.0), tick_px);
    painter.fillRect(box, look.focus_stripe);
    painter.setPen(QPen(look.ink, 0.8));
    painter.drawRect(box);
    for (const double x : places(box.left() + stopped_every_px, box.right(), stopped_every_px)) {
        painter.drawLine(QPointF(x - stopped_every_px / 2.0, box.bottom()), QPointF(x, box.top()));
    }
}

/// Where the dial stands: a line through the scale, or an arrow at the end that it lies beyond.
void paint_present_dial(QPainter& painter, Lettering& words, const Scale& scale, const DialPlot& plot,
                        bool worded, const Appearance& look) {
    if (!plot.present) {
        return;
    }
    const double x = scale.within(*plot.present);
    const double foot = scale.y + tick_px + words.line() + 4.0;
    painter.setPen(QPen(look.focus, 2.0));
    if (scale.holds(*plot.present)) {
        painter.drawLine(QPointF(x, scale.y - tick_px), QPointF(x, worded ? foot : scale.y + tick_px));
    } else {
        const double way = *plot.present > scale.span.high ? 1.0 : -1.0;
        painter.setBrush(look.focus);
        painter.drawPolygon(QPolygonF{{x, foot - 4.0},
                                      {x - way * mark_px, foot - 4.0 - mark_px / 2.0},
                                      {x - way * mark_px, foot - 4.0 + mark_px / 2.0}});
    }
    if (worded) {
        const QString text =
            Text::tr("now %1").arg(models::reading_text(*plot.present, plot.scale, plot.step));
        const QSizeF size = words.size_of(text, Tone::strong);
        const double left = std::clamp(x - size.width() / 2.0, scale.left, scale.right - size.width());
        words.write_at({QRectF(QPointF(left, foot + 1.0), size)}, text, Tone::strong, true);
    }
}

} // namespace

QString DialFigure::id() const {
    return QStringLiteral("dial");
}

QString DialFigure::title() const {
    return plot_.mark() ? Text::tr("Dial at %1: %2")
                              .arg(models::exact_frequency(plot_.frequency_Hz),
                                   models::reading_text(plot_.mark()->reading, plot_.scale, plot_.step))
                        : Text::tr("Dial at %1").arg(models::exact_frequency(plot_.frequency_Hz));
}

QString DialFigure::description() const {
    return title() + QStringLiteral(". ") + models::dial_words(plot_);
}

QList<FigureWord> DialFigure::paint(QPainter& painter, const QRectF& room, const Appearance& look) const {
    painter.save();
    painter.setRenderHint(QPainter::Antialiasing);
    Lettering words(painter, room.adjusted(1, 1, -1, -1), look);
    write_title(words, room, title());
    if (!plot_.mark()) {
        const QRectF below = room.adjusted(dial_pad_px, 3.0 * words.line(), -dial_pad_px, 0);
        words.write_wrapped(below, plot_.reason, Qt::AlignHCenter | Qt::AlignTop);
        painter.restore();
        return words.words();
    }
    const double line = words.line(), left = room.left() + 3.0 * dial_pad_px,
                 right = room.right() - 3.0 * dial_pad_px;
    const double middle = room.center().y();
    const Span stops = whole_of(plot_);
    const double margin = 0.01 * (stops.high - stops.low);
    const Scale whole{
        {stops.low - margin, stops.high + margin}, left, right, room.top() + 2.0 * line + 2.0 * mark_px};
    constexpr double most_lines_between = 9.0; // farther apart the two scales lose each other
    const double lowest_y = room.bottom() - 2.6 * line - tick_px - 6.0;
    const double near_y = std::max(std::min(lowest_y, whole.y + most_lines_between * line), middle);
    const Scale near{near_of(plot_), left, right, near_y};
    painter.setPen(QPen(look.quiet_ink, 0.8, Qt::DotLine));
    const double whole_foot = whole.y + tick_px + line + 3.0;
    for (const auto& [reading, x] : {std::pair(near.span.low, left), std::pair(near.span.high, right)}) {
        painter.drawLine(QPointF(whole.within(reading), whole_foot), QPointF(x, near.y - 4.0 * mark_px));
        painter.drawLine(QPointF(whole.within(reading), whole.y),
                         QPointF(whole.within(reading), whole.y + tick_px));
    }
    paint_span(painter, near, plot_, look);
    paint_scale(painter, words, whole, stops, look);
    paint_scale(painter, words, near, stops, look);
    paint_present_dial(painter, words, near, plot_, true, look);
    paint_present_dial(painter, words, whole, plot_, false, look);
    paint_mark(painter, words, whole, *plot_.mark(), true, tick_px, {}, look);
    const auto text = [&](const QString& name, const DialMark& mark) {
        return name + QChar(' ') + models::reading_text(mark.reading, plot_.scale, plot_.step);
    };
    const double one = tick_px + 2.0, two = one + mark_px + 4.0;
    for (const auto& [mark, level] :
         {std::pair(plot_.calibrated, one), std::pair(plot_.predicted, plot_.calibrated ? two : one)}) {
        if (mark) {
            words.avoid(interval_line(near, *mark, level));
        }
    }
    if (plot_.calibrated) {
        paint_mark(painter, words, near, *plot_.calibrated, true, one,
                   text(Text::tr("calibrated"), *plot_.calibrated), look);
    }
    if (plot_.predicted) {
        paint_mark(painter, words, near, *plot_.predicted, !plot_.calibrated, plot_.calibrated ? two : one,
                   text(Text::tr("predicted"), *plot_.predicted), look);
    }
    words.write(QRectF(left, room.bottom() - line - 2.0, right - left, line), models::scale_name(plot_.scale),
                Qt::AlignRight | Qt::AlignBottom, Tone::quiet);
    painter.restore();
    return words.words();
}

} // namespace loopwright::charts
