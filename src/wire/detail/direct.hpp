#pragma once
// The free-space matrix by quadrature of the dynamic kernel at one frequency: the check of the series and the
// way beyond its range.
#include "wire/detail/moments.hpp"
#include "wire/solver.hpp"

namespace loopwright::wire::detail {

/// B_0 and B_2 of the series hold everything that is not smooth; what is left, (exp(-jkR) - 1)/R of currents
/// and (exp(-jkR) - 1)/R + k^2 R/2 of charges, takes four Gauss points an element. docs/theory/wire.md (W4).
[[nodiscard]] FieldMatrix direct_matrix(const Mesh& mesh, const Moments& moments, double wavenumber_rad_m);

} // namespace loopwright::wire::detail
