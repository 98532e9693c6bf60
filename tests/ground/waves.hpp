#pragma once
#include "units/constants.hpp"

#include <complex>

namespace loopwright::ground {

inline constexpr std::complex<double> j{0.0, 1.0};

/// Wavenumber of free space, 1/m.
inline double k0_at(double f_Hz) {
    return 2.0 * units::constants::pi * f_Hz / units::constants::speed_of_light_m_s;
}

} // namespace loopwright::ground
