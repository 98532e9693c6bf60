// From the core's pattern to what is drawn.
#include "field/pattern.hpp"
#include "models/chart_text.hpp"
#include "models/model_words.hpp"
#include "models/pattern_plot.hpp"
#include "models/quantity_words.hpp"

#include <QCoreApplication>

#include <cmath>
#include <limits>
#include <numbers>

namespace loopwright::models {

namespace {

constexpr double degree = std::numbers::pi / 180.0;

QList<QPointF> points_of_cut(const field::Cut& cut) {
    QList<QPointF> points;
    for (std::size_t i = 0; i < cut.angle.size(); ++i) {
        const double gain = cut.gain[i].value;
        points.append({cut.angle[i].value() / degree,
                       std::isfinite(gain) ? gain : std::numeric_limits<double>::quiet_NaN()});
    }
    return points;
}

QString dipole_label(const field::Pattern& pattern) {
    if (pattern.free_space) {
        return ChartText::tr("dipole");
    }
    return ChartText::tr("dipole at %1")
        .arg(short_text(pattern.request.dipole->height.value(), units::Dimension::length));
}

} // namespace

PatternPlot pattern_plot(const field::Pattern& pattern, const design::Design& design) {
    PatternPlot plot;
    plot.frequency_Hz = pattern.frequency.value();
    plot.free_space = pattern.free_space;
    plot.vertical_loop = design.site.plane == design::Plane::vertical;
    plot.azimuth_deg = pattern.request.azimuth.value() / degree;
    plot.elevation_deg = pattern.request.elevation.value() / degree;
    plot.loop_elevation = {ChartText::tr("loop"), points_of_cut(pattern.elevation)};
    plot.loop_azimuth = {ChartText::tr("loop"), points_of_cut(pattern.azimuth)};
    if (pattern.request.dipole && pattern.dipole_elevation && pattern.dipole_azimuth) {
        plot.dipole_elevation = {dipole_label(pattern), points_of_cut(*pattern.dipole_elevation)};
        plot.dipole_azimuth = {dipole_label(pattern), points_of_cut(*pattern.dipole_azimuth)};
    }
    plot.best_words = ChartText::tr("best %1 at %2 elevation")
                          .arg(dBi_text(pattern.gain_max.value),
                               plain_number(std::round(pattern.best.elevation.value() / degree), 4) +
                                   QStringLiteral("\u00b0"));
    plot.low_angle_dBi = pattern.gain_low_angle.value;
    if (pattern.dipole_gain_low_angle) {
        plot.dipole_low_angle_dBi = pattern.dipole_gain_low_angle->value;
    }
    plot.conditions = ChartText::tr("%1 \u00b7 gain over the power accepted; mismatch and feed "
                                    "line not counted")
                          .arg(model_and_ground(loop::Model::full_wave, design.site.ground));
    return plot;
}

} // namespace loopwright::models
