#include "charts/polar_figure.hpp"

#include "charts/measures.hpp"
#include "charts/polar_disc.hpp"
#include "charts/strokes.hpp"
#include "charts/text.hpp"
#include "models/match_plot.hpp"
#include "models/quantity_words.hpp"

#include <QCoreApplication>
#include <QPainter>

#include <algorithm>
#include <cmath>

namespace loopwright::charts {

namespace {

constexpr double polar_side_px = 34.0, below_horizon_px = 4.0;

models::Curve loop_style(const models::PolarCurve& curve) {
    return {{}, {}, curve.label, models::Measure::dbi, models::Meaning::sky, 0};
}
models::Curve dipole_style(const models::PolarCurve& curve) {
    return {{}, {}, curve.label, models::Measure::dbi, models::Meaning::figure, 1};
}

QString degrees_text(double degrees) {
    return models::plain_number(std::round(degrees * 10.0) / 10.0, 4) + QStringLiteral("\u00b0");
}

/// A curve on the disc; a gap in the data ends a piece.
QList<QPolygonF> pieces_of(const models::PolarCurve& curve, const PolarDisc& disc) {
    QList<QPolygonF> pieces;
    bool open = false;
    for (const QPointF& point : curve.points) {
        if (!std::isfinite(point.y())) {
            open = false;
            continue;
        }
        if (!open) {
            pieces.append(QPolygonF());
        }
        pieces.last().append(disc.at(point.x(), point.y()));
        open = true;
    }
    return pieces;
}

void paint_curve(QPainter& painter, const models::PolarCurve& curve, const models::Curve& style,
                 const PolarDisc& disc, const Appearance& look) {
    painter.setBrush(Qt::NoBrush);
    painter.setPen(pen_of(style, look));
    for (const QPolygonF& piece : pieces_of(curve, disc)) {
        painter.drawPolyline(piece);
    }
}

/// Just outside and inside the curve, all around.
QList<QPointF> name_places(const models::PolarCurve& curve, const PolarDisc& disc, double width,
                           double height) {
    QList<QPointF> places;
    for (const double degrees : {60.0, 120.0, 45.0, 135.0, 75.0, 105.0, 30.0, 150.0, 90.0, 240.0, 300.0}) {
        const auto gain = models::gain_at(curve, degrees);
        if (!gain) {
            continue;
        }
        const QPointF at = disc.at(degrees, *gain);
        const QPointF out = disc.on_rim(degrees) - disc.centre;
        for (const double off : {6.0, -6.0, 14.0, -14.0}) {
            const QPointF middle = at + out / disc.radius * off;
            const double left = (out.x() > 0) == (off > 0) ? middle.x() : middle.x() - width;
            const double top = (out.y() > 0) == (off > 0) ? middle.y() : middle.y() - height;
            places.append({left, top});
        }
    }
    // Where the disc is small: inside it.
    for (const double share : {0.15, 0.3, 0.45, 0.6, 0.75, 0.05}) {
        places.append(disc.centre - QPointF(width / 2.0, share * disc.radius + height));
    }
    return places;
}

double highest(const std::optional<models::PolarCurve>& curve, double start) {
    if (curve) {
        for (const QPointF& point : curve->points) {
            if (std::isfinite(point.y())) {
                start = std::max(start, point.y());
            }
        }
    }
    return start;
}

} // namespace

double polar_rim_dBi(const models::PatternPlot& plot) {
    constexpr double step_dB = 5.0;
    double most = -1e9;
    for (const std::optional<models::PolarCurve>& curve :
         {std::optional(plot.loop_elevation), std::optional(plot.loop_azimuth), plot.dipole_elevation,
          plot.dipole_azimuth}) {
        most = highest(curve, most);
    }
    return most > -1e9 ? std::ceil(most / step_dB) * step_dB : 0.0;
}

struct PolarFigure::Scene {
    PolarDisc disc;
    QRectF below;
};

PolarFigure::Scene PolarFigure::scene(const QRectF& room, const Appearance& look) const {
    const QFontMetricsF metrics(look.font);
    const double line = metrics.height(), text_width = room.width() - 2.0 * pad_px;
    const double below =
        metrics.boundingRect(QRectF(0, 0, text_width, 1e5), Qt::TextWordWrap, footer()).height() + pad_px;
    // Title above, labels of the angles around.
    QRectF space = room.adjusted(polar_side_px, 2.0 * line + 8.0, -polar_side_px, -below - line - 2.0);
    Scene result;
    result.disc.half = half();
    result.disc.rim_dBi = polar_rim_dBi(plot_);
    result.disc.range_dB = polar_range_dB;
    const double height = half() ? space.height() - below_horizon_px : space.height() / 2.0;
    result.disc.radius = std::max(10.0, std::min(space.width() / 2.0, height));
    result.disc.centre = half() ? QPointF(space.center().x(), space.bottom() - below_horizon_px -
                                                                  (height - result.disc.radius) / 2.0)
                                : space.center();
    result.below = QRectF(room.left() + pad_px, room.bottom() - below, text_width, below - pad_px);
    return result;
}

const models::PolarCurve& PolarFigure::loop() const {
    return cut_ == PolarCut::elevation ? plot_.loop_elevation : plot_.loop_azimuth;
}

const std::optional<models::PolarCurve>& PolarFigure::dipole() const {
    return cut_ == PolarCut::elevation ? plot_.dipole_elevation : plot_.dipole_azimuth;
}

double PolarFigure::shape() const {
    return half() ? 1.5 : 1.0;
}

QString PolarFigure::id() const {
    return cut_ == PolarCut::elevation ? QStringLiteral("pattern-elevation")
                                       : QStringLiteral("pattern-azimuth");
}

QString PolarFigure::title() const {
    const QString frequency =
        plot_.established() ? models::exact_frequency(plot_.frequency_Hz) : Text::tr("no frequency");
    return cut_ == PolarCut::elevation
               ? Text::tr("Gain over elevation, %1").arg(frequency)
               : Text::tr("Gain over azimuth at %1, %2").arg(degrees_text(plot_.elevation_deg), frequency);
}

QString PolarFigure::footer() const {
    QStringList lines = {models::low_angle_words(plot_)};
    if (plot_.established()) {
        if (cut_ == PolarCut::elevation) {
            lines << models::low_angle_words_in_cut(plot_) + QStringLiteral("; ") + plot_.best_words;
        } else if (plot_.vertical_loop) {
            lines << Text::tr("Seen from above; the loop's plane runs from 180° to 0°");
        } else {
            lines << Text::tr("Seen from above");
        }
        lines << Text::tr("Radius: dBi on an even dB scale, %1 dB from rim to middle")
                     .arg(static_cast<int>(polar_range_dB));
    }
    lines << plot_.conditions;
    return lines.join(QLatin1Char('\n'));
}

QString PolarFigure::description() const {
    return title() + QStringLiteral(". ") + footer().replace(QLatin1Char('\n'), QStringLiteral(". ")) +
           QLatin1Char('.');
}

QList<QPointF> PolarFigure::points(const QRectF& room, const Appearance& look) const {
    const PolarDisc disc = scene(room, look).disc;
    QList<QPointF> list;
    for (const QPointF& point : loop().points) {
        list.append(std::isfinite(point.y()) ? disc.at(point.x(), point.y()) : disc.centre);
    }
    return list;
}

QString PolarFigure::point_text(qsizetype point) const {
    const QPointF at = loop().points[point];
    const auto gain = [](const std::optional<double>& dBi) {
        return dBi ? models::dBi_text(*dBi) : Text::tr("nothing");
    };
    QString text = (cut_ == PolarCut::elevation ? Text::tr("%1 from the horizon: loop %2")
                                                : Text::tr("azimuth %1: loop %2"))
                       .arg(degrees_text(at.x()), gain(models::gain_at(loop(), at.x())));
    if (dipole()) {
        text += QStringLiteral(", ") + dipole()->label + QLatin1Char(' ') +
                gain(models::gain_at(*dipole(), at.x()));
    }
    return text;
}

namespace {

/// The low angle stands in front: a strong line, a marker on each curve.
void paint_low_angle(QPainter& painter, Lettering& words, const models::PatternPlot& plot,
                     const PolarDisc& disc, const Appearance& look) {
    painter.setPen(QPen(look.ink, 1.2));
    painter.drawLine(disc.centre, disc.on_rim(models::low_angle_deg));
    words.avoid(QPolygonF{disc.centre, disc.on_rim(models::low_angle_deg)});
    if (const auto gain = models::gain_at(plot.loop_elevation, models::low_angle_deg)) {
        paint_marker(painter, disc.at(models::low_angle_deg, *gain), loop_style(plot.loop_elevation), look);
    }
    if (plot.dipole_elevation) {
        if (const auto gain = models::gain_at(*plot.dipole_elevation, models::low_angle_deg)) {
            paint_marker(painter, disc.at(models::low_angle_deg, *gain), dipole_style(*plot.dipole_elevation),
                         look);
        }
    }
}

void write_angles(Lettering& words, const PolarDisc& disc, PolarCut cut, double azimuth_deg) {
    if (cut == PolarCut::azimuth) {
        for (int angle = 0; angle < 360; angle += 30) {
            write_outside(words, disc, angle, degrees_text(angle));
        }
        return;
    }
    write_outside(words, disc, models::low_angle_deg, degrees_text(models::low_angle_deg), Tone::strong);
    for (const int angle : {30, 60, 90, 120, 150}) {
        write_outside(words, disc, angle, degrees_text(angle <= 90 ? angle : 180 - angle));
    }
    // Below the horizon's ends: where they look to.
    const double away = std::fmod(azimuth_deg + 180.0, 360.0);
    for (const auto& [side, azimuth] : {std::pair(0.0, azimuth_deg), std::pair(180.0, away)}) {
        const QString text = Text::tr("azimuth %1").arg(degrees_text(azimuth));
        const QSizeF size = words.size_of(text);
        const QPointF end = disc.on_rim(side);
        const double left =
            side == 0.0 ? std::min(end.x() - size.width() / 2.0, end.x() + polar_side_px - size.width())
                        : std::max(end.x() - size.width() / 2.0, end.x() - polar_side_px + 1.0);
        words.write(QRectF(QPointF(left, end.y() + 2.0), size), text, Qt::AlignCenter, Tone::quiet);
    }
}

} // namespace

QList<FigureWord> PolarFigure::paint(QPainter& painter, const QRectF& room, const Appearance& look) const {
    painter.save();
    Lettering words(painter, room.adjusted(1, 1, -1, -1), look);
    const Scene s = scene(room, look);
    write_title(words, room, title());
    words.write_wrapped(s.below, footer(), Qt::AlignHCenter | Qt::AlignTop);
    paint_disc(painter, s.disc, look);
    if (!plot_.established()) {
        const QSizeF size = words.size_of(Text::tr("not established"));
        words.write_at({QRectF(s.disc.centre - QPointF(size.width() / 2.0, s.disc.radius / 2.0), size)},
                       Text::tr("not established"), Tone::plain, true);
        painter.restore();
        return words.words();
    }
    if (dipole()) {
        paint_curve(painter, *dipole(), dipole_style(*dipole()), s.disc, look);
    }
    paint_curve(painter, loop(), loop_style(loop()), s.disc, look);
    if (cut_ == PolarCut::elevation) {
        paint_low_angle(painter, words, plot_, s.disc, look);
    }
    for (const auto& curve : {std::optional(loop()), dipole()}) {
        for (const QPolygonF& piece : curve ? pieces_of(*curve, s.disc) : QList<QPolygonF>()) {
            words.avoid(piece);
        }
    }
    write_angles(words, s.disc, cut_, plot_.azimuth_deg);
    const auto name = [&](const models::PolarCurve& curve, const models::Curve& style) {
        const QSizeF size = words.size_of(curve.label) + QSizeF(30.0, 0.0);
        words.write_curve_name(name_places(curve, s.disc, size.width(), size.height()), style);
    };
    name(loop(), loop_style(loop()));
    if (dipole()) {
        name(*dipole(), dipole_style(*dipole()));
    }
    write_rings(words, s.disc, cut_ == PolarCut::elevation ? 180.0 - 7.5 : 105.0);
    painter.restore();
    return words.words();
}

} // namespace loopwright::charts
