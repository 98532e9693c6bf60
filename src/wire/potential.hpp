#pragma once
// Scalar potential of a solved current on the surface of a wire, in free space.
#include "wire/solver.hpp"

#include <complex>

namespace loopwright::wire {

/// phi = j eta/(4 pi k) Int I'(s') G ds' [V rms, Lorenz gauge, zero far away]: the charges q = -I'/(j omega)
/// spread evenly round the tube's surface, the mean over the circumference at the place, with the solver's
/// own kernel G (docs/theory/wire.md). Quadrature follows the distance; error of the integrals below 1e-4.
/// Within an element's length of a gap's edge the mesh's smoothed charge shows. x: from 0 to 1 along the
/// element.
[[nodiscard]] std::complex<double> surface_potential(const Mesh& mesh, const Currents& currents,
                                                     const Element& element, double x);

} // namespace loopwright::wire
