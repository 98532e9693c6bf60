#pragma once
// External inductances of loops in the limit of a thin skin, and mutual inductances. docs/theory/
// loop-closed-form.md has the equations (L.n). The internal inductance is the conductor's business:
// conductor::Conductor::internal_impedance.
#include "units/quantities.hpp"

#include <vector>

namespace loopwright::loop {

// Sizes are of the centre line; wire_radius is half the conductor's diameter. All functions throw
// base::ProgramError for sizes that are not positive or do not fit together.

/// mu0 R (ln(8R/a) - 2) [H]: thin wire, current on its surface, spread evenly round it, (L.1). Source:
/// Maxwell, Treatise, art. 704 ff., in the form of Rosa and Grover (1912). Error: a^2/R^2 times about 6;
/// conductor/curvature.hpp has the exact ring.
[[nodiscard]] units::Inductance circle_inductance_thin(units::Length radius, units::Length wire_radius);

/// mu0 R (ln(8R/a) - 7/4) [H]: the same at direct current, the inside of the wire included.
[[nodiscard]] units::Inductance circle_inductance_dc(units::Length radius, units::Length wire_radius);

/// Mutual inductance of two coaxial circular filaments [H], mu0 sqrt(r1 r2) ((2/m - m) K - 2 E/m), (L.3).
/// Source: Maxwell, Treatise, art. 701. Exact.
[[nodiscard]] units::Inductance coaxial_mutual(units::Length radius1, units::Length radius2,
                                               units::Length distance);

/// Mutual inductance of two circular filaments with parallel axes `offset` apart and planes `height` apart
/// [H], by integrating the vector potential of the first along the second, relative accuracy 1e-10 where the
/// wires keep a hundredth of the smaller radius apart.
[[nodiscard]] units::Inductance parallel_axis_mutual(units::Length radius1, units::Length radius2,
                                                     units::Length offset, units::Length height);

/// Regular polygon [H]: Neumann's integral over all pairs of sides, each closed (L.4); a side with itself as
/// a tube, s/(2 pi) mu0 (ln(2s/a) - 1). Error: of the order of a/s times mu0 s at each corner, left out.
[[nodiscard]] units::Inductance polygon_inductance(int sides, units::Length perimeter,
                                                   units::Length wire_radius);
[[nodiscard]] units::Inductance rectangle_inductance(units::Length width, units::Length height,
                                                     units::Length wire_radius);

/// One turn of a set of coaxial circular turns in series.
struct Ring {
    units::Length radius{}, position{}; ///< position along the axis
};
/// Sum of thin rings and their mutual inductances [H]: every current spread evenly round its wire.
[[nodiscard]] units::Inductance rings_inductance(const std::vector<Ring>& rings, units::Length wire_radius);

/// What the redistribution of the current round each wire takes away from rings_inductance [H], zero or
/// negative, (L.14): each wire answers the field H of the others, and of its own curvature, with the dipole
/// moment of a perfectly conducting cylinder, -2 pi a^2 H; a ring alone is exact. Within 10 % of itself where
/// turns keep 4 wire radii (centre to centre) apart; closer it comes out too large by up to a half.
[[nodiscard]] units::Inductance rings_redistribution(const std::vector<Ring>& rings,
                                                     units::Length wire_radius);

} // namespace loopwright::loop
