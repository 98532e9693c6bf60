#pragma once
// A design's ground as the solver and the far field take it.
#include "design/design.hpp"
#include "geometry/wire_path.hpp"
#include "ground/power_flux.hpp"
#include "units/quantities.hpp"
#include "wire/ground_matrix.hpp"

#include <complex>
#include <vector>

namespace loopwright::loop::detail {

/// Perfect ground or soil; base::ProgramError for free space.
[[nodiscard]] wire::Underground underground_of(const design::Ground& ground);

/// Complex relative permittivity; for perfect ground that of a very good conductor.
[[nodiscard]] std::complex<double> permittivity_of(const wire::Underground& underground,
                                                   units::Frequency frequency);

/// Elements of a mesh in its own coordinates, set up where it stands.
[[nodiscard]] std::vector<ground::CurrentElement> stood_up(std::vector<ground::CurrentElement> pieces,
                                                           const geometry::Frame& stand);

} // namespace loopwright::loop::detail
