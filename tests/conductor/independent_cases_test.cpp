// The independent cases on skin effect and proximity (tests/reference/data), at their stated tolerance.
#include "conductor/conductor.hpp"
#include "conductor/metals.hpp"
#include "conductor/proximity.hpp"
#include "conductor/skin_effect.hpp"
#include "conductor/strip.hpp"
#include "support/cases.hpp"
#include "support/compared.hpp"

#include <gtest/gtest.h>

namespace loopwright::conductor {
namespace {

void expect_output(const support::Case& c, const std::string& name, double value) {
    const support::Compared table("independent-cases", "Skin effect, strip, braid and proximity");
    table.share(c.id, name, value, c.output(name), c.tolerance(name));
}

units::Conductivity conductivity_of(const support::Case& c) {
    return units::siemens_per_metre(c.input("sigma")); // at the case's temperature already
}

void check_wire(const support::Case& c) {
    const auto sigma = conductivity_of(c);
    const auto f = units::hertz(c.input("frequency"));
    const auto z = wire_internal_impedance(units::metres(c.input("diameter")), sigma, f).value();
    expect_output(c, "R_per_m", z.real());
    expect_output(c, "X_internal_per_m", z.imag());
    expect_output(c, "skin_depth", skin_depth(sigma, f).value());
    expect_output(c, "surface_resistance", surface_resistance(sigma, f).value());
}

void check_tube(const support::Case& c) {
    const auto outer = units::metres(c.input("outer_diameter")), wall = units::metres(c.input("wall"));
    const auto z =
        tube_internal_impedance(outer, wall, conductivity_of(c), units::hertz(c.input("frequency"))).value();
    expect_output(c, "R_per_m", z.real());
    expect_output(c, "X_internal_per_m", z.imag());
    expect_output(c, "R_dc_per_m", tube_dc_resistance(outer, wall, conductivity_of(c)).value());
}

void check_braid(const support::Case& c) {
    ConductorSpec spec;
    spec.form = Form::braid;
    spec.diameter = units::metres(c.input("outer_diameter"));
    spec.conductivity = conductivity_of(c);
    spec.factor = c.input("braid_factor");
    expect_output(c, "R_per_m",
                  Conductor(spec).internal_impedance(units::hertz(c.input("frequency"))).value().real());
}

void check_strip(const support::Case& c) {
    const auto shape = strip_shape(units::metres(c.input("width")), units::metres(c.input("thickness")));
    const double rs = surface_resistance(conductivity_of(c), units::hertz(c.input("frequency"))).value();
    expect_output(c, "equivalent_radius", shape.equivalent_radius.value());
    expect_output(c, "R_thin_skin_per_m", rs / shape.effective_perimeter.value());
}

} // namespace

TEST(IndependentCases, SkinEffect) {
    int wires = 0, tubes = 0, braids = 0, strips = 0;
    for (const support::Case& c : support::independent_cases("skin")) {
        if (c.has_input("width")) {
            check_strip(c);
            ++strips;
        } else if (c.has_input("braid_factor")) {
            check_braid(c);
            ++braids;
        } else if (c.has_input("wall")) {
            check_tube(c);
            ++tubes;
        } else {
            check_wire(c);
            ++wires;
        }
    }
    EXPECT_EQ(wires, 3);
    EXPECT_EQ(tubes, 4);
    EXPECT_EQ(braids, 1);
    EXPECT_EQ(strips, 2);
}

TEST(IndependentCases, Proximity) {
    int checked = 0;
    for (const support::Case& c : support::independent_cases("proximity")) {
        const int turns = static_cast<int>(c.input("turns"));
        const bool rings = c.has_input("pitch");
        const ProximityLoss loss(turns, rings ? c.input("pitch") / c.input("wire_diameter")
                                              : c.input("spacing_over_diameter"));
        expect_output(c, rings ? "Rp_over_R0_2d" : "Rp_over_R0", loss.thin_skin());
        if (!rings) {
            const auto& factors = loss.turn_factors();
            expect_output(c, "outer_turn_factor", factors.front());
            expect_output(c, "middle_turn_factor", factors[factors.size() / 2]);
        }
        ++checked;
    }
    EXPECT_EQ(checked, 6);
}

} // namespace loopwright::conductor
