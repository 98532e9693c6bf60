#include "loop/detail/explain_parts.hpp"

#include "conductor/proximity.hpp"
#include "loop/inductance.hpp"
#include "loop/radiation.hpp"

#include <cmath>

namespace loopwright::loop::detail {
namespace {

const char* const full_wave_source = "Method of moments on thin wires; theory, chapter Wire solver";

// L of a circle of one turn by its textbook formula, for comparison.
void add_ring_formula(Explanation& e, const Facts& f) {
    const units::Length radius = geometry::circumradius(f.winding);
    const units::Length wire = f.conductor.equivalent_radius();
    e.symbols.push_back({"R", "radius of the centre line", f.show(radius)});
    e.symbols.push_back({"a", "radius of the conductor", f.show(wire)});
    if (wire < radius) {
        e.symbols.push_back(
            {"", "textbook: μ₀R (ln(8R/a) − 2)", f.show(circle_inductance_thin(radius, wire))});
    }
}

} // namespace

Explanation explain_inductance(const Facts& f) {
    Explanation e{"inductance_H", "Inductance", "L = (μ₀/4π) ∮∮ ds·ds′ / R + Lᵢ", {}, {}, {}};
    const double internal_H =
        f.conductor.internal_impedance_ohm_per_m(f.point.frequency.value()).imag() / f.omega * f.length_m;
    e.symbols = {{"L", "inductance at low frequency", f.show(f.resonance.inductance)},
                 {"Lᵢ", "inside the conductor (skin effect)", f.show(units::henries(internal_H), 3)},
                 {"", "length of the conductor", f.show(units::metres(f.length_m))}};
    if (f.winding.outline == geometry::Outline::circle && f.winding.turns == 1) {
        add_ring_formula(e, f);
    }
    e.source = f.closed_form
                   ? "Neumann's integral; a circle as the exact conducting ring; theory (L.1) to (L.4)"
                   : full_wave_source;
    e.validity = f.winding.turns > 1
                     ? "Between close turns the current crowds and takes up to 1 % away; estimated."
                     : "Thin skin. Corners of straight sides are uncertain by a third of μ₀a each.";
    return e;
}

Explanation explain_capacitance(const Facts& f) {
    Explanation e{"tuning_capacitance_F", "Tuning capacitance", "C = 1/(ω²L) − C₀", {}, {}, {}};
    const double plain_F = 1 / (f.omega * f.omega * f.resonance.inductance.value());
    const units::Capacitance own = units::farads(plain_F) - f.resonance.tuning_capacitance;
    const auto& range = f.resonance.tuning_capacitance_range;
    e.symbols = {{"C", "what capacitor and stray must supply", f.show(f.resonance.tuning_capacitance)},
                 {"1/(ω²L)", "what inductance alone would ask for", f.show(units::farads(plain_F))},
                 {"C₀", "what the loop itself acts like at this frequency", f.show(own, 3)},
                 {"", "range", f.show(range.low) + " to " + f.show(range.high)}};
    e.source = f.closed_form ? "Charge on the conductor by Galerkin's method, one order above the uniform "
                               "current; theory (L.6) to (L.17)"
                             : full_wave_source;
    e.validity = "Reactance opposite the capacitor zero, coupling left out. Where the capacitor's voltage "
                 "stands is known to about 0.4 pF.";
    return e;
}

Explanation explain_radiation(const Facts& f) {
    Explanation e{"resistance_ohm.radiation",
                  "Radiation resistance",
                  "R = (η/4π) ∬ (k I·I′ − q q′/k) sin(kR)/R ds ds′ / |I₀|²",
                  {},
                  {},
                  {}};
    const units::Area area = geometry::turn_area(f.winding);
    e.symbols = {{"R", "for the current opposite the capacitor", f.show(f.resonance.resistance.radiation)},
                 {"", "small loop, uniform current: 31 149 (N A/λ²)² Ω",
                  f.show(small_loop_radiation(area, f.point.frequency))},
                 {"", "conductor in wavelengths", f.plain(f.point.perimeter_in_wavelengths, 3)},
                 {"", "current at the capacitor over the current opposite",
                  f.plain(f.resonance.capacitor_current_rms / f.resonance.loop_current_rms)}};
    e.source = f.closed_form ? "Far field of the loop's own current and charge; theory (L.13), (L.21) to "
                               "(L.23). Small loop: Balanis, Antenna Theory, eq. (5-24)"
                             : full_wave_source;
    e.validity = f.closed_form ? "Free space. Up to 0.40 wavelengths of conductor."
                               : "Over the ground that the design names: power to the sky.";
    return e;
}

Explanation explain_ground(const Facts& f) {
    return {"resistance_ohm.ground",
            "Ground loss",
            "R = (power into the ground) / |I₀|²",
            {{"R", "for the current opposite the capacitor",
              f.show(f.resonance.resistance.ground.value_or(units::ohms(0)))}},
            "Poynting's vector through the surface; theory, chapter Ground",
            "Even soil below; the constants are those of the design."};
}

Explanation explain_conductor(const Facts& f) {
    Explanation e{"resistance_ohm.conductor", "Conductor", "R = R′ ℓ (1 + p) ⟨(I/I₀)²⟩", {}, {}, {}};
    const double per_metre = f.conductor.internal_impedance_ohm_per_m(f.point.frequency.value()).real();
    const double plain = per_metre * f.length_m;
    e.symbols = {{"R", "for the current opposite the capacitor", f.show(f.resonance.resistance.conductor)},
                 {"R′", "of the straight conductor, a metre", f.show(units::ohms(per_metre))},
                 {"ℓ", "length of the conductor", f.show(units::metres(f.length_m))},
                 {"", "skin depth", f.show(f.conductor.skin_depth(f.point.frequency), 3)},
                 {"(1 + p) ⟨(I/I₀)²⟩", "neighbouring turns, and mean square of the current's shape",
                  f.plain(f.resonance.resistance.conductor.value() / plain)}};
    e.source = "Skin effect from Bessel functions, proximity from the harmonic expansion; theory, chapter "
               "Conductor";
    e.validity = "Curvature is left out (the upper end of the range has it), surface roughness and tarnish "
                 "too.";
    return e;
}

Explanation explain_joints(const Facts& f) {
    int count = 0;
    for (const design::Joint& joint : f.design.joints) {
        count += joint.count;
    }
    return {"resistance_ohm.joints",
            "Joints",
            "R = Σ n Rₙ ⟨(I/I₀)²⟩",
            {{"R", "for the current opposite the capacitor", f.show(f.resonance.resistance.joints)},
             {"n", "number of joints", std::to_string(count)}},
            "Input of the design",
            "Taken as spread evenly along the conductor, and the same at every frequency."};
}

Explanation explain_capacitor(const Facts& f) {
    const double ratio = f.resonance.capacitor_current_rms / f.resonance.loop_current_rms;
    const units::Resistance own = f.resonance.resistance.capacitor / (ratio * ratio);
    return {"resistance_ohm.capacitor",
            "Capacitor",
            "R = R_c |I_c/I₀|²",
            {{"R", "for the current opposite the capacitor", f.show(f.resonance.resistance.capacitor)},
             {"R_c", "of the capacitor with its contacts", f.show(own)},
             {"I_c/I₀", "current at the capacitor over the current opposite", f.plain(ratio)}},
            "Loss as given in the design; theory, chapter Capacitor",
            "The loss changes with setting and frequency as the design says; only a measurement knows it."};
}

} // namespace loopwright::loop::detail
