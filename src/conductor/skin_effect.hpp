#pragma once
// Skin effect in round conductors of non-magnetic metal (relative permeability 1), exact for the straight
// conductor alone. docs/theory/conductor.md has the equations (Cn).
#include "units/quantities.hpp"

namespace loopwright::conductor {

/// Skin depth [m]: sqrt(2 / (omega mu0 sigma)), (C1). Source: Pozar, Microwave Engineering, eq. (1.60).
/// frequency > 0, conductivity > 0; base::ProgramError otherwise (so for every function here). Good
/// conductors only: displacement current in the metal is neglected, nothing at radio frequencies.
[[nodiscard]] units::Length skin_depth(units::Conductivity conductivity, units::Frequency frequency);

/// Surface resistance [ohm]: 1 / (sigma delta), (C2). Source: Pozar, eq. (1.125).
[[nodiscard]] units::Resistance surface_resistance(units::Conductivity conductivity,
                                                   units::Frequency frequency);

/// Resistance to direct current of a round wire or tube [ohm/m]. wall = diameter/2 is the solid wire.
[[nodiscard]] units::ResistancePerLength wire_dc_resistance(units::Length diameter,
                                                            units::Conductivity conductivity);
[[nodiscard]] units::ResistancePerLength tube_dc_resistance(units::Length outer_diameter, units::Length wall,
                                                            units::Conductivity conductivity);

/// Internal impedance of a round wire [ohm/m]: g I0(g a) / (2 pi a sigma I1(g a)), g = (1 + j)/delta, (C3).
/// Source: Ramo, Whinnery and Van Duzer, Fields and Waves, skin effect in round wires. Exact at every
/// frequency, 0 Hz included; the real part is the resistance, the imaginary part omega times the internal
/// inductance. Not in it: curvature and neighbours (curvature.hpp, proximity.hpp).
[[nodiscard]] units::ImpedancePerLength
wire_internal_impedance(units::Length diameter, units::Conductivity conductivity, units::Frequency frequency);

/// Internal impedance of a round tube, the return path outside, nothing inside [ohm/m], (C5). Exact for
/// every wall from zero (excluded) to diameter/2, also much thinner than the skin depth. Throws
/// base::ProgramError for a wall <= 0 or over half the diameter.
[[nodiscard]] units::ImpedancePerLength tube_internal_impedance(units::Length outer_diameter,
                                                                units::Length wall,
                                                                units::Conductivity conductivity,
                                                                units::Frequency frequency);

} // namespace loopwright::conductor
