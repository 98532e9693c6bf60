#pragma once
// What a person is shown of a calibration: the dial of his working frequencies as predicted and as
// calibrated, the points, the hardware they speak of, and where to measure next.
#include "design/design.hpp"
#include "tuning/calibration.hpp"
#include "tuning/tuning_curve.hpp"

#include <memory>
#include <optional>
#include <string>
#include <vector>

namespace loopwright::tuning {

struct CalibrationRow {
    std::string band; ///< "40m"; empty for an own working frequency outside the planned bands
    units::Frequency frequency{};
    std::optional<DialFigure> predicted;  ///< by the file and the model alone
    std::optional<DialFigure> calibrated; ///< with the points; the same where there are none
};

struct CalibrationReport {
    CalibratedDial dial;
    std::vector<CalibrationRow> rows; ///< ascending in frequency
    std::vector<NextPoint> next;      ///< the best further points, one after the other
    base::Notices notices;            ///< of the calibration, and that no hand is modelled
};

/// Rows: the edges and the usual working frequency of every planned band, and the station's own ones. Throws
/// what hardware_of() throws.
[[nodiscard]] CalibrationReport calibration_report(const design::Design& design,
                                                   std::shared_ptr<const TuningCurve> curve);
[[nodiscard]] CalibrationReport calibration_report(const design::Design& design);

/// "Measure next at 14.1 MHz, near 38.5: the intervals narrow from 3.1 to 1.2 on average." Empty where there
/// is none.
[[nodiscard]] std::string next_point_text(const std::vector<NextPoint>& next);

/// Why the interval of a predicted reading is wide, and what narrows it: one sentence.
[[nodiscard]] std::string wide_interval_text();

/// The best three further points for the usual frequency of each planned band, one after the other.
[[nodiscard]] std::vector<NextPoint> next_points_of(const CalibratedDial& dial, const design::Design& design);

} // namespace loopwright::tuning
