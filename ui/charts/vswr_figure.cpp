#include "charts/vswr_figure.hpp"

#include "charts/strokes.hpp"
#include "charts/text.hpp"
#include "charts/vswr_frame.hpp"
#include "models/quantity_words.hpp"

#include <QCoreApplication>
#include <QPainter>

#include <algorithm>
#include <cmath>

namespace loopwright::charts {

namespace {

constexpr double highest_vswr = VswrFrame::highest, kilo = 1e3, arrow_px = 5.0;
const models::Curve curve_style{{}, {}, {}, models::Measure::number, models::Meaning::figure, 0};
const models::Curve match_style{{}, {}, {}, models::Measure::number, models::Meaning::sky, 3};

Span offsets_kHz(const models::MatchPlot& plot) {
    if (!plot.established()) {
        return {-1.0, 1.0};
    }
    return {plot.curve.first().offset_Hz / kilo, plot.curve.last().offset_Hz / kilo};
}

QString remark(const models::MatchPlot& plot) {
    QStringList parts = {models::bandwidth_words(plot), plot.conditions};
    parts.removeAll(QString());
    return models::match_words(plot) + QLatin1Char('\n') + parts.join(QStringLiteral(" \u00b7 "));
}

VswrFrame frame_of(const models::MatchPlot& plot, const QRectF& room, const Appearance& look) {
    const QString from =
        plot.established() ? models::exact_frequency(plot.frequency_Hz) : Text::tr("the match");
    return {{Text::tr("VSWR around the match"), Text::tr("VSWR"), from, remark(plot)},
            offsets_kHz(plot),
            room,
            look};
}

/// The curve up to where it leaves the chart: a piece for each stretch below the upper end.
QList<QPolygonF> vswr_pieces_of(const models::MatchPlot& plot, const VswrFrame& frame) {
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
            pieces.append(QPolygonF{frame.at(a.offset_Hz, a.vswr)});
        }
        pieces.last().append(frame.at(b.offset_Hz, b.vswr));
        open = b.vswr < highest_vswr;
    }
    return pieces;
}

/// A line with arrows between both crossings of the limit, and what it is wide.
void paint_bandwidth(QPainter& painter, Lettering& words, const models::MatchPlot& plot,
                     const VswrFrame& frame, const Appearance& look) {
    const auto width = plot.bandwidth_Hz();
    if (!width) {
        return;
    }
    const QPointF left = frame.at(*plot.lower_Hz, plot.vswr_limit);
    const QPointF right = frame.at(*plot.upper_Hz, plot.vswr_limit);
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
    const VswrFrame frame = frame_of(plot_, room, look);
    frame.paint(painter, words, look);
    if (plot_.established()) {
        frame.paint_limit_line(painter, words, plot_.vswr_limit, look);
        painter.setBrush(Qt::NoBrush);
        painter.setPen(pen_of(curve_style, look));
        for (const QPolygonF& piece : vswr_pieces_of(plot_, frame)) {
            painter.drawPolyline(piece);
            words.avoid(piece);
        }
        if (plot_.match_vswr <= highest_vswr) {
            paint_marker(painter, frame.at(0.0, plot_.match_vswr), match_style, look);
        }
        paint_bandwidth(painter, words, plot_, frame, look);
        frame.write_limit(words, plot_.vswr_limit);
        if (plot_.match_vswr <= highest_vswr) {
            words.write_beside(frame.at(0.0, plot_.match_vswr), Text::tr("match"), 6.0);
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
    const VswrFrame frame = frame_of(plot_, room, look);
    QList<QPointF> list;
    for (const models::MatchPlotPoint& point : plot_.curve) {
        list.append(frame.at(point.offset_Hz, point.vswr));
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
