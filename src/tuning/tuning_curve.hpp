#pragma once
// The capacitance that a loop's resonance takes, as a smooth function of the frequency: solved at some
// frequencies, interpolated between.
#include "loop/loop_model.hpp"
#include "numeric/interpolation.hpp"
#include "units/quantities.hpp"

#include <optional>

namespace loopwright::tuning {

/// Immutable, cheap to ask (some 50 ns), safe from any number of threads.
class TuningCurve {
public:
    /// Solves `points` (5 to 1000) frequencies, spaced evenly in ratio. Between them w^2 C = 1/L (that of the
    /// whole loop, its own charge taken in), a slow function of ln f, follows cubic pieces: within 2e-5 of C
    /// at 16 points an octave far below self-resonance. Throws base::InputError where the model stands behind
    /// fewer than three of them, and what the model throws; base::ProgramError for a range without width.
    TuningCurve(const loop::LoopModel& model, units::Interval<units::Frequency> range, int points = 49);

    /// What the model stands behind, without gaps, from the lowest frequency on.
    [[nodiscard]] units::Interval<units::Frequency> range() const { return range_; }
    /// Whole capacitance, stray included. Nothing outside range().
    [[nodiscard]] std::optional<units::Capacitance> needed(units::Frequency frequency) const;
    /// d ln C / d ln f, about -2 far below self-resonance. Nothing outside range().
    [[nodiscard]] std::optional<double> steepness(units::Frequency frequency) const;
    /// Where the loop resonates with a capacitance. Nothing where that lies outside range().
    [[nodiscard]] std::optional<units::Frequency> resonance(units::Capacitance whole) const;

private:
    struct Solved;
    explicit TuningCurve(Solved solved);
    [[nodiscard]] static Solved solve(const loop::LoopModel& model, units::Interval<units::Frequency> range,
                                      int points);
    units::Interval<units::Frequency> range_;
    numeric::HermiteCurve per_henry_; ///< w^2 C over ln f
};

/// The planned bands of a station, its own working frequencies and the calibration's points, a tenth more to
/// both sides:
/// where the dial is asked for. Throws base::InputError for an unknown region.
[[nodiscard]] units::Interval<units::Frequency> dial_frequencies(const design::Design& design);

} // namespace loopwright::tuning
