#include "ground/soil.hpp"

#include "units/constants.hpp"

#include <cmath>

namespace loopwright::ground {

using units::constants::electric_constant_F_m;
using units::constants::pi;

std::complex<double> complex_permittivity(const Soil& soil, units::Frequency frequency) {
    const double omega_rad_s = 2.0 * pi * frequency.value();
    return {soil.relative_permittivity, -soil.conductivity.value() / (omega_rad_s * electric_constant_F_m)};
}

Reflection reflection(std::complex<double> permittivity, double cos_zenith) {
    if (permittivity == 1.0) {
        return {}; // no ground; the quotients below are 0/0 at the horizon
    }
    const double sin2 = 1.0 - cos_zenith * cos_zenith;
    std::complex<double> s = std::sqrt(permittivity - sin2);
    if (s.imag() > 0) {
        s = -s;
    }
    return {(cos_zenith - s) / (cos_zenith + s),
            (permittivity * cos_zenith - s) / (permittivity * cos_zenith + s)};
}

} // namespace loopwright::ground
