#include "ui/made_site_plots.hpp"

#include <cmath>
#include <limits>
#include <numbers>

namespace loopwright::test {

namespace {
constexpr double degree = std::numbers::pi / 180.0;
constexpr int step_deg = 3;
} // namespace

models::PatternPlot made_pattern(bool free_space, bool dipole) {
    models::PatternPlot plot;
    plot.frequency_Hz = 7.074e6;
    plot.free_space = free_space;
    plot.loop_elevation.label = plot.loop_azimuth.label = QStringLiteral("loop");
    plot.dipole_elevation = models::PolarCurve{QStringLiteral("dipole at 5 m")};
    plot.dipole_azimuth = plot.dipole_elevation;
    for (int angle = 0; angle <= (free_space ? 360 : 180); angle += step_deg) {
        const double c = std::cos(angle * degree), s = std::abs(std::sin(angle * degree));
        plot.loop_elevation.points.append(
            {static_cast<double>(angle),
             free_space ? 1.76 + 20.0 * std::log10(std::abs(c) + 1e-9) : 2.0 - 12.0 * c * c});
        // Nothing along the horizon.
        plot.dipole_elevation->points.append(
            {static_cast<double>(angle),
             s < 1e-9 ? std::numeric_limits<double>::quiet_NaN() : 7.0 + 20.0 * std::log10(s)});
    }
    for (int angle = 0; angle <= 360; angle += step_deg) {
        plot.loop_azimuth.points.append({static_cast<double>(angle), -9.2});
        plot.dipole_azimuth->points.append(
            {static_cast<double>(angle), -4.74 - 10.0 * std::abs(std::sin(angle * degree))});
    }
    plot.best_words = QStringLiteral("best 2.0 dBi at 90\u00b0 elevation");
    plot.low_angle_dBi = -9.2;
    plot.dipole_low_angle_dBi = -4.74;
    if (!dipole) {
        plot.dipole_elevation.reset();
        plot.dipole_azimuth.reset();
        plot.dipole_low_angle_dBi.reset();
    }
    plot.conditions =
        QStringLiteral("full-wave model \u00b7 over average ground \u00b7 gain over the power accepted");
    return plot;
}

models::HeightPlot made_heights(double present_m) {
    models::HeightPlot plot;
    plot.frequency_Hz = 7.074e6;
    plot.present_m = present_m;
    for (int i = 0; i < 24; ++i) {
        models::HeightPlotRow row;
        row.height_m = 0.1 * std::pow(200.0, i / 23.0);
        row.established = row.height_m >= 0.15;
        row.conductor = 0.10;
        row.joints = 0.005;
        row.capacitor = 0.05;
        row.sky = 0.845 * row.height_m / (row.height_m + 3.0);
        row.ground = 0.845 - row.sky;
        if (row.established) {
            row.low_angle_dBi = 10.0 * std::log10(row.sky) - 2.0;
        }
        plot.rows.append(row);
    }
    plot.conditions =
        QStringLiteral("full-wave model \u00b7 over average ground \u00b7 shares of the power accepted");
    return plot;
}

} // namespace loopwright::test
