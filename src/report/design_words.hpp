#pragma once
// A design in sentences, as the person typed it.
#include "design/design.hpp"
#include "report/page.hpp"

#include <vector>

namespace loopwright::report {

/// Loop, conductor, joints, capacitor, coupling (where there is one), site, station; quantities as typed.
[[nodiscard]] std::vector<Sentence> design_words(const design::Design& design);

} // namespace loopwright::report
