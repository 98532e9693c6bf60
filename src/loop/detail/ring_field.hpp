#pragma once
// What the currents of one circular turn send in one direction.
#include "loop/detail/far_direction.hpp"
#include "loop/detail/ring_waves.hpp"

namespace loopwright::loop::detail {

/// The circle lies round the origin in the plane y = 0, its gap on +z. With n = (rho sin psi, n_y, rho cos
/// psi) the place at t = s/R has n.r = R rho cos(t - psi), so order n of a current gives the power m of the
/// series, for the polarisation across the axis and the other one,
///   R (R rho)^m / m! B_{m+1,n} (cos n psi, n_y n sin n psi / (m + 1)),
///   B_{p,n} = int cos(n t) cos^p t dt = 2 pi 2^-p binomial(p, (p - n) / 2)  (L.30)
[[nodiscard]] FarDirection ring_direction(const geometry::Vector3& direction, double radius_m,
                                          const RingWaves& waves) noexcept;

} // namespace loopwright::loop::detail
