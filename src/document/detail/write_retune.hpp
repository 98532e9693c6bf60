#pragma once
// Dial, hand-made capacitor, working frequencies and calibration as parts of a design's text.
#include "design/design.hpp"
#include "document/detail/part.hpp"

#include <vector>

namespace loopwright::document::detail {

[[nodiscard]] Json dial_part(const design::Dial& dial);
[[nodiscard]] Json made_part(const design::MadeCapacitor& made);
[[nodiscard]] Json working_frequencies_part(const std::vector<design::WorkingFrequency>& all);
[[nodiscard]] Json calibration_part(const design::Calibration& calibration);

} // namespace loopwright::document::detail
