#include "charts/smith_figure.hpp"

#include "charts/lettering.hpp"
#include "charts/measures.hpp"
#include "charts/scales.hpp"
#include "charts/strokes.hpp"
#include "charts/text.hpp"
#include "models/quantity_words.hpp"

#include <QCoreApplication>
#include <QPainter>

#include <algorithm>
#include <array>
#include <cmath>
#include <numbers>

namespace loopwright::charts {

namespace {

using Complex = std::complex<double>;

/// Resistances and reactances of the grid, in terms of the line's impedance.
constexpr std::array<double, 5> grid_values = {0.2, 0.5, 1.0, 2.0, 5.0};
constexpr int arc_pieces = 48;
constexpr double hatch_px = 4.0, beyond_every_px = 7.0;
constexpr int marked_offsets = 5;
const models::Curve locus_style{{}, {}, {}, models::Measure::number, models::Meaning::figure, 0};
const models::Curve marker_style{{}, {}, {}, models::Measure::number, models::Meaning::sky, 3};

/// Where the disc lies; the words below it wrap with the width.
struct Disc {
    QPointF centre;
    double radius = 1;
    QRectF below;
    [[nodiscard]] QPointF at(Complex reflection) const {
        return centre + QPointF(reflection.real(), -reflection.imag()) * radius;
    }
};

Disc disc_in(const QRectF& room, const Appearance& look, const QString& words) {
    const QFontMetricsF metrics(look.font);
    const double line = metrics.height();
    const double text_width = room.width() - 2.0 * pad_px;
    const double below =
        metrics.boundingRect(QRectF(0, 0, text_width, 1e5), Qt::TextWordWrap, words).height() + pad_px;
    const QRectF square = room.adjusted(pad_px, line + 6.0 + line, -pad_px, -below - line);
    Disc disc;
    // Beside the disc the labels of the rim need no room of their own: they stand in the corners.
    disc.radius = std::max(10.0, std::min(square.width(), square.height()) / 2.0);
    disc.centre = square.center();
    disc.below = QRectF(room.left() + pad_px, room.bottom() - below, text_width, below - pad_px);
    return disc;
}

QString smith_footer(const models::MatchPlot& plot) {
    QStringList lines = {models::match_words(plot), models::bandwidth_words(plot), plot.conditions};
    lines.removeAll(QString());
    return lines.join(QLatin1Char('\n'));
}

/// A line of constant resistance (resistance given) or reactance, the other running over its whole range.
QPolygonF grid_line(const Disc& disc, double value, bool resistance) {
    QPolygonF line;
    for (int i = 0; i <= arc_pieces; ++i) {
        const double share = static_cast<double>(i) / arc_pieces;
        // The running part by the tangent, from 0 (or minus infinity) to infinity.
        const double running = resistance ? std::tan(std::numbers::pi * (share - 0.5) * 0.9999)
                                          : std::tan(std::numbers::pi / 2.0 * share * 0.9999);
        const Complex z = resistance ? Complex(value, running) : Complex(running, value);
        line.append(disc.at((z - 1.0) / (z + 1.0)));
    }
    return line;
}

void paint_grid(QPainter& painter, const Disc& disc, const Appearance& look) {
    painter.setBrush(Qt::NoBrush);
    painter.setPen(QPen(look.grid, 1.0));
    for (const double value : grid_values) {
        // The circle of constant resistance: centre r/(1 + r), radius 1/(1 + r).
        const double radius = disc.radius / (1.0 + value);
        painter.drawEllipse(disc.at(value / (1.0 + value)), radius, radius);
        painter.drawPolyline(grid_line(disc, value, false));
        painter.drawPolyline(grid_line(disc, -value, false));
    }
    painter.setPen(QPen(look.quiet_ink, 1.0));
    painter.drawLine(disc.at(-1.0), disc.at(1.0));
    painter.drawEllipse(disc.centre, disc.radius, disc.radius);
}

/// Reactances at the rim, outside of it.
void write_rim(Lettering& words, const Disc& disc, double line_ohm) {
    for (const double value : {0.5, 1.0, 2.0, -0.5, -1.0, -2.0}) {
        const Complex z(0.0, value);
        const Complex at = (z - 1.0) / (z + 1.0);
        const QString text = (value < 0 ? QStringLiteral("\u2212j") : QStringLiteral("j")) +
                             models::plain_number(std::abs(value) * line_ohm, 3);
        const QSizeF size = words.size_of(text);
        const QPointF out(at.real(), -at.imag());
        const QPointF centre =
            disc.at(at) + QPointF(out.x() * (size.width() / 2.0 + 2.0), out.y() * (size.height() / 2.0));
        words.write(QRectF(centre - QPointF(size.width(), size.height()) / 2.0, size), text, Qt::AlignCenter,
                    Tone::quiet);
    }
}

/// Resistances on the straight line through the middle; those that would cover the locus are left out.
void write_resistances(Lettering& words, const Disc& disc, double line_ohm) {
    for (const double value : grid_values) {
        const QString text = value == 1.0
                                 ? QStringLiteral("%1\u2009\u03a9").arg(models::plain_number(line_ohm, 3))
                                 : models::plain_number(value * line_ohm, 3);
        const QSizeF size = words.size_of(text);
        const QPointF at = disc.at((value - 1.0) / (value + 1.0));
        words.write_at(
            {QRectF(at + QPointF(1.0, 0.0), size), QRectF(at + QPointF(1.0, -size.height()), size)}, text,
            Tone::quiet);
    }
}

double limit_radius(double vswr) {
    return (vswr - 1.0) / (vswr + 1.0);
}

void paint_limit_circle(QPainter& painter, const Disc& disc, double vswr, const Appearance& look) {
    const double radius = limit_radius(vswr) * disc.radius;
    painter.setPen(QPen(look.ink, 1.2));
    painter.drawEllipse(disc.centre, radius, radius);
    const int strokes = std::max(8, static_cast<int>(2.0 * std::numbers::pi * radius / beyond_every_px));
    QList<QLineF> hatch;
    for (int i = 0; i < strokes; ++i) {
        const double angle = 2.0 * std::numbers::pi * i / strokes, leant = angle + hatch_px / radius;
        hatch.append({disc.centre + radius * QPointF(std::cos(angle), std::sin(angle)),
                      disc.centre + (radius + hatch_px) * QPointF(std::cos(leant), std::sin(leant))});
    }
    painter.setPen(QPen(look.ink, 0.8));
    painter.drawLines(hatch);
}

QPolygonF locus_on(const Disc& disc, const models::MatchPlot& plot) {
    QPolygonF locus;
    for (const models::MatchPlotPoint& point : plot.curve) {
        locus.append(disc.at(reflection(point.input_ohm, plot.line_ohm)));
    }
    return locus;
}

/// The place of an offset on the locus.
QPointF place_of(const models::MatchPlot& plot, const QPolygonF& locus, double offset_Hz) {
    const auto after =
        std::lower_bound(plot.curve.begin(), plot.curve.end(), offset_Hz,
                         [](const models::MatchPlotPoint& p, double at) { return p.offset_Hz < at; });
    const qsizetype i = std::clamp<qsizetype>(after - plot.curve.begin(), 1, plot.curve.size() - 1);
    const double from = plot.curve[i - 1].offset_Hz, to = plot.curve[i].offset_Hz;
    return locus[i - 1] + (locus[i] - locus[i - 1]) * ((offset_Hz - from) / (to - from));
}

void write_limit(Lettering& words, const Disc& disc, double vswr) {
    const QString text = Text::tr("VSWR %1").arg(models::plain_number(vswr, 3));
    const QSizeF size = words.size_of(text);
    const double out = limit_radius(vswr) * disc.radius + hatch_px + 1.0;
    QList<QRectF> candidates;
    for (const double angle : {-0.5, 0.5, -0.25, 0.25, -0.75, 0.75, 0.0, 1.0}) {
        const QPointF side(std::cos(angle * std::numbers::pi), std::sin(angle * std::numbers::pi));
        const QPointF centre = disc.centre + QPointF(side.x() * (out + size.width() / 2.0),
                                                     side.y() * (out + size.height() / 2.0));
        candidates.append(QRectF(centre - QPointF(size.width(), size.height()) / 2.0, size));
    }
    words.write_at(candidates, text, Tone::plain, true);
}

void paint_locus(QPainter& painter, const models::MatchPlot& plot, const QPolygonF& locus,
                 const Appearance& look) {
    painter.setBrush(Qt::NoBrush);
    painter.setPen(pen_of(locus_style, look));
    painter.drawPolyline(locus);
    const Span span{plot.curve.first().offset_Hz * 1e-3, plot.curve.last().offset_Hz * 1e-3};
    for (const Tick& tick : linear_ticks(span, marked_offsets)) {
        if (tick.value != 0.0) {
            paint_marker(painter, place_of(plot, locus, tick.value * 1e3), locus_style, look);
        }
    }
}

void write_offsets(Lettering& words, const models::MatchPlot& plot, const QPolygonF& locus) {
    const Span span{plot.curve.first().offset_Hz * 1e-3, plot.curve.last().offset_Hz * 1e-3};
    for (const Tick& tick : linear_ticks(span, marked_offsets)) {
        if (tick.value != 0.0) {
            words.write_beside(place_of(plot, locus, tick.value * 1e3), models::offset_text(tick.value * 1e3),
                               6.0);
        }
    }
}

} // namespace

Complex reflection(Complex ohm, double line_ohm) {
    return (ohm - line_ohm) / (ohm + line_ohm);
}

QString SmithFigure::id() const {
    return QStringLiteral("smith");
}

QString SmithFigure::title() const {
    return Text::tr("Smith chart, impedance on %1\u2009\u03a9").arg(models::plain_number(plot_.line_ohm, 3));
}

QString SmithFigure::description() const {
    QString text =
        title() + QStringLiteral(". ") + smith_footer(plot_).replace(QLatin1Char('\n'), QStringLiteral(". "));
    if (plot_.established()) {
        for (const models::MatchPlotPoint* point : {&plot_.curve.first(), &plot_.curve.last()}) {
            text += Text::tr(". At %1: %2")
                        .arg(models::offset_text(point->offset_Hz), models::impedance_text(point->input_ohm));
        }
    }
    return text + QLatin1Char('.');
}

QList<FigureWord> SmithFigure::paint(QPainter& painter, const QRectF& room, const Appearance& look) const {
    painter.save();
    Lettering words(painter, room.adjusted(1, 1, -1, -1), look);
    const Disc disc = disc_in(room, look, smith_footer(plot_));
    write_title(words, room, title());
    paint_grid(painter, disc, look);
    if (plot_.established()) {
        const QPolygonF locus = locus_on(disc, plot_);
        const QPointF match = disc.at(reflection(plot_.match_ohm, plot_.line_ohm));
        paint_limit_circle(painter, disc, plot_.vswr_limit, look);
        paint_locus(painter, plot_, locus, look);
        paint_marker(painter, match, marker_style, look);
        words.avoid(locus);
        words.take(QRectF(match - QPointF(4, 4), QSizeF(8, 8)));
        words.write_wrapped(disc.below, smith_footer(plot_), Qt::AlignHCenter | Qt::AlignTop);
        write_rim(words, disc, plot_.line_ohm);
        words.write_beside(match, Text::tr("match"), 5.0, Tone::strong);
        write_limit(words, disc, plot_.vswr_limit);
        write_offsets(words, plot_, locus);
        write_resistances(words, disc, plot_.line_ohm);
    } else {
        words.write_wrapped(disc.below, smith_footer(plot_), Qt::AlignHCenter | Qt::AlignTop);
        write_rim(words, disc, plot_.line_ohm);
        words.write_at({QRectF(disc.centre - QPointF(60, 2.0 * words.line()), QSizeF(120, words.line()))},
                       Text::tr("not established"), Tone::plain, true);
    }
    painter.restore();
    return words.words();
}

QList<QPointF> SmithFigure::points(const QRectF& room, const Appearance& look) const {
    return locus_on(disc_in(room, look, smith_footer(plot_)), plot_);
}

QString SmithFigure::point_text(qsizetype point) const {
    const models::MatchPlotPoint& at = plot_.curve[point];
    return Text::tr("%1: %2, VSWR %3")
        .arg(models::offset_text(at.offset_Hz), models::impedance_text(at.input_ohm),
             models::plain_number(at.vswr, 3));
}

} // namespace loopwright::charts
