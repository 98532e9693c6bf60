#pragma once
// What bending a round wire to a circle does to the thin-skin current, which crowds to the inner side.
#include "units/quantities.hpp"

namespace loopwright::conductor {

/// A perfectly conducting torus with no flux through its surface, low frequency.
struct RingCurrent {
    /// Thin-skin resistance of the ring over that of the straight wire of its centre line's length [1],
    /// (C19).
    double resistance_factor = 1;
    /// Its external inductance, exact for a thin skin and uniform current along the ring [H], (C20).
    units::Inductance inductance{};
};

/// loop_radius of the centre line, wire_radius of the conductor; loop_radius / wire_radius from 1.5 to 1e7.
/// Method: flux function in toroidal coordinates with Legendre functions of half-integer degree (the ring of
/// Fock, Phys. Z. Sowjetunion 1 (1932) 215; from memory, derived again in docs/theory). Relative accuracy
/// 1e-11. Holds while the skin is thin against the wire radius and the ring small against the wavelength.
/// Throws base::ProgramError outside the ratios. Cost: some microseconds, once a design.
[[nodiscard]] RingCurrent ring_current(units::Length loop_radius, units::Length wire_radius);

/// The resistance factor alone; to first order 1 + (a/R)^2 (ln^2(8R/a)/2 - 3 ln(8R/a)/2 + 5/8).
[[nodiscard]] double curvature_factor(units::Length loop_radius, units::Length wire_radius);

} // namespace loopwright::conductor
