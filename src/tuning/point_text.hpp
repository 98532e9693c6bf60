#pragma once
// Calibration points from a file or from what a person pastes.
#include "design/design.hpp"

#include <string>
#include <string_view>
#include <vector>

namespace loopwright::tuning {

/// A point a line: reading and resonant frequency, apart by a tab, a semicolon, a comma or, where there is
/// none of those, by blanks. The frequency brings its unit ("14.074 MHz"), or the header names it
/// ("reading;frequency_MHz"); a bare number is refused. Decimal point or comma; with decimal commas the
/// separator must be another than the comma. A header may name more columns, in any order; without one the
/// reading is first (or the column that has no unit). Empty lines and lines that begin with # are skipped.
/// UTF-8, a byte order mark is skipped; at most 1000 points, 100 000 bytes.
/// Throws base::InputError, one message with `name`, line, value and what is accepted.
[[nodiscard]] std::vector<design::CalibrationPoint> read_points(std::string_view text,
                                                                const std::string& name = "points");

/// The same as CSV: a header "reading,frequency_Hz" and a line a point, CR LF.
[[nodiscard]] std::string write_points(const std::vector<design::CalibrationPoint>& points);

} // namespace loopwright::tuning
