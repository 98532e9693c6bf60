#pragma once
// The field far from a solved current in free space. Over ground the same pieces of current go to
// ground::far_field and ground::sky_power_W, which add the reflected wave.
#include "ground/power_flux.hpp"

#include <vector>

namespace loopwright::wire {

/// Far field times distance, r exp(jkr) E [V], rms, over the whole sphere: -j k eta/(4 pi) Int I t exp(jk
/// r'.r) ds across the direction. Angles as in ground::far_field; zenith from 0 to pi.
[[nodiscard]] ground::FarField far_field(const std::vector<ground::CurrentElement>& elements,
                                         double wavenumber_rad_m, double zenith_rad, double azimuth_rad);

/// Radiated power [W]: |far field|^2/eta over the sphere, Gauss points in cos(zenith), even steps in azimuth.
/// 16 x 24 hold 1e-9 up to half a wavelength of extent; more for larger.
[[nodiscard]] double radiated_power_W(const std::vector<ground::CurrentElement>& elements,
                                      double wavenumber_rad_m, int zenith_points = 16,
                                      int azimuth_points = 24);

} // namespace loopwright::wire
