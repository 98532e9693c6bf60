#pragma once
// Impedance, reflection, standing-wave ratio and what of the power a mismatched load accepts.
#include "units/quantities.hpp"

namespace loopwright::coupling {

/// Standing-wave ratio of a load on a line of real impedance: s = (1 + |G|)/(1 - |G|), G = (Z - Z0)/(Z + Z0)
/// [1]. Range: Re Z >= 0, Z0 > 0. A load that takes no power gives the largest double, not infinity.
[[nodiscard]] double vswr(units::Impedance load, units::Resistance line);

/// Magnitude of the reflection coefficient of a standing-wave ratio s >= 1: (s - 1)/(s + 1).
[[nodiscard]] double reflection_magnitude(double vswr);

/// Share of the available power that a load of standing-wave ratio s takes: 4 s/(s + 1)^2, 0 to 1.
[[nodiscard]] double accepted_share(double vswr);

/// Standing-wave ratio of a single resonator at `frequency`, matched at its resonance with coupling ratio
/// `coupling` (1: critical): normalised input impedance coupling/(1 + j Q (f/f0 - f0/f)) as seen in the plane
/// of its parallel resonance. Source: the single-resonance circuit; D. Kajfez and E. J. Hwan, IEEE Trans.
/// Microwave Theory Tech. 32 (1984) 666 (from memory). Range: Q above about 10, one resonance.
[[nodiscard]] double resonator_vswr(units::Frequency resonance, double q_unloaded, double coupling,
                                    units::Frequency frequency);

/// Mutual inductance that matches a tuned loop of series resistance `loop` to a line through a coupling loop
/// of self-inductance L: M = sqrt(R (Z0^2 + (w L)^2)/Z0)/w, and the reactance by which the loop is then
/// detuned. Source: two coupled circuits, F. E. Terman, Radio Engineers' Handbook, 1943, section 3 (from
/// memory).
struct CriticalCoupling {
    units::Inductance mutual{};
    units::Resistance detuning_reactance{};
};
[[nodiscard]] CriticalCoupling critical_coupling(units::Resistance loop, units::Inductance coupling_loop,
                                                 units::Frequency frequency, units::Resistance line);

} // namespace loopwright::coupling
