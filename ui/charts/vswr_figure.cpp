#include "charts/vswr_figure.hpp"

#include "charts/frame.hpp"
#include "charts/strokes.hpp"
#include "models/quantity_words.hpp"

#include <QCoreApplication>
#include <QPainter>

#include <algorithm>
#include <cmath>

namespace loopwright::charts {

namespace {

struct Text {
    Q_DECLARE_TR_FUNCTIONS(Charts)
};

/// Beyond it a curve says nothing more.
constexpr double highest_vswr = 10.0;
constexpr double kilo = 1e3, tick_px = 56.0, arrow_px = 5.0;
constexpr int most_ticks = 9;
const models::Curve curve_style{{}, {}, {}, models::Measure::number, models::Meaning::figure, 0};
const models::Curve match_style{{}, {}, {}, models::Measure::number, models::Meaning::sky, 3};

Span offsets_kHz(const models::MatchPlot& plot) {
    if (!plot.established()) {
        return {-1.0, 1.0};
    }
    return {plot.curve.first().offset_Hz / kilo, plot.curve.last().offset_Hz / kilo};
}

QString x_title(const models::MatchPlot& plot) {
    return plot.established()
               ? Text::tr("Offset from %1, kHz").arg(models::exact_frequency(plot.frequency_Hz))
               : Text::tr("Offset from the match, kHz");
}

QString remark(const models::MatchPlot& plot) {
    QStringList parts = {models::bandwidth_words(plot), plot.conditions};
    parts.removeAll(QString());
    return models::match_words(plot) + QLatin1Char('\n') + parts.join(QStringLiteral(" \u00b7 "));
}

struct Layout {
    Frame frame;
    QRectF below;
};

Layout layout_of(const models::MatchPlot& plot, const QRectF& room, const Appearance& look) {
    const QFontMetricsF metrics(look.font);
    const double line = metrics.height();
    const double below =
        metrics.boundingRect(QRectF(0, 0, room.width() - 8.0, 1e5), Qt::TextWordWrap, remark(plot)).height() +
        4.0;
    const QRectF plot_room = room.adjusted(2.0, line + 6.0, 0.0, -below);
    const Span x = offsets_kHz(plot);
    const int most = std::clamp(static_cast<int>(plot_room.width() / tick_px), 2, most_ticks);
    const std::vector<Tick> y_ticks = ticks_at_log10({{1.0, QStringLiteral("1")},
                                                      {1.5, QStringLiteral("1.5")},
                                                      {2.0, QStringLiteral("2")},
                                                      {3.0, QStringLiteral("3")},
                                                      {5.0, QStringLiteral("5")},
                                                      {highest_vswr, QStringLiteral("10")}});
    Frame frame(plot_room, look, {x, linear_ticks(x, most), x_title(plot)},
                {{0.0, std::log10(highest_vswr)}, y_ticks, Text::tr("VSWR")});
    return {frame, QRectF(room.left() + 4.0, room.bottom() - below, room.width() - 8.0, below - 2.0)};
}

QPointF on_paper(const Frame& frame, double offset_Hz, double vswr) {
    return frame.at(offset_Hz / kilo, std::log10(std::clamp(vswr, 1.0, highest_vswr)));
}

/// The curve up to where it leaves the chart: a piece for each stretch below the upper end.
QList<QPolygonF> pieces_of(const models::MatchPlot& plot, const Frame& frame) {
    QList<QPolygonF> pieces;
    bool open = false;
    for (qsizetype i = 0; i + 1 < plot.curve.size(); ++i) {
        models::MatchPlotPoint a = plot.curve[i], b = plot.curve[i + 1];
        if (a.vswr >= highest_vswr && b.vswr >= highest_vswr) {
            open = false;
            continue;
        }
        const auto cut = [](const models::MatchPlotPoint& inside, models::MatchPlotPoint outside) {
            const double share = (highest_vswr - inside.vswr) / (outside.vswr - inside.vswr);
            outside.offset_Hz = inside.offset_Hz + share * (outside.offset_Hz - inside.offset_Hz);
            outside.vswr = highest_vswr;
            return outside;
        };
        a = a.vswr > highest_vswr ? cut(b, a) : a;
        b = b.vswr > highest_vswr ? cut(a, b) : b;
        if (!open) {
            pieces.append(QPolygonF{on_paper(frame, a.offset_Hz, a.vswr)});
        }
        pieces.last().append(on_paper(frame, b.offset_Hz, b.vswr));
        open = b.vswr < highest_vswr;
    }
    return pieces;
}

/// A line with arrows between both crossings of the limit, and what it is wide.
void paint_bandwidth(QPainter& painter, Lettering& words, const models::MatchPlot& plot, const Frame& frame,
                     const Appearance& look) {
    const auto width = plot.bandwidth_Hz();
    if (!width) {
        return;
    }
    const QPointF left = on_paper(frame, *plot.lower_Hz, plot.vswr_limit);
    const QPointF right = on_paper(frame, *plot.upper_Hz, plot.vswr_limit);
    painter.setPen(QPen(look.ink, 1.0, Qt::DotLine));
    for (const QPointF& side : {left, right}) {
        painter.drawLine(side, QPointF(side.x(), frame.area().bottom()));
    }
    const double y = frame.area().bottom() - words.line() / 2.0 - 2.0;
    painter.setPen(QPen(look.ink, 1.0));
    painter.drawLine(QPointF(left.x(), y), QPointF(right.x(), y));
    painter.setBrush(look.ink);
    for (const double direction : {1.0, -1.0}) {
        const QPointF tip(direction > 0 ? left.x() : right.x(), y);
        painter.drawPolygon(QPolygonF{tip, tip + QPointF(direction * arrow_px, -arrow_px / 2.0),
                                      tip + QPointF(direction * arrow_px, arrow_px / 2.0)});
    }
    const QString text = models::measured_text(models::Measure::frequency, *width);
    const QSizeF size = words.size_of(text, Tone::strong);
    const double middle = (left.x() + right.x()) / 2.0;
    QList<QRectF> candidates;
    if (size.width() + 4.0 * arrow_px < right.x() - left.x()) {
        candidates.append(QRectF(QPointF(middle - size.width() / 2.0, y - size.height() / 2.0), size));
    }
    candidates.append(QRectF(QPointF(right.x() + 4.0, y - size.height() / 2.0), size));
    candidates.append(QRectF(QPointF(left.x() - 4.0 - size.width(), y - size.height() / 2.0), size));
    words.write_at(candidates, text, Tone::strong, true);
    words.take(QRectF(QPointF(left.x(), y - arrow_px / 2.0), QPointF(right.x(), y + arrow_px / 2.0)));
}

void write_limit(Lettering& words, const models::MatchPlot& plot, const Frame& frame) {
    const QString text = Text::tr("VSWR %1").arg(models::plain_number(plot.vswr_limit, 3));
    const QSizeF size = words.size_of(text);
    const double y = on_paper(frame, 0.0, plot.vswr_limit).y() + 2.0;
    QList<QRectF> candidates;
    for (const double x : {frame.area().left() + 3.0, frame.area().right() - size.width() - 3.0}) {
        candidates.append(QRectF(QPointF(x, y), size));
    }
    words.write_at(candidates, text, Tone::plain, true);
}

} // namespace

QString VswrFigure::id() const {
    return QStringLiteral("vswr");
}

QString VswrFigure::title() const {
    return Text::tr("VSWR around the match");
}

QString VswrFigure::description() const {
    QString text = title() + QStringLiteral(". ") +
                   remark(plot_).replace(QLatin1Char('\n'), QStringLiteral(". ")) + QStringLiteral(". ");
    if (plot_.established()) {
        for (const models::MatchPlotPoint* point : {&plot_.curve.first(), &plot_.curve.last()}) {
            text += Text::tr("At %1: VSWR %2. ")
                        .arg(models::offset_text(point->offset_Hz), models::plain_number(point->vswr, 3));
        }
    }
    return text.trimmed();
}

QList<FigureWord> VswrFigure::paint(QPainter& painter, const QRectF& room, const Appearance& look) const {
    painter.save();
    Lettering words(painter, room.adjusted(1, 1, -1, -1), look);
    const Layout layout = layout_of(plot_, room, look);
    const Frame& frame = layout.frame;
    write_title(words, room, title());
    frame.paint(painter, look);
    frame.write(words);
    words.write_wrapped(layout.below, remark(plot_), Qt::AlignHCenter | Qt::AlignTop);
    if (plot_.established()) {
        if (plot_.vswr_limit < highest_vswr) {
            words.take(
                paint_limit(painter, frame.area(), on_paper(frame, 0.0, plot_.vswr_limit).y(), true, look));
        }
        painter.setBrush(Qt::NoBrush);
        painter.setPen(pen_of(curve_style, look));
        for (const QPolygonF& piece : pieces_of(plot_, frame)) {
            painter.drawPolyline(piece);
            words.avoid(piece);
        }
        if (plot_.match_vswr <= highest_vswr) {
            paint_marker(painter, on_paper(frame, 0.0, plot_.match_vswr), match_style, look);
        }
        paint_bandwidth(painter, words, plot_, frame, look);
        write_limit(words, plot_, frame);
        if (plot_.match_vswr <= highest_vswr) {
            words.write_beside(on_paper(frame, 0.0, plot_.match_vswr), Text::tr("match"), 6.0);
        }
    } else {
        const QSizeF size = words.size_of(Text::tr("not established"));
        words.write_at({QRectF(frame.area().center() - QPointF(size.width(), size.height()) / 2.0, size)},
                       Text::tr("not established"), Tone::plain, true);
    }
    painter.restore();
    return words.words();
}

QList<QPointF> VswrFigure::points(const QRectF& room, const Appearance& look) const {
    const Layout layout = layout_of(plot_, room, look);
    QList<QPointF> list;
    for (const models::MatchPlotPoint& point : plot_.curve) {
        list.append(on_paper(layout.frame, point.offset_Hz, point.vswr));
    }
    return list;
}

QString VswrFigure::point_text(qsizetype point) const {
    const models::MatchPlotPoint& at = plot_.curve[point];
    return Text::tr("%1: VSWR %2, %3")
        .arg(models::offset_text(at.offset_Hz), models::plain_number(at.vswr, 3),
             models::impedance_text(at.input_ohm));
}

} // namespace loopwright::charts
