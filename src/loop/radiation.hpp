#pragma once
// Radiation resistance of loops with one uniform current: checks and explanations. The models integrate the
// real current.
#include "geometry/wire_path.hpp"
#include "loop/inductance.hpp"
#include "units/quantities.hpp"

namespace loopwright::loop {

// Frequencies above 0; base::ProgramError otherwise.

/// Small loop [ohm]: eta/(6 pi) k^4 (N A)^2, 320 pi^4 (N A)^2/lambda^4 with eta = 120 pi, (L.21). turn_area:
/// the sum of the areas of all turns. Source: Balanis, Antenna Theory, eq. (5-24). Holds while the loop is
/// small: 1 % too high at a circumference of 0.22 wavelengths, 20 % at one wavelength, and the current
/// uniform, which it is only below about 0.05 wavelengths.
[[nodiscard]] units::Resistance small_loop_radiation(units::Area turn_area, units::Frequency frequency);

/// Coaxial circular turns, the same uniform current in each [ohm]: eta pi/2 k^2 int |sum a_i J1(k a_i sin t)
/// exp(j k z_i cos t)|^2 sin t dt over 0 to pi, (L.22). One ring: Foster, "Loop antennas with uniform
/// current", Proc. IRE 32 (1944) 603 (from memory). Exact to 1e-10 at every size.
[[nodiscard]] units::Resistance rings_radiation(const std::vector<Ring>& rings, units::Frequency frequency);

/// Any closed path with one uniform current [ohm]: eta k/(4 pi) int int sin(kR)/R dl.dl', (L.23). Relative
/// accuracy 1e-9 up to ten wavelengths of path.
[[nodiscard]] units::Resistance uniform_radiation(const geometry::WirePath& path, units::Frequency frequency);

} // namespace loopwright::loop
