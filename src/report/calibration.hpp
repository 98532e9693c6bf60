#pragma once
// A calibration as text, JSON and CSV.
#include "report/match.hpp"
#include "report/page.hpp"
#include "report/table.hpp"
#include "tuning/calibration_report.hpp"

#include <string>
#include <vector>

namespace loopwright::report {

/// Keys in docs/reference/cli.md. written: whether the points were stored in the design file.
[[nodiscard]] std::string calibration_json(const tuning::CalibrationReport& report,
                                           const design::Design& design, bool written);
[[nodiscard]] Page calibration_page(const tuning::CalibrationReport& report, const design::Design& design);
/// A row for each working frequency: predicted and calibrated dial, SI.
[[nodiscard]] Table calibration_data(const tuning::CalibrationReport& report);
/// For the reference: the keys of calibration_json, `schema` and `notices` left out.
[[nodiscard]] const std::vector<KeyMeaning>& calibration_keys();

} // namespace loopwright::report
