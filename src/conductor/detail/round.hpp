#pragma once
// The kernel of round conductors in plain SI doubles: shared by skin_effect and the prepared Conductor.
#include "numeric/annulus.hpp"
#include "numeric/bessel.hpp"
#include "units/constants.hpp"

#include <complex>

namespace loopwright::conductor::detail {

/// 1 / (pi sigma (b^2 - a^2)) [ohm/m]; wall_fraction = wall / outer radius.
inline double round_dc_ohm_per_m(double radius_m, double wall_fraction, double conductivity_S_m) {
    return 1.0 / (units::constants::pi * conductivity_S_m * radius_m * radius_m * wall_fraction *
                  (2.0 - wall_fraction));
}

/// Internal impedance over the resistance to direct current; x_squared = omega mu0 sigma radius^2.
inline std::complex<double> round_ratio(double x_squared, double wall_fraction) {
    const std::complex<double> w(0.0, x_squared);
    return wall_fraction >= 1.0 ? numeric::half_z_i0_over_i1(w) : numeric::tube_ratio(w, wall_fraction);
}

} // namespace loopwright::conductor::detail
