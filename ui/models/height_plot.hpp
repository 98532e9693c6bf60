#pragma once
// What height does: where the accepted power goes, and the low-angle gain, over the height of the lowest
// point, as plain data.
#include <QList>
#include <QString>

#include <optional>

namespace loopwright::survey {
struct HeightSweep;
}

namespace loopwright::models {

struct HeightPlotRow {
    double height_m = 0;
    bool established = false;
    /// Shares of the accepted power, together 1.
    double sky = 0, ground = 0, conductor = 0, joints = 0, capacitor = 0;
    std::optional<double> low_angle_dBi{}; ///< at 15 degrees, best azimuth
};

struct HeightPlot {
    double frequency_Hz = 0;
    double present_m = 1; ///< of the design as it is
    QList<HeightPlotRow> rows{};
    QString reason{};     ///< why there are none
    QString conditions{}; ///< model, ground, power convention

    [[nodiscard]] bool established() const;
};

[[nodiscard]] HeightPlot height_plot(const survey::HeightSweep& sweep);
[[nodiscard]] HeightPlot no_height_plot(const QString& reason);

/// One sentence on what is won by standing higher than now: "At 1 m 12.3 % reaches the sky; most, 45.1 %, at
/// 6.3 m". Empty where nothing is established.
[[nodiscard]] QString height_words(const HeightPlot& plot);
/// The row nearest to a height in ratio; null where there is none.
[[nodiscard]] const HeightPlotRow* row_at(const HeightPlot& plot, double height_m);

} // namespace loopwright::models
