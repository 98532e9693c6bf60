#pragma once
// One frequency on the dial, and what the loop does at the setting it has now, as plain data for the pictures
// of the page Retune.
#include "design/design.hpp"

#include <QList>
#include <QPointF>
#include <QString>

#include <optional>

namespace loopwright::models {

/// A reading with its interval.
struct DialMark {
    double reading = 0, low = 0, high = 0;
    bool operator==(const DialMark&) const = default;
};

struct DialPlot {
    double frequency_Hz = 0; ///< on the radio
    design::DialScale scale = design::DialScale::degrees;
    double first_stop = 0, last_stop = 180; ///< readings at least and most capacitance
    std::optional<DialMark> predicted{}, calibrated{};
    std::optional<double> span_low{}, span_high{}; ///< readings between which the loop is usable
    double vswr_limit = 2;                         ///< of that span
    double step = 1;                               ///< the finest a hand can set
    std::optional<double> present{};               ///< where the dial stands
    QString reason{};                              ///< why there is no mark

    [[nodiscard]] const std::optional<DialMark>& mark() const { return calibrated ? calibrated : predicted; }
    bool operator==(const DialPlot&) const = default;
};

/// "42.5°", "3.25 turns", "42 div", with decimals for a fifth of the step, four at most.
[[nodiscard]] QString reading_text(double reading, design::DialScale scale, double step);
/// "degrees", "turns", "divisions".
[[nodiscard]] QString scale_name(design::DialScale scale);
/// All of it in sentences.
[[nodiscard]] QString dial_words(const DialPlot& plot);

/// The loop with the dial where it stands.
struct ResonancePlot {
    double wanted_Hz = 0;    ///< the loop should be tuned to
    double resonance_Hz = 0; ///< it is tuned to
    double span_Hz = 0;      ///< usable width around the resonance if matched there, both sides together
    double vswr_limit = 2;   ///< at the edges of the span
    double window_Hz = 0;    ///< what the emission takes, around wanted_Hz; 0: none
    QString reason{};        ///< why there is no curve
    /// VSWR with the design's own coupling: x the offset from resonance_Hz, ascending, y the VSWR. Empty: a
    /// loop matched at its resonance is assumed.
    QList<QPointF> curve{};
    QString basis{}; ///< whose match that is: one sentence

    [[nodiscard]] bool established() const { return reason.isEmpty() && span_Hz > 0; }
    bool operator==(const ResonancePlot&) const = default;
};

/// VSWR at a frequency: between the points of the curve, beyond them that of its end; without a curve of a
/// loop matched at its resonance: 1 there, the limit at the edges of the span.
[[nodiscard]] double vswr_at(const ResonancePlot& plot, double frequency_Hz);
/// "Set 12 kHz too high: VSWR 3.4 at 7.0755 MHz." and whose match that is.
[[nodiscard]] QString resonance_words(const ResonancePlot& plot);

} // namespace loopwright::models
