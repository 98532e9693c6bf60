#pragma once
// The sentences that stand first on a page: volts against the rating, and the distance people must keep.
#include "design/design.hpp"
#include "report/page.hpp"
#include "survey/survey.hpp"

#include <vector>

namespace loopwright::report {

/// The highest peak capacitor voltage of the planned bands against the rating, the bands where none is
/// established, and the distance.
[[nodiscard]] std::vector<Sentence> hazards(const survey::Survey& survey);

/// Of the curve of a survey: the highest voltage among the frequencies that the capacitor reaches.
[[nodiscard]] std::vector<Sentence> sweep_hazards(const survey::Survey& survey);

/// The same for one point.
[[nodiscard]] std::vector<Sentence> hazards(const loop::OperatingPoint& point, const design::Design& design);

} // namespace loopwright::report
