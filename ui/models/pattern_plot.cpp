#include "models/pattern_plot.hpp"

#include "models/chart_text.hpp"
#include "models/headline.hpp"
#include "models/quantity_words.hpp"

#include <QCoreApplication>

#include <algorithm>
#include <cmath>

namespace loopwright::models {

namespace {

QString whole_degrees(double degrees) {
    return plain_number(std::round(degrees), 4) + QStringLiteral("\u00b0");
}

/// "9.8 dB below the dipole at 5 m".
QString beside_dipole(double loop_dBi, double dipole_dBi, const QString& dipole) {
    const double over = loop_dBi - dipole_dBi;
    if (std::abs(over) < 0.05) {
        return ChartText::tr("as much as the %1").arg(dipole);
    }
    const QString dB = QString::number(std::abs(over), 'f', 1) + QStringLiteral("\u2009dB");
    return over < 0 ? ChartText::tr("%1 below the %2").arg(dB, dipole)
                    : ChartText::tr("%1 above the %2").arg(dB, dipole);
}

} // namespace

QString dBi_text(double dBi) {
    return decibels(units::Decibel{dBi}, QStringLiteral("dBi"));
}

PatternPlot no_pattern_plot(const QString& reason) {
    PatternPlot plot;
    plot.reason = reason;
    plot.conditions = ChartText::tr("full-wave model");
    return plot;
}

std::optional<double> gain_at(const PolarCurve& curve, double degrees) {
    const auto after = std::lower_bound(curve.points.begin(), curve.points.end(), degrees,
                                        [](const QPointF& point, double at) { return point.x() < at; });
    if (after == curve.points.end() || (after == curve.points.begin() && after->x() > degrees)) {
        return std::nullopt;
    }
    double gain = after->y();
    if (after->x() > degrees) {
        const QPointF before = *(after - 1);
        gain = before.y() + (after->y() - before.y()) * (degrees - before.x()) / (after->x() - before.x());
    }
    return std::isfinite(gain) ? std::optional<double>(gain) : std::nullopt;
}

QString low_angle_words(const PatternPlot& plot) {
    if (!plot.established()) {
        return ChartText::tr("Not established: %1").arg(plot.reason);
    }
    const QString angle = whole_degrees(low_angle_deg);
    if (plot.dipole_low_angle_dBi && plot.dipole_elevation) {
        return ChartText::tr("At %1: %2, %3 (each in its best direction)")
            .arg(angle, dBi_text(plot.low_angle_dBi),
                 beside_dipole(plot.low_angle_dBi, *plot.dipole_low_angle_dBi, plot.dipole_elevation->label));
    }
    return ChartText::tr("At %1: %2 in the best direction").arg(angle, dBi_text(plot.low_angle_dBi));
}

QString low_angle_words_in_cut(const PatternPlot& plot) {
    const auto loop = gain_at(plot.loop_elevation, low_angle_deg);
    if (!loop) {
        return {};
    }
    const QString angle = whole_degrees(low_angle_deg);
    const auto dipole = plot.dipole_elevation ? gain_at(*plot.dipole_elevation, low_angle_deg) : std::nullopt;
    if (!dipole) {
        return ChartText::tr("In this cut at %1: loop %2").arg(angle, dBi_text(*loop));
    }
    return ChartText::tr("In this cut at %1: loop %2, %3 %4")
        .arg(angle, dBi_text(*loop), plot.dipole_elevation->label, dBi_text(*dipole));
}

} // namespace loopwright::models
