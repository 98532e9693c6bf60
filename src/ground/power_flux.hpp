#pragma once
// Where the power of a set of current elements above a half-space goes: up into the sky and down into the
// soil, each from its own plane-wave spectrum and not from the impedance matrix. What the power balance is
// proved with.
#include "ground/half_space.hpp"

#include <array>
#include <complex>
#include <vector>

namespace loopwright::ground {

/// A short piece of current: position [m] and I dl [A m], rms, exp(+j omega t).
struct CurrentElement {
    std::array<double, 3> position_m;
    std::array<std::complex<double>, 3> moment_A_m;
};

/// Far field times distance, r exp(j k0 r) E [V], rms, in the direction (zenith angle, azimuth from +x toward
/// +y), above a half-space; permittivity 1 gives free space, |eps| -> infinity perfect ground. 0 <= zenith <=
/// pi/2. e_theta points down (increasing zenith angle), e_phi toward increasing azimuth.
struct FarField {
    std::complex<double> e_theta_V, e_phi_V;
};
[[nodiscard]] FarField far_field(const std::vector<CurrentElement>& elements, double wavenumber_rad_m,
                                 std::complex<double> permittivity, double zenith_rad, double azimuth_rad);

/// Power radiated into the upper half-space [W]: |far field|^2/eta integrated over the hemisphere with Gauss
/// points in the cosine of the zenith angle and even steps of azimuth.
/// zenith_points, azimuth_points: 24 x 24 hold 1e-6 for elements within half a wavelength of one another and
/// up to two wavelengths high; more for larger systems.
[[nodiscard]] double sky_power_W(const std::vector<CurrentElement>& elements, double wavenumber_rad_m,
                                 std::complex<double> permittivity, int zenith_points = 24,
                                 int azimuth_points = 24);

/// Power that crosses the surface downward [W]: the Poynting flux through z = 0 by Parseval's theorem over
/// the plane-wave spectrum of the elements (all z > 0), waves that travel and waves that decay. Source:
/// derived in docs/theory/ground.md. 0 for a perfect conductor; Im(permittivity) <= 0.
[[nodiscard]] double ground_power_W(const std::vector<CurrentElement>& elements, double wavenumber_rad_m,
                                    std::complex<double> permittivity, int azimuth_points = 24);

} // namespace loopwright::ground
