#pragma once
// What must stand on every page: the dangers of a loop, and what the figures mean.
#include "base/notice.hpp"
#include "loop/operating_point.hpp"
#include "report/page.hpp"

#include <vector>

namespace loopwright::report {

/// Kilovolts, burns, exposure, tuning, law. The same on every page, in this order, codes stable.
/// with_distances: the page gives distances; otherwise it says that it gives none.
[[nodiscard]] std::vector<Sentence> cautions(bool with_distances = false);

/// What the figures of a model assume and how they are to be read, then the notices, worst first. The
/// notice that says the same as the model's own sentence is left out.
[[nodiscard]] std::vector<Sentence> assumptions(loop::Model model, const base::Notices& notices);

} // namespace loopwright::report
