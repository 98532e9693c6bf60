#pragma once
// What a value in SI units is multiplied by where a table shows another unit.
#include "units/constants.hpp"

namespace loopwright::report {

inline constexpr double pico = 1e12; // F to pF
inline constexpr double mega = 1e-6; // Hz to MHz
inline constexpr double kilo = 1e-3; // Hz to kHz
inline constexpr double milli = 1e3; // m to mm
inline constexpr double per_cent = 100;
inline constexpr double degrees_per_radian = 180 / units::constants::pi;

} // namespace loopwright::report
