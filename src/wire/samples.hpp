#pragma once
// A solved current as short pieces in space: what far fields, ground losses and other quadratures start from.
#include "ground/power_flux.hpp"
#include "wire/solver.hpp"

#include <vector>

namespace loopwright::wire {

/// The current at Gauss points of every element, as position and I dl [A m]. points: 1 to 8 an element; 3
/// hold 1e-6 in far fields for elements up to a 24th of a wavelength.
[[nodiscard]] std::vector<ground::CurrentElement> current_elements(const Mesh& mesh, const Currents& currents,
                                                                   int points = 3);

} // namespace loopwright::wire
