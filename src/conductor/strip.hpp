#pragma once
// A flat strip (rectangular cross-section, sharp corners), alone in space.
#include "numeric/interpolation.hpp"
#include "units/quantities.hpp"

#include <complex>

namespace loopwright::conductor {

/// What depends on the cross-section alone; width and thickness may be given in either order.
struct StripShape {
    /// Radius of the round wire with the same external field far away: the logarithmic capacity of the
    /// rectangle, (C12). Exact.
    units::Length equivalent_radius{};
    /// Thin-skin resistance times this = surface resistance [m], (C13): the perimeter that a uniform current
    /// would need. Source: Cockcroft, "Skin effect in rectangular conductors at high frequencies", Proc. R.
    /// Soc. A 122 (1929) 533 (from memory; derived again in docs/theory). The limit of a vanishing skin; it
    /// is reached slowly: 2 to 3 % high still at a thickness of 5 to 160 skin depths.
    units::Length effective_perimeter{};
};

/// Throws base::ProgramError for a side that is not positive or an aspect over 1e6.
[[nodiscard]] StripShape strip_shape(units::Length width, units::Length thickness);

/// Resistance to direct current [ohm/m].
[[nodiscard]] units::ResistancePerLength strip_dc_resistance(units::Length width, units::Length thickness,
                                                             units::Conductivity conductivity);

/// The internal impedance of a strip at any frequency, prepared for one cross-section; immutable.
/// Z = z_slab (K' + c)/(2 pi^2 r), (C14): z_slab the surface impedance of a plate with the field on both
/// sides, r the equivalent radius, K' the elliptic integral of Cockcroft's limit, and c(aspect,
/// thickness/skin depth) an end correction from a table that a two-dimensional volume integral equation gave
/// (c = K is Cockcroft's limit).
/// Accuracy: resistance 1 %, reactance 2 %, for aspects 1 to 6000 and every thickness over skin depth (table
/// 0.2 %, interpolation 0.3 %; beyond 160 skin depths extrapolated to the limit). Rounded corners are not in
/// it.
class StripImpedance {
public:
    static constexpr double largest_aspect = 6000;
    /// Throws base::ProgramError for sides that are not positive or an aspect over largest_aspect.
    StripImpedance(units::Length width, units::Length thickness);

    [[nodiscard]] const StripShape& shape() const { return shape_; }
    /// Internal impedance [ohm/m], imaginary part omega times the internal inductance (that which comes on
    /// top of the field outside the equivalent wire); conductivity > 0, skin depth > 0 in plain SI. Cost:
    /// some 50 ns.
    [[nodiscard]] std::complex<double> ohm_per_m(double conductivity_S_m, double skin_depth_m) const;

private:
    [[nodiscard]] std::complex<double> end_correction(double thickness_over_depth) const;

    StripShape shape_;
    double thickness_m_ = 0, aspect_ = 1;
    double k_ = 0, k_other_ = 0;        ///< K and K' of the rectangle
    double dc_correction_ = 0;          ///< c at direct current
    numeric::HermiteCurve real_, imag_; ///< (c - c at direct current)/law over ln(thickness/skin depth)
};

} // namespace loopwright::conductor
