#pragma once
// Bandwidths of a plain matched resonator, Z = R (1 + j Q (f/f0 - f0/f)).
#include "units/quantities.hpp"

namespace loopwright::loop {

/// The two frequencies where it reaches a standing wave ratio on a line that matches it at f0: f0 (sqrt(1 +
/// d^2) -+ d) with d = (s - 1) / (2 sqrt(s) Q), (L.19); their distance is f0 (s - 1) / (sqrt(s) Q) exactly.
/// Models refine it where Q is low and the loop itself changes over the band. Source:
/// Yaghjian and Best, IEEE Trans. Antennas Propag. 53 (2005) 1298, eqs. (2)-(4), in the limit of a narrow
/// band (from memory). q_unloaded > 0 and vswr > 1: base::ProgramError otherwise.
[[nodiscard]] units::Interval<units::Frequency> resonator_edges(units::Frequency resonance, double q_unloaded,
                                                                double vswr);

/// Distance of those edges.
[[nodiscard]] units::Frequency resonator_bandwidth(units::Frequency resonance, double q_unloaded,
                                                   double vswr);

/// The standing wave ratio at the half-power points: 3 + sqrt(8), where the line takes back half the power.
inline constexpr double half_power_vswr = 5.82842712474619;

} // namespace loopwright::loop
