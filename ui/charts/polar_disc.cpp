#include "charts/polar_disc.hpp"

#include "models/pattern_plot.hpp"

#include <QPainter>

#include <algorithm>
#include <cmath>
#include <numbers>

namespace loopwright::charts {

namespace {

constexpr double ring_dB = 10.0;
constexpr int spoke_deg = 30;

QPointF direction(double degrees) {
    const double angle = degrees * std::numbers::pi / 180.0;
    return {std::cos(angle), -std::sin(angle)};
}

} // namespace

QPointF PolarDisc::at(double degrees, double dBi) const {
    const double share = std::clamp((dBi - rim_dBi) / range_dB + 1.0, 0.0, 1.0);
    return centre + direction(degrees) * (share * radius);
}

QPointF PolarDisc::on_rim(double degrees, double beyond_px) const {
    return centre + direction(degrees) * (radius + beyond_px);
}

void paint_disc(QPainter& painter, const PolarDisc& disc, const Appearance& look) {
    constexpr int sixteenths = 16;
    const int sweep = (disc.half ? 180 : 360) * sixteenths;
    painter.setBrush(Qt::NoBrush);
    painter.setPen(QPen(look.grid, 1.0));
    for (double below = ring_dB; below < disc.range_dB; below += ring_dB) {
        const double radius = disc.radius * (1.0 - below / disc.range_dB);
        painter.drawArc(QRectF(disc.centre - QPointF(radius, radius), QSizeF(2.0 * radius, 2.0 * radius)), 0,
                        sweep);
    }
    for (int spoke = 0; spoke <= (disc.half ? 180 : 330); spoke += spoke_deg) {
        painter.drawLine(disc.centre, disc.on_rim(spoke));
    }
    painter.setPen(QPen(look.quiet_ink, 1.0));
    painter.drawArc(
        QRectF(disc.centre - QPointF(disc.radius, disc.radius), QSizeF(2.0 * disc.radius, 2.0 * disc.radius)),
        0, sweep);
    if (disc.half) {
        painter.setPen(QPen(look.ink, 1.5));
        painter.drawLine(disc.on_rim(180), disc.on_rim(0));
    }
}

void write_rings(Lettering& words, const PolarDisc& disc, double along_deg) {
    for (double below = 0.0; below < disc.range_dB; below += ring_dB) {
        const QString text =
            below == 0.0
                ? models::dBi_text(disc.rim_dBi).replace(QStringLiteral(".0"), QString())
                : QString::number(disc.rim_dBi - below, 'f', 0).replace(QLatin1Char('-'), QChar(0x2212));
        const QSizeF size = words.size_of(text);
        const QPointF at = disc.at(along_deg, disc.rim_dBi - below);
        words.write_at({QRectF(at - QPointF(size.width() / 2.0, size.height() / 2.0), size)}, text,
                       Tone::quiet);
    }
}

void write_outside(Lettering& words, const PolarDisc& disc, double degrees, const QString& text, Tone tone) {
    const QSizeF size = words.size_of(text, tone);
    const QPointF out = direction(degrees);
    const QPointF centre = disc.on_rim(degrees) + QPointF(out.x() * (size.width() / 2.0 + 3.0),
                                                          out.y() * (size.height() / 2.0 + 1.0));
    words.write(QRectF(centre - QPointF(size.width(), size.height()) / 2.0, size), text, Qt::AlignCenter,
                tone);
}

} // namespace loopwright::charts
