#pragma once
// What of a design its solved currents depend on.
#include "design/design.hpp"

namespace loopwright::loop {

/// The design with everything set to its default that changes no current for 1 W: title, note, capacitor
/// range, rating and arrangement, coupling, feed line, standing level, air, station. What keys of remembered
/// results are made of.
[[nodiscard]] design::Design solved_part(const design::Design& design);

} // namespace loopwright::loop
