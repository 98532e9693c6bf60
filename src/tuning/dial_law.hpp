#pragma once
// The dial of the variable capacitor: which capacitance stands behind a reading, and which reading sets a
// capacitance. docs/theory/retune.md, (T1) to (T4).
#include "design/design.hpp"
#include "numeric/monotone.hpp"
#include "units/quantities.hpp"

#include <optional>

namespace loopwright::tuning {

/// A capacitor's dial, prepared; immutable. Capacitance is everywhere that of the variable capacitor alone:
/// no stray, nothing added (capacitor::Capacitor::variable_for() gives it for what the loop needs). Readings
/// are in the marks of the scale. Between the stops, with u the share of the way from the stop of least
/// capacitance to that of most:
///   straight-line capacitance  C = Cmin + u (Cmax - Cmin)
///   straight-line frequency    C = 1/(a + b u)^2, the ends Cmin and Cmax
///   straight-line wavelength   C = (a + b u)^2, the ends Cmin and Cmax
///   table                      a monotone curve through the entries (numeric::MonotoneCurve); its ends are
///                              the stops
/// The laws are definitions: with a fixed inductance and no stray, resonant frequency or wavelength goes in a
/// straight line with the reading (F. E. Terman, Radio Engineers' Handbook, 1943, from memory). Real
/// capacitors bend away from them near the stops; only a table or a calibration knows by how much.
class DialCurve {
public:
    /// Throws base::InputError where there is no dial ("capacitor.dial") or the design's rules refuse the
    /// capacitor.
    explicit DialCurve(const design::Capacitor& capacitor);

    /// Throws base::InputError ("reading") beyond the stops; a billionth of the way is forgiven.
    [[nodiscard]] units::Capacitance capacitance_at(double reading) const;
    /// Throws base::InputError ("capacitance") for what no setting gives; likewise.
    [[nodiscard]] double reading_at(units::Capacitance variable) const;
    /// The same, or nothing.
    [[nodiscard]] std::optional<double> find_reading(units::Capacitance variable) const;
    /// The same, continued in a straight line beyond the stops with the slope there: for fits only, no
    /// hardware does that. Strictly monotone; finite for every finite capacitance.
    [[nodiscard]] double continued_reading(units::Capacitance variable) const;
    /// dC/dreading [F a mark], with its sign: negative where the capacitance falls with the reading; never 0.
    /// Throws as capacitance_at().
    [[nodiscard]] units::Capacitance slope_at(double reading) const;

    [[nodiscard]] double at_minimum() const { return at_minimum_; } ///< reading at the least capacitance
    [[nodiscard]] double at_maximum() const { return at_maximum_; } ///< reading at the most
    [[nodiscard]] units::Interval<double> readings() const;         ///< low to high
    /// Capacitances at the stops: the capacitor's minimum and maximum, or the ends of the table.
    [[nodiscard]] units::Interval<units::Capacitance> range() const;

    /// The smallest change of reading that a hand can set: hand_step over reduction.
    [[nodiscard]] double finest_step() const { return dial_.hand_step / dial_.reduction; }
    /// Change of reading lost when the direction is turned round; none lost where one side is always come
    /// from.
    [[nodiscard]] double backlash() const { return dial_.backlash; }
    [[nodiscard]] design::DialScale scale() const { return dial_.scale; }
    [[nodiscard]] const design::Dial& dial() const { return dial_; }

private:
    [[nodiscard]] double share_of(double reading) const;

    design::Dial dial_;
    double at_minimum_ = 0, at_maximum_ = 0;
    double least_F_ = 0, most_F_ = 0;
    double power_ = 1; ///< C^power goes in a straight line with the reading
    std::optional<numeric::MonotoneCurve> table_;
};

} // namespace loopwright::tuning
