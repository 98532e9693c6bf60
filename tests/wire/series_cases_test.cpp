// The solver against the independent computations of tuned loops by Fourier series and by another moment
// method (tests/reference/data/independent_cases.json, provenance there): the model's uncertainty stated
// there + 1 %, 0.5 pF on the capacitance.
#include "conductor/skin_effect.hpp"
#include "geometry/winding.hpp"
#include "support/cases.hpp"
#include "support/compared.hpp"
#include "units/constants.hpp"
#include "wire/loops.hpp"
#include "wire/near_field.hpp"

#include <array>
#include <cmath>
#include <gtest/gtest.h>

namespace loopwright::wire::testing {
namespace {

using units::constants::pi;
constexpr double no_loss_q = 1e12;

support::Compared series_table() {
    return {"independent-cases", "Wire solver and tuned loops by other methods"};
}

Complex tube_ohm_per_m(const support::Case& c, double frequency_Hz) {
    return conductor::tube_internal_impedance(
               units::metres(c.input("conductor.od")), units::metres(c.input("conductor.wall")),
               units::siemens_per_metre(c.input("conductor.sigma")), units::hertz(frequency_Hz))
        .value();
}

WireModel round_loop(const support::Case& c) {
    const double radius = c.input("radius");
    return {{vertical_circle(2 * radius, c.input("conductor.od") / 2)},
            {{0, pi * radius, c.input("gap_width")}, {0, 0, c.input("gap_width")}},
            {}};
}

WireModel regular_polygon(const support::Case& c) {
    geometry::Winding winding;
    winding.outline = geometry::Outline::polygon;
    winding.sides = static_cast<int>(c.input("n"));
    winding.measure = geometry::Measure::conductor_length;
    winding.size = units::metres(c.input("perimeter"));
    const geometry::WirePath path = geometry::wire_path(winding);
    return {{wire_along(path, c.input("conductor.od") / 2)}, {opposite_gap(path), capacitor_gap(path)}, {}};
}

struct Answer {
    Solution solution;
    Tuned tuned;
    double q = 0; ///< f/(2R) |dX/df| opposite the capacitor, by a difference
};

Answer answer(const support::Case& c, const WireModel& model) {
    const double f = c.input("frequency");
    const Solver solver(model, {}, units::hertz(1.001 * f));
    const auto solved = [&](double at) {
        return solver.solve(units::hertz(at), {{tube_ohm_per_m(c, at)}, {}});
    };
    Answer result{solved(f), {}, 0};
    result.tuned = tune(result.solution, no_loss_q);
    const auto reactance = [&](double at) {
        const Complex load(0, 2 * pi * at * result.tuned.capacitance_F);
        return two_port(solved(at).admittance()).input_impedance(load).imag();
    };
    const double step = 1e-4;
    const double slope = (reactance(f * (1 + step)) - reactance(f * (1 - step))) / (2 * step);
    result.q = std::abs(slope) / (2 * result.tuned.total_ohm());
    return result;
}

void expect(const support::Case& c, const char* name, double value) {
    const double u = std::max(c.u_model(name), c.u_num(name));
    series_table().share(c.id, name, value, c.output(name), u + 0.01);
}

TEST(SeriesCases, TunedRoundLoops) {
    int met = 0;
    for (const auto& c : support::independent_cases("fullwave")) {
        if (!c.has_output("R_total_at_capacitor")) {
            continue;
        }
        const Answer a = answer(c, round_loop(c));
        const Tuned& t = a.tuned;
        series_table().amount(c.id, "C [pF]", t.capacitance_F * 1e12, c.output("C") * 1e12, 0.5);
        const double to_capacitor = 1 / (t.capacitor_A_per_A * t.capacitor_A_per_A);
        expect(c, "R_total_at_capacitor", t.total_ohm() * to_capacitor);
        expect(c, "R_rad_at_capacitor", t.radiation_ohm * to_capacitor);
        expect(c, "R_loss_at_capacitor", t.conductor_ohm * to_capacitor);
        expect(c, "efficiency", t.efficiency());
        expect(c, "Q_Z", a.q);
        const double amperes = std::sqrt(c.input("power") / t.total_ohm());
        expect(c, "V_cap_rms", t.capacitor_V_per_A * amperes);
        expect(c, "I_cap_rms", t.capacitor_A_per_A * amperes);
        expect(c, "I_opposite_rms", amperes);
        ++met;
    }
    EXPECT_EQ(met, 9);
}

TEST(SeriesCases, TunedPolygons) {
    int met = 0;
    for (const auto& c : support::independent_cases("fullwave")) {
        if (!c.has_input("n")) {
            continue;
        }
        const Answer a = answer(c, regular_polygon(c));
        series_table().amount(c.id, "C [pF]", a.tuned.capacitance_F * 1e12, c.output("C") * 1e12, 0.5);
        expect(c, "efficiency", a.tuned.efficiency());
        expect(c, "Q_Z", a.q);
        expect(c, "V_cap_rms", a.tuned.capacitor_V_per_A * std::sqrt(c.input("power") / a.tuned.total_ohm()));
        ++met;
    }
    EXPECT_EQ(met, 2);
}

TEST(SeriesCases, CouplingLoop) {
    int met = 0;
    for (const auto& c : support::independent_cases("fullwave")) {
        if (!c.has_input("coupling_radius")) {
            continue;
        }
        WireModel model = round_loop(c);
        model.wires.push_back(circle({0, 0, -c.input("centre_offset")}, {1, 0, 0}, {0, 0, 1},
                                     2 * c.input("coupling_radius"), c.input("coupling_wire_diameter") / 2,
                                     true));
        model.wires.back().stretches.front().conductor = 1;
        model.ports.push_back({1, 0, c.input("gap_width")});
        const double f = c.input("frequency");
        const Solution solution =
            Solver(model, {}, units::hertz(f)).solve(units::hertz(f), {{tube_ohm_per_m(c, f), 0.0}, {}});
        const Tuned tuned = tune(solution, no_loss_q);
        const Complex y = solution.admittance()
                              .terminated(1, Complex(0, 2 * pi * f * tuned.capacitance_F))
                              .terminated(0, 1e12) // a place to look at, not a gap
                              .at(0, 0);
        expect(c, "R_in", (1.0 / y).real());
        expect(c, "X_in_coupling_loop", (1.0 / y).imag());
        ++met;
    }
    EXPECT_EQ(met, 1);
}

TEST(SeriesCases, FieldsNearATunedLoop) {
    int met = 0;
    for (const auto& c : support::independent_cases("nearfield")) {
        if (!c.has_output("E_uniform_model") || !c.has_input("gap_width")) {
            continue;
        }
        WireModel model = round_loop(c);
        model.wires[0] = circle({0, 0, 0}, {0, 1, 0}, {1, 0, 0}, 2 * c.input("radius"),
                                c.input("conductor.od") / 2); // flat, the capacitor on the +x side
        const Answer a = answer(c, model);
        const auto point = c.input_point("point");
        const NearField field =
            near_field(a.solution.mesh(), a.tuned.per_ampere, {point[0], point[1], point[2]});
        const double amperes = std::sqrt(c.input("power") / a.tuned.total_ohm());
        expect(c, "E_rms", field.electric_rms_V_m() * amperes);
        expect(c, "H_rms", field.magnetic_rms_A_m() * amperes);
        ++met;
    }
    EXPECT_EQ(met, 3);
}

} // namespace
} // namespace loopwright::wire::testing
