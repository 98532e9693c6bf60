#pragma once
// Electric and magnetic field of a solved current at any point in free space.
#include "wire/solver.hpp"

#include <array>
#include <complex>

namespace loopwright::wire {

/// Complex components along x, y, z; rms.
struct NearField {
    std::array<std::complex<double>, 3> electric_V_m{};
    std::array<std::complex<double>, 3> magnetic_A_m{};
    /// Root of the sum of squared magnitudes of the components: the rms of the whole vector.
    [[nodiscard]] double electric_rms_V_m() const;
    [[nodiscard]] double magnetic_rms_A_m() const;
};

/// From currents and charges on the axes: E = -j k eta/(4 pi) Int I t G + j eta/(4 pi k) Int I' (1 + jkR)/R G
/// R^ and H = 1/(4 pi) Int I t x R^ (1 + jkR)/R G, G = exp(-jkR)/R (docs/theory/wire.md). Quadrature
/// follows the distance: error of the integrals below 1e-5. What the mesh leaves out shows within an
/// element's length of a wire: there the fields are those of the smoothed charge. Throws base::InputError for
/// a point inside a conductor.
[[nodiscard]] NearField near_field(const Mesh& mesh, const Currents& currents,
                                   const geometry::Vector3& position_m);

} // namespace loopwright::wire
