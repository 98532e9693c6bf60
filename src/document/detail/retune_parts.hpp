#pragma once
// The parts of a document that setting the loop stands on: dial, hand-made capacitor, working frequencies,
// calibration.
#include "design/design.hpp"
#include "document/detail/fields.hpp"

#include <string>
#include <vector>

namespace loopwright::document::detail {

/// Dial, hand-made capacitor and temperature coefficient; minimum and maximum follow from the dimensions of a
/// hand-made one where they are left out.
void read_setting(const Fields& fields, design::Capacitor& capacitor);
/// Names of bands of any region, spelled as the table does; what is unknown is kept.
[[nodiscard]] std::vector<std::string> read_bands_of_any_region(const Fields& fields);
[[nodiscard]] std::vector<design::WorkingFrequency> read_working_frequencies(const Fields& station);
void read_calibration(const Fields& fields, design::Calibration& calibration);

} // namespace loopwright::document::detail
