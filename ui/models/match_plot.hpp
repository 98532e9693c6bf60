#pragma once
// What the feed line sees around the match, as plain data for the Smith chart and the VSWR curve.
#include "coupling/coupled_loop.hpp"

#include <QList>
#include <QString>

#include <complex>
#include <optional>
#include <vector>

namespace loopwright::models {

/// One frequency with the capacitor left where it gives the match.
struct MatchPlotPoint {
    double offset_Hz = 0; ///< from the frequency of the match
    std::complex<double> input_ohm{};
    double vswr = 1;
};

struct MatchPlot {
    double frequency_Hz = 0; ///< of the match
    double line_ohm = 50;    ///< impedance of the line: what VSWR and the Smith chart are for
    double vswr_limit = 2;
    std::complex<double> match_ohm{};
    double match_vswr = 1;
    QList<MatchPlotPoint> curve{}; ///< ascending in offset; empty: not established
    /// Offsets at which the VSWR reaches the limit on both sides of the match; absent where the match is
    /// above the limit, or where the curve ends before.
    std::optional<double> lower_Hz{}, upper_Hz{};
    QString reason{};     ///< why there is no curve
    QString conditions{}; ///< model and line, in one line

    [[nodiscard]] bool established() const { return !curve.isEmpty(); }
    /// Between both crossings of the limit.
    [[nodiscard]] std::optional<double> bandwidth_Hz() const;
};

/// From the full-wave model. The crossings lie on straight lines between the points.
[[nodiscard]] MatchPlot match_plot(const coupling::Match& match,
                                   const std::vector<coupling::MatchPoint>& curve, units::Resistance line,
                                   double vswr_limit);
/// Says why there is nothing to draw: one sentence.
[[nodiscard]] MatchPlot no_match_plot(const QString& reason, units::Resistance line = units::ohms(50),
                                      double vswr_limit = 2.0);

/// "48.2 + j3.1 Ω".
[[nodiscard]] QString impedance_text(std::complex<double> ohm);
/// All the digits a frequency was given with: "10.1375 MHz", thin space.
[[nodiscard]] QString exact_frequency(double hertz);
/// "+3.5 kHz", "−12 kHz", "0 kHz".
[[nodiscard]] QString offset_text(double hertz);
/// "Match at 7.074 MHz: 48.2 + j3.1 Ω, VSWR 1.08".
[[nodiscard]] QString match_words(const MatchPlot& plot);
/// "VSWR 2 or less over 6.40 kHz", or why there is no such width.
[[nodiscard]] QString bandwidth_words(const MatchPlot& plot);

} // namespace loopwright::models
