#pragma once
// The yardstick for gain: a half-wave dipole.
#include "loop/operating_point.hpp"

namespace loopwright::loop {

/// Gain of a lossless thin half-wave dipole in free space, broadside: D = 4/Cin(2 pi) = 1.6409, 2.151 dBi
/// (Balanis, Antenna Theory, section 4.6, prints 1.643 and 2.15 dB). Cin(2 pi) = 2.437653.
inline constexpr units::Decibel half_wave_dipole_gain{2.1509};

/// The point with gain_over_dipole filled at the low angle. In free space, the only case of the closed form,
/// the dipole is horizontal and broadside to the low direction, where it has its full gain at every
/// elevation. A point that already has the comparison, or has no gain, comes back as it is. Over ground the
/// model itself has to compare (a dipole's height matters there): nothing is filled.
[[nodiscard]] OperatingPoint compared_with_dipole(OperatingPoint point);

} // namespace loopwright::loop
