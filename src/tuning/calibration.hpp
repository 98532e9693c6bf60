#pragma once
// The dial of the hardware as it is: pairs of reading and resonant frequency, joined with what the model and
// the law of the capacitor say. docs/theory/calibration.md has the equations (D1) to (D12).
#include "base/notice.hpp"
#include "design/design.hpp"
#include "units/quantities.hpp"

#include <cstddef>
#include <functional>
#include <memory>
#include <optional>
#include <string>
#include <vector>

namespace loopwright::tuning {

class TuningCurve;

/// How far hardware usually is from what its file says, before anything is measured: one standard deviation
/// each of a normal distribution. Ours, from common practice, no source; docs/theory/calibration.md says why.
struct HardwarePrior {
    units::Capacitance stray{};   ///< 3 pF, or a third of the stray given where that is more
    double inductance = 0.02;     ///< of ln L: size, bends, things nearby
    double capacitor = 0.03;      ///< of ln C of the variable capacitor
    double added = 0.05;          ///< of ln C of each fixed capacitor
    double offset = 0.01;         ///< where the pointer sits, in travels of the dial
    double law = 0.01;            ///< deviation of the law in travels: median; its logarithm has ln 2.5
    double law_length = 0.3;      ///< over which the deviation changes, in travels
    double reading_error = 0.003; ///< of one point, in travels: median; its logarithm has ln 2.5
    double wide = 5;              ///< times all of the hardware's, law deviation 16 times: ...
    double wide_share = 0.02;     ///< ... for so much of all hardware
    double wrong_point = 0.05;    ///< share of points that are mistaken: another line, a slip of the pen
};

/// A fixed capacitor beside the variable one.
struct FixedCapacitor {
    units::Capacitance capacitance{};
    bool in_series = false;
    std::function<bool(units::Frequency)> in_use; ///< plugged or switched in; empty: always
    std::string name;                             ///< for people
};

/// What a calibration starts from.
struct Hardware {
    /// Whole capacitance that the model asks for, stray included; nothing where the model does not answer.
    std::function<std::optional<units::Capacitance>(units::Frequency)> needed;
    units::Interval<units::Frequency> frequencies; ///< where `needed` answers
    /// The law of the variable capacitor: a reading for a capacitance, strictly monotone, continued straight
    /// beyond the stops.
    std::function<double(units::Capacitance)> reading;
    units::Capacitance stray{};
    std::vector<FixedCapacitor> fixed;
    double first_stop = 0;  ///< reading at least capacitance
    double last_stop = 180; ///< reading at most capacitance
    HardwarePrior prior;
};

/// A dial figure with its interval.
struct DialFigure {
    double reading = 0;
    units::Interval<double> range{}; ///< 95 %: where the loop is in resonance at the frequency
    /// 95 %: where the loop may be in resonance with the dial at `reading`.
    units::Interval<units::Frequency> frequency_range{};
    double reading_per_Hz = 0; ///< change of the reading with frequency
    bool within_stops = false; ///< `reading` lies between the stops, ends included
};

/// What became of a point.
struct JudgedPoint {
    design::CalibrationPoint point;
    bool used = true;
    double wrong = 0;            ///< probability that the point is mistaken
    double expected_reading = 0; ///< by the other points and the model
    units::Frequency off{};      ///< measured frequency less what the others give for its reading
    double times_scatter = 0;    ///< the same in standard deviations of such a difference, from 0
    std::string reason;          ///< one sentence: why it is left out, or how well it fits
    bool outside_model = false;  ///< the model does not answer at its frequency: not used

    /// Used, but with a fifth or more of doubt: it moves the curve less than the others and is worth
    /// measuring again.
    [[nodiscard]] bool doubtful() const noexcept { return used && wrong >= 0.2; }
};

enum class PartKind { stray, inductance, capacitor, fixed, offset, reading_error, law };

/// A property of the hardware as the points tell it.
struct FittedPart {
    PartKind kind = PartKind::stray;
    std::string key;                 ///< stable ("stray_F")
    std::string name;                ///< for people
    double assumed = 0;              ///< by the file: SI, a factor (inductance, capacitors), or in readings
    double value = 0;                ///< fitted
    units::Interval<double> range{}; ///< 95 %
    bool told = false;               ///< the points narrow it to less than half of what was assumed before
};

/// What one more point would do.
struct NextPoint {
    units::Frequency frequency{};
    double reading = 0;     ///< where to look for resonance
    double width_now = 0;   ///< mean width of the 95 % intervals of the wanted frequencies [readings]
    double width_after = 0; ///< the same, expected after the point
};

/// The calibrated dial. A value; immutable, safe from any number of threads.
class CalibratedDial {
public:
    /// The dial for a resonant frequency. Nothing where the model does not answer or no setting of the
    /// variable capacitor, between the stops or beyond, gives the capacitance. The reading is a strictly
    /// monotone function of the frequency as long as the same fixed capacitors are in use.
    [[nodiscard]] std::optional<DialFigure> at(units::Frequency frequency) const;
    /// What the file and the model alone say, with the interval before any point.
    [[nodiscard]] std::optional<DialFigure> predicted(units::Frequency frequency) const;
    /// The frequency of resonance at a reading between two frequencies (the fixed capacitors in use must be
    /// the same there). Nothing where the reading belongs to none of them.
    [[nodiscard]] std::optional<units::Frequency>
    frequency_at(double reading, units::Interval<units::Frequency> between) const;

    [[nodiscard]] const std::vector<JudgedPoint>& points() const;
    [[nodiscard]] std::size_t used_points() const;
    [[nodiscard]] const std::vector<FittedPart>& parts() const;
    [[nodiscard]] const base::Notices& notices() const;

    /// For each candidate what a point there would do to the mean width over `wanted`, best first.
    /// Frequencies that the dial does not reach are left out of both.
    [[nodiscard]] std::vector<NextPoint> next_points(const std::vector<units::Frequency>& candidates,
                                                     const std::vector<units::Frequency>& wanted) const;
    /// The best `count` further points one after the other: width_after of each is with all before it.
    [[nodiscard]] std::vector<NextPoint> plan(const std::vector<units::Frequency>& candidates,
                                              const std::vector<units::Frequency>& wanted, int count) const;

    struct Fit;
    explicit CalibratedDial(std::shared_ptr<const Fit> fit);

private:
    std::shared_ptr<const Fit> fit_;
};

/// Joins the points (none: the model alone) with the hardware. Points that contradict the others are left
/// out, marked and explained in points(); never more than half. Cost: about 1 ms for ten points. Throws
/// base::InputError for more than 1000 points or values that are not finite.
[[nodiscard]] CalibratedDial calibrate(const Hardware& hardware,
                                       const std::vector<design::CalibrationPoint>& points);

} // namespace loopwright::tuning
