#pragma once
// A design in sentences, as the person typed it.
#include "design/design.hpp"
#include "report/page.hpp"

#include <vector>

namespace loopwright::report {

/// Loop, conductor, joints, capacitor, coupling (where there is one), site, station; quantities as typed.
[[nodiscard]] std::vector<Sentence> design_words(const design::Design& design);

/// "in free space", "over average ground", "over ground of relative permittivity 13 and 5 mS/m".
[[nodiscard]] std::string ground_words(const design::Ground& ground);

} // namespace loopwright::report
