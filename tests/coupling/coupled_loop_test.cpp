// The coupling loop as a driven wire against the independent full-wave cases that have one.
#include "coupling/coupled_loop.hpp"
#include "coupling/coupling_size.hpp"

#include "base/error.hpp"
#include "coupling/copper_loop.hpp"
#include "support/cases.hpp"
#include "support/compared.hpp"
#include "support/fullwave_designs.hpp"

#include <algorithm>
#include <gtest/gtest.h>

namespace loopwright::coupling {
namespace {

design::Design coupled_design(const support::FullwaveCase& c) {
    design::Design d = support::design_of(c);
    design::Coupling coupling;
    coupling.diameter = units::metres(c.in("Dc"));
    coupling.conductor_diameter = units::metres(2 * c.in("ac"));
    coupling.axis_offset = units::metres(c.in("axis_offset"));
    d.coupling = coupling;
    return d;
}

// Another program, same gaps: C within 0.3 % + 0.4 pF as stated. Its kernel averages 1/R round both
// conductors as if one stood in the other's axis, also for conductors side by side; at 30 mm between axes and
// 12 mm of radii that lowers the mutual inductance by 1.3 %, the coupled resistance by 2.6 %. Our kernel does
// not; the case of the next test, with its mutual inductance from elliptic integrals, says which is nearer.
// Hence 3.5 % here.
TEST(CoupledLoop, IndependentCases) {
    const support::Compared table("full-wave-cases", "Coupling loop: best match");
    int met = 0;
    for (const auto& c : support::fullwave_cases()) {
        if (c.text("drive") != "coupling loop") {
            continue;
        }
        const Match m = CoupledLoop(coupled_design(c)).match(units::hertz(c.in("f")));
        table.amount(c.id, "C [pF]", m.tuning_capacitance.value() * 1e12, c.out("C_pF"),
                     0.003 * c.out("C_pF") + 0.4);
        table.share(c.id, "VSWR", m.vswr, c.out("SWR_Z0"), 0.035);
        const auto z = c.input_impedance();
        const double size = std::hypot(z[0], z[1]);
        table.amount(c.id, "R_in [ohm]", m.input.value().real(), z[0], 0.035 * size);
        table.amount(c.id, "X_in [ohm]", m.input.value().imag(), z[1], 0.035 * size);
        ++met;
    }
    EXPECT_EQ(met, 2);
}

TEST(CoupledLoop, CoupledResistanceOfTheSeriesTheory) {
    const support::Compared table("independent-cases", "Coupling loop of the design");
    for (const auto& c : support::independent_cases("fullwave")) {
        if (!c.has_input("coupling_radius")) {
            continue;
        }
        design::Design d;
        d.loop.size = units::metres(2 * c.input("radius"));
        d.conductor.metal.name.clear();
        d.capacitor.loss.q = 1e12;
        design::Coupling coupling;
        coupling.diameter = units::metres(2 * c.input("coupling_radius"));
        coupling.conductor_diameter = units::metres(c.input("coupling_wire_diameter"));
        coupling.axis_offset =
            units::metres(c.input("radius") - c.input("centre_offset") - c.input("coupling_radius"));
        d.coupling = coupling;
        const units::Frequency f = units::hertz(c.input("frequency"));
        // The largest input resistance over the capacitance: (w M)^2/R of the loop.
        const CoupledLoop coupled(d);
        const double near_F = coupled.match(f).tuning_capacitance.value();
        double largest = 0;
        for (int i = -400; i <= 400; ++i) {
            const auto z = coupled.input(f, units::farads(near_F * (1 + 5e-6 * i)));
            largest = std::max(largest, z.value().real());
        }
        table.share(c.id, "R_in", largest, c.output("R_in"), c.u_model("R_in"));
    }
}

TEST(CoupledLoop, LeastVswrIsTheLeast) {
    const CoupledLoop coupled(copper_loop());
    const Match m = coupled.match(units::megahertz(7.1));
    for (const double change : {-3e-4, 3e-4}) {
        const auto z = coupled.input(m.frequency, m.tuning_capacitance * (1 + change));
        EXPECT_GT(std::abs((z.value() - 50.0) / (z.value() + 50.0)), (m.vswr - 1) / (m.vswr + 1));
    }
    const auto curve = coupled.curve(m, units::kilohertz(20), 5);
    ASSERT_EQ(curve.size(), 5U);
    EXPECT_NEAR(curve[2].vswr, m.vswr, 1e-6);
    EXPECT_GT(curve.front().vswr, m.vswr);
    EXPECT_GT(curve.back().vswr, m.vswr);
}

TEST(CoupledLoop, FindsTheSizeThatMatches) {
    const CouplingChoice choice = best_coupling(copper_loop(), units::megahertz(7.1));
    EXPECT_LT(choice.match.vswr, 1.1);
    EXPECT_GT(choice.diameter.value(), 0.05);
    EXPECT_LT(choice.diameter.value(), 0.5);
    // One size for two bands is no better at either than the band's own.
    const CommonCoupling common =
        common_coupling(copper_loop(), {units::megahertz(7.1), units::megahertz(14.1)});
    ASSERT_EQ(common.matches.size(), 2U);
    EXPECT_GE(common.matches[0].vswr, choice.match.vswr - 0.02);
}

TEST(CoupledLoop, RefusesWhatDoesNotFit) {
    design::Design none = copper_loop();
    none.coupling.reset();
    EXPECT_THROW(CoupledLoop{none}, base::InputError);
    design::Design large = copper_loop();
    large.coupling->diameter = units::metres(1.2);
    EXPECT_THROW(CoupledLoop{large}, base::InputError);
    design::Design near = copper_loop();
    near.coupling->axis_offset = units::millimetres(10);
    EXPECT_THROW(CoupledLoop{near}, base::InputError);
}

} // namespace
} // namespace loopwright::coupling
