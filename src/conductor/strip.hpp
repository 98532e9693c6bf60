#pragma once
// A flat strip (rectangular cross-section, sharp corners), alone in space. Thin-skin limit by conformal
// mapping.
#include "units/quantities.hpp"

namespace loopwright::conductor {

/// What depends on the cross-section alone; width and thickness may be given in either order.
struct StripShape {
    /// Radius of the round wire with the same external field far away: the logarithmic capacity of the
    /// rectangle, (C.12). Exact.
    units::Length equivalent_radius{};
    /// Thin-skin resistance times this = surface resistance [m]: the perimeter a uniform current would need,
    /// (C.13). Source: Cockcroft, "Skin effect in rectangular conductors at high frequencies", Proc. R. Soc.
    /// A 122 (1929) 533 (from memory; derived again in docs/theory). Exact in the limit of a thin skin.
    units::Length effective_perimeter{};
};

/// Throws base::ProgramError for a side that is not positive or an aspect over 1e6.
[[nodiscard]] StripShape strip_shape(units::Length width, units::Length thickness);

/// Resistance to direct current [ohm/m].
[[nodiscard]] units::ResistancePerLength strip_dc_resistance(units::Length width, units::Length thickness,
                                                             units::Conductivity conductivity);

} // namespace loopwright::conductor
