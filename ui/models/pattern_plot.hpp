#pragma once
// Gain over direction of the loop and of a dipole to compare with, as plain data for the polar charts.
#include <QList>
#include <QPointF>
#include <QString>

#include <optional>

namespace loopwright::design {
struct Design;
}
namespace loopwright::field {
struct Pattern;
}

namespace loopwright::models {

/// One antenna along one circle of directions. x: angle in degrees, ascending; y: dBi, NaN where there is
/// nothing in that direction.
struct PolarCurve {
    QString label; ///< "loop", "dipole at 5 m"
    QList<QPointF> points{};
};

struct PatternPlot {
    double frequency_Hz = 0;
    bool free_space = true;
    bool vertical_loop = true;   ///< azimuth 0 lies in its plane
    double azimuth_deg = 0;      ///< of the elevation cut
    double elevation_deg = 15;   ///< of the azimuth cut
    PolarCurve loop_elevation{}; ///< 0 to 180 degrees over the zenith; in free space to 360
    PolarCurve loop_azimuth{};   ///< 0 to 360 degrees
    std::optional<PolarCurve> dipole_elevation{}, dipole_azimuth{};
    QString best_words{};     ///< "best −5.1 dBi at 90° elevation"
    double low_angle_dBi = 0; ///< at 15 degrees, best azimuth
    std::optional<double> dipole_low_angle_dBi{};
    QString reason{};     ///< why there is no pattern
    QString conditions{}; ///< model, power convention, ground

    [[nodiscard]] bool established() const { return !loop_elevation.points.isEmpty(); }
};

/// The elevation that counts for distance, in degrees.
inline constexpr double low_angle_deg = 15.0;

[[nodiscard]] PatternPlot pattern_plot(const field::Pattern& pattern, const design::Design& design);
[[nodiscard]] PatternPlot no_pattern_plot(const QString& reason);

/// The gain at an angle between two points, on a straight line; nothing outside them or beside a gap.
[[nodiscard]] std::optional<double> gain_at(const PolarCurve& curve, double degrees);
/// "At 15°: −7.4 dBi, 9.8 dB below the dipole at 5 m, each in its best direction".
[[nodiscard]] QString low_angle_words(const PatternPlot& plot);
/// The same along the elevation cut that is drawn.
[[nodiscard]] QString low_angle_words_in_cut(const PatternPlot& plot);
/// "−5.1 dBi".
[[nodiscard]] QString dBi_text(double dBi);

} // namespace loopwright::models
