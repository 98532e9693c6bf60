#include "charts/height_figure.hpp"

#include "charts/frame.hpp"
#include "charts/height_layers.hpp"
#include "charts/measures.hpp"
#include "charts/strokes.hpp"
#include "charts/text.hpp"
#include "models/headline.hpp"
#include "models/match_plot.hpp"
#include "models/pattern_plot.hpp"
#include "models/quantity_words.hpp"

#include <QCoreApplication>
#include <QPainter>

#include <algorithm>
#include <array>
#include <cmath>

namespace loopwright::charts {

namespace {

using models::HeightPlotRow;
using models::Meaning;

constexpr double gain_share = 0.3, tick_y_px = 24.0, tick_x_px = 40.0;
constexpr int most_height_ticks = 11;

const models::Curve gain_style{{}, {}, {}, models::Measure::dbi, Meaning::figure, 0};

Span heights(const models::HeightPlot& plot) {
    if (plot.rows.size() < 2) {
        return {std::log10(0.1), std::log10(20.0)};
    }
    return {std::log10(plot.rows.first().height_m), std::log10(plot.rows.last().height_m)};
}

/// Round decibels around the gains, at least ten wide.
Span gains(const models::HeightPlot& plot) {
    double low = 1e9, high = -1e9;
    for (const HeightPlotRow& row : plot.rows) {
        if (row.low_angle_dBi) {
            low = std::min(low, *row.low_angle_dBi);
            high = std::max(high, *row.low_angle_dBi);
        }
    }
    if (high < low) {
        return {-20.0, 0.0};
    }
    constexpr double step = 5.0;
    const Span span{std::floor(low / step) * step, std::ceil(high / step) * step};
    return span.high - span.low >= 2.0 * step ? span : Span{span.high - 2.0 * step, span.high};
}

QString height_footer(const models::HeightPlot& plot) {
    return models::height_words(plot) + QLatin1Char('\n') + plot.conditions;
}

struct Layout {
    Frame gain, shares;
    QRectF below;
};

Layout layout_of(const models::HeightPlot& plot, const QRectF& room, const Appearance& look) {
    const QFontMetricsF metrics(look.font);
    const double line = metrics.height(), width = room.width() - 2.0 * pad_px;
    const double below =
        metrics.boundingRect(QRectF(0, 0, width, 1e5), Qt::TextWordWrap, height_footer(plot)).height() +
        pad_px;
    const QRectF space = room.adjusted(2.0, line + 6.0, 0.0, -below);
    const double split = space.top() + gain_share * space.height();
    const double label = std::max(metrics.horizontalAdvance(QStringLiteral("100")),
                                  metrics.horizontalAdvance(QStringLiteral("\u221250"))) +
                         2.0;
    const Span x = heights(plot), dBi = gains(plot);
    const int across = std::clamp(static_cast<int>(space.width() / tick_x_px), 2, most_height_ticks);
    const auto x_ticks =
        ticks_at_log10(logarithmic_ticks({std::pow(10.0, x.low), std::pow(10.0, x.high)}, across));
    const auto up = [&](double height) {
        return std::clamp(static_cast<int>(height / tick_y_px), 2, most_height_ticks);
    };
    std::vector<Tick> bare = x_ticks;
    for (Tick& tick : bare) {
        tick.text.clear();
    }
    const QRectF upper(space.topLeft(), QPointF(space.right(), split));
    const QRectF lower(QPointF(space.left(), split), space.bottomRight());
    return {Frame(upper, look, {x, bare},
                  {dBi, linear_ticks(dBi, up(upper.height() - 1.5 * line)), Text::tr("dBi at 15°"), label}),
            Frame(lower, look, {x, x_ticks, Text::tr("Height of the lowest point, m")},
                  {{0.0, 100.0},
                   linear_ticks({0.0, 100.0}, up(lower.height() - 3.0 * line)),
                   Text::tr("Share of the power, %"),
                   label}),
            QRectF(room.left() + pad_px, room.bottom() - below, width, below - pad_px)};
}

void paint_gain(QPainter& painter, Lettering& words, const models::HeightPlot& plot, const Frame& frame,
                const Appearance& look) {
    QPolygonF line;
    painter.setBrush(Qt::NoBrush);
    const auto end = [&] {
        painter.setPen(pen_of(gain_style, look));
        painter.drawPolyline(line);
        words.avoid(line);
        line.clear();
    };
    for (const HeightPlotRow& row : plot.rows) {
        if (row.established && row.low_angle_dBi) {
            line.append(frame.at(std::log10(row.height_m), *row.low_angle_dBi));
        } else {
            end();
        }
    }
    end();
}

void paint_present_height(QPainter& painter, Lettering& words, const models::HeightPlot& plot,
                          const Layout& layout, const Appearance& look) {
    const Span x = heights(plot);
    const double at = std::log10(std::max(plot.present_m, 1e-3));
    if (at < x.low || at > x.high) {
        return;
    }
    const double px = layout.shares.px_of_x(at);
    painter.setPen(QPen(look.focus, 1.2));
    painter.drawLine(QPointF(px, layout.gain.area().top()), QPointF(px, layout.gain.area().bottom()));
    painter.drawLine(QPointF(px, layout.shares.area().top()), QPointF(px, layout.shares.area().bottom()));
    words.avoid(QPolygonF{QPointF(px, layout.gain.area().top()), QPointF(px, layout.gain.area().bottom())});
    words.avoid(
        QPolygonF{QPointF(px, layout.shares.area().top()), QPointF(px, layout.shares.area().bottom())});
    const QString text = Text::tr("now %1").arg(models::short_text(plot.present_m, units::Dimension::length));
    const QSizeF size = words.size_of(text, Tone::strong);
    QList<QRectF> candidates;
    for (const double top :
         {layout.gain.area().top() + 1.0, layout.gain.area().bottom() - size.height() - 1.0}) {
        for (const double left : {px + 4.0, px - 4.0 - size.width()}) {
            if (left > layout.gain.area().left() && left + size.width() < layout.gain.area().right()) {
                candidates.append(QRectF(QPointF(left, top), size));
            }
        }
    }
    words.write_at(candidates, text, Tone::strong, true);
}

} // namespace

QString HeightFigure::id() const {
    return QStringLiteral("height");
}

QString HeightFigure::title() const {
    return plot_.frequency_Hz > 0
               ? Text::tr("What height does, %1").arg(models::exact_frequency(plot_.frequency_Hz))
               : Text::tr("What height does");
}

QString HeightFigure::description() const {
    QString text = title() + QStringLiteral(". ") +
                   height_footer(plot_).replace(QLatin1Char('\n'), QStringLiteral(". ")) + QLatin1Char('.');
    if (!plot_.rows.isEmpty()) {
        text += QLatin1Char(' ') + point_text(0) + QStringLiteral(". ") + point_text(plot_.rows.size() - 1) +
                QLatin1Char('.');
    }
    return text;
}

QList<FigureWord> HeightFigure::paint(QPainter& painter, const QRectF& room, const Appearance& look) const {
    painter.save();
    Lettering words(painter, room.adjusted(1, 1, -1, -1), look);
    const Layout layout = layout_of(plot_, room, look);
    write_title(words, room, title());
    layout.gain.paint(painter, look);
    layout.shares.paint(painter, look);
    layout.gain.write(words);
    layout.shares.write(words);
    words.write_wrapped(layout.below, height_footer(plot_), Qt::AlignHCenter | Qt::AlignTop);
    if (!plot_.established()) {
        const QSizeF size = words.size_of(Text::tr("not established"));
        words.write_at(
            {QRectF(layout.shares.area().center() - QPointF(size.width(), size.height()) / 2.0, size)},
            Text::tr("not established"), Tone::plain, true);
        painter.restore();
        return words.words();
    }
    paint_layers(painter, plot_, layout.shares, look);
    paint_gain(painter, words, plot_, layout.gain, look);
    paint_present_height(painter, words, plot_, layout, look);
    write_layers(words, plot_, layout.shares);
    painter.restore();
    return words.words();
}

QList<QPointF> HeightFigure::points(const QRectF& room, const Appearance& look) const {
    const Frame frame = layout_of(plot_, room, look).shares;
    QList<QPointF> list;
    for (const HeightPlotRow& row : plot_.rows) {
        list.append(frame.at(std::log10(row.height_m), row.established ? 100.0 * row.sky : 0.0));
    }
    return list;
}

QString HeightFigure::point_text(qsizetype point) const {
    const HeightPlotRow& row = plot_.rows[point];
    const QString height = models::short_text(row.height_m, units::Dimension::length);
    if (!row.established) {
        return Text::tr("%1: not established").arg(height);
    }
    QStringList parts;
    parts << shares_in_words(row);
    if (row.low_angle_dBi) {
        parts << Text::tr("%1 at 15°").arg(models::dBi_text(*row.low_angle_dBi));
    }
    return QStringLiteral("%1: %2").arg(height, parts.join(QStringLiteral(", ")));
}

} // namespace loopwright::charts
