#pragma once
// What of a design its solved currents depend on.
#include "design/design.hpp"

namespace loopwright::loop {

/// The design with everything set to its default that changes no current for 1 W: title, note, capacitor
/// range, rating, arrangement, dial, dimensions and temperature coefficient, coupling, feed line, standing
/// level, air, station (its region stays where fixed
/// capacitors are plugged by band), calibration. What keys of remembered results are made of.
[[nodiscard]] design::Design solved_part(const design::Design& design);

} // namespace loopwright::loop
