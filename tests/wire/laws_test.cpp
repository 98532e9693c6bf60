// What must hold for every thin wire: balance of power down to a thousandth of a wavelength, reciprocity,
// scaling, the line limit, and two roads to one number.
#include "support/compared.hpp"
#include "units/constants.hpp"
#include "wire/far_field.hpp"
#include "wire/loops.hpp"
#include "wire/near_field.hpp"
#include "wire/samples.hpp"

#include <cmath>
#include <cstdio>
#include <gtest/gtest.h>

namespace loopwright::wire::testing {
namespace {

using units::constants::free_space_impedance_ohm;
using units::constants::pi;
using units::constants::speed_of_light_m_s;

WireModel one_loop(double diameter_m, double radius_m) {
    return {{vertical_circle(diameter_m, radius_m)}, {{0, pi * diameter_m / 2, 0.02}, {0, 0, 0.02}}, {}};
}

units::Frequency with_perimeter(double wavelengths, double diameter_m) {
    return units::hertz(wavelengths * speed_of_light_m_s / (pi * diameter_m));
}

// Radiation from 2e-10 ohm up, beside ohms to hundreds of ohms of reactance: three independent sums.
TEST(PowerBalance, HoldsDownToAThousandthOfAWavelength) {
    const Solver solver(one_loop(1, 0.01), {}, with_perimeter(0.33, 1));
    for (const double perimeter : {0.001, 0.003, 0.01, 0.03, 0.1, 0.2, 0.33}) {
        const Solution solution = solver.solve(with_perimeter(perimeter, 1), {{0.0}, {}});
        const Tuned tuned = tune(solution, 1e12);
        const auto pieces = current_elements(solver.mesh(), tuned.per_ampere, 4);
        const double far_W = radiated_power_W(pieces, solution.wavenumber_rad_m(), 24, 32);
        char name[48];
        (void)std::snprintf(name, sizeof name, "%g wavelengths round", perimeter);
        const support::Compared balance("power-balance", "Free space, down to a thousandth of a wavelength");
        balance.share(name, "R of the matrix, far field [ohm]", tuned.radiation_ohm, far_W, 1e-9);
        // What goes in at the port is a difference of numbers 1e10 times as large at the lowest frequency.
        const double reactance = solution.wavenumber_rad_m() * free_space_impedance_ohm;
        EXPECT_NEAR(tuned.input_ohm.real(), tuned.total_ohm(), 1e-10 * tuned.total_ohm() + 1e-13 * reactance)
            << perimeter;
        EXPECT_LT(solution.residual(), 1e-12);
        if (perimeter <= 0.03) { // eta pi/6 (C/lambda)^4: 197 C^4, J. D. Kraus, Antennas, ex. 7-8.1
            const double small = free_space_impedance_ohm * pi / 6 * std::pow(perimeter, 4);
            balance.share(name, "R, eta pi/6 (C/lambda)^4 [ohm]", tuned.radiation_ohm, small,
                          20 * perimeter * perimeter + 1e-5);
        }
    }
}

TEST(PowerBalance, IncludesConductorsAndLoads) {
    WireModel model = one_loop(0.8, 0.005);
    model.loads = {{0, 0.7, 0}, {0, 1.9, 0.03}};
    const Solver solver(model, {}, units::megahertz(30));
    const std::vector<Complex> volts{1.0, {0.3, -2.0}};
    for (const double megahertz : {0.2, 3.5, 14.0, 28.0}) {
        const Solution solution =
            solver.solve(units::megahertz(megahertz), {{{0.03, 0.03}}, {0.002, {0.1, 3.0}}});
        const Currents currents = solution.currents(volts);
        const PowerParts power = solution.powers(currents);
        const Complex in = std::conj(volts[0]) * solution.current_at(currents, model.ports[0]) +
                           std::conj(volts[1]) * solution.current_at(currents, model.ports[1]);
        EXPECT_NEAR(power.total_W() / in.real(), 1, 1e-9) << megahertz;
        EXPECT_GT(power.load_W[0], 0);
        EXPECT_GT(power.load_W[1], power.load_W[0]);
    }
}

// A load in the gap, and the same impedance connected to a port there afterwards.
TEST(Ports, TerminationEqualsALoadInTheGap) {
    const WireModel with_port = one_loop(1, 0.01);
    WireModel with_load = with_port;
    with_load.loads = {with_port.ports[1]};
    with_load.ports.pop_back();
    const units::Frequency frequency = units::megahertz(14);
    const Complex z(0.2, -240);
    const Complex expected =
        Solver(with_load, {}, frequency).solve(frequency, {{0.0}, {z}}).admittance().at(0, 0);
    const PortMatrix y = Solver(with_port, {}, frequency).solve(frequency, {{0.0}, {}}).admittance();
    EXPECT_LT(std::abs(y.terminated(1, 1.0 / z).at(0, 0) - expected), 1e-10 * std::abs(expected));
    EXPECT_LT(std::abs(1.0 / two_port(y).input_impedance(1.0 / z) - expected), 1e-10 * std::abs(expected));
    const Complex v2 = y.terminated_voltage({1.0, 0.0}, 1, 1.0 / z);
    EXPECT_LT(std::abs(two_port(y).second_voltage(1.0, 1.0 / z) - v2), 1e-14 * std::abs(v2));
    // The current through the load is what the port's own row says.
    EXPECT_LT(std::abs(y.at(1, 0) + y.at(1, 1) * v2 + v2 / z), 1e-12 * std::abs(v2 / z));
}

TEST(Ports, ResonanceHasNoReactance) {
    const double omega = 2 * pi * 21e6;
    const Solution solution =
        Solver(one_loop(1, 0.01), {}, units::megahertz(21)).solve(units::megahertz(21), {{{0.05, 0.05}}, {}});
    const TwoPort port = two_port(solution.admittance());
    const auto load = [&](double c) { return capacitor_S(omega, c, 700, 0.01); };
    const auto c = resonating_capacitance_F(port, omega, load);
    ASSERT_TRUE(c.has_value());
    const Complex z = port.input_impedance(load(*c));
    EXPECT_LT(std::abs(z.imag()), 1e-9 * std::abs(z.real()));
    EXPECT_LT(z.real(), 5); // the resonance of large current, not the other one
}

TEST(Ports, NoCapacitanceResonatesALoopBeyondItsOwnResonance) {
    const units::Frequency frequency = with_perimeter(0.6, 1);
    const double omega = 2 * pi * frequency.value();
    const Solution solution = Solver(one_loop(1, 0.01), {}, frequency).solve(frequency, {{0.0}, {}});
    EXPECT_FALSE(resonating_capacitance_F(two_port(solution.admittance()), omega, [&](double c) {
                     return Complex(0, omega * c);
                 }).has_value());
}

// Distant elements take two Gauss points in the series, four in the other.
void expect_series_as_direct(const Solver& solver, double megahertz) {
    const FieldMatrix series = solver.free_space(units::megahertz(megahertz));
    const FieldMatrix direct = solver.free_space_direct(units::megahertz(megahertz));
    double re = 0, im = 0, re_most = 0, im_most = 0;
    for (std::size_t e = 0; e < series.re.size(); ++e) {
        re = std::max(re, std::abs(series.re[e] - direct.re[e]));
        im = std::max(im, std::abs(series.im[e] - direct.im[e]));
        re_most = std::max(re_most, std::abs(direct.re[e]));
        im_most = std::max(im_most, std::abs(direct.im[e]));
    }
    EXPECT_LT(re, 1e-9 * re_most) << megahertz;
    EXPECT_LT(im, 2e-5 * im_most) << megahertz;
    EXPECT_GT(re + im, 0) << "both are the direct way at " << megahertz;
}

TEST(Series, AgreesWithTheKernelItself) {
    const Solver solver(one_loop(1, 0.01), {}, units::megahertz(120));
    for (const double megahertz : {2.0, 14.0, 30.0, 60.0, 120.0}) {
        expect_series_as_direct(solver, megahertz);
    }
    // Above the highest frequency the direct way answers.
    const units::Frequency far = units::megahertz(600);
    EXPECT_EQ(solver.free_space(far).re, solver.free_space_direct(far).re);
}

TEST(Series, OfAWideLoopServesTheFrequenciesThatItReaches) {
    MeshOptions
        fine; // two points serve a distant element up to a twentieth of a wavelength, as in the test above
    fine.refinement = 2;
    const Solver solver(one_loop(6, 0.02), fine, units::megahertz(60)); // k R = 10.7 there
    for (const double megahertz : {1.8, 14.0, 30.0}) {
        expect_series_as_direct(solver, megahertz);
    }
    const units::Frequency beyond = units::megahertz(33);
    EXPECT_EQ(solver.free_space(beyond).re, solver.free_space_direct(beyond).re);
}

TEST(Scaling, LeavesTheAdmittanceOfPerfectWiresAlone) {
    const double s = 3.7;
    const WireModel small = one_loop(1, 0.01);
    const WireModel large{{vertical_circle(s, 0.01 * s)}, {{0, pi * s / 2, 0.02 * s}, {0, 0, 0.02 * s}}, {}};
    const units::Frequency high = units::megahertz(20), low = units::megahertz(20 / s);
    const PortMatrix y = Solver(small, {}, high).solve(high, {{0.0}, {}}).admittance();
    const PortMatrix scaled = Solver(large, {}, low).solve(low, {{0.0}, {}}).admittance();
    for (std::size_t i = 0; i < 4; ++i) {
        EXPECT_NEAR(scaled.y[i].real() / y.y[i].real(), 1, 1e-9);
        EXPECT_NEAR(scaled.y[i].imag() / y.y[i].imag(), 1, 1e-9);
    }
}

/// Int E . I dl: the field of one wire's currents along another wire.
Complex reaction(const Solver& source, const Currents& from, const Solver& on, const Currents& to) {
    Complex sum = 0;
    for (const auto& piece : current_elements(on.mesh(), to, 4)) {
        const auto& [x, y, z] = piece.position_m;
        const NearField field = near_field(source.mesh(), from, {x, y, z});
        for (std::size_t i = 0; i < 3; ++i) {
            sum += field.electric_V_m[i] * piece.moment_A_m[i];
        }
    }
    return sum;
}

// Lorentz: the fields, which are not made from the (symmetric) matrix, react alike in both directions, and as
// the matrix's own mutual term says.
TEST(Reciprocity, OfTwoLoopsAskew) {
    const units::Frequency frequency = units::megahertz(14);
    const WireModel first = one_loop(1, 0.01);
    const WireModel second{
        {circle({0.1, 0.4, -0.2}, {0.8, 0.6, 0}, {0, 0, 1}, 0.3, 0.003)}, {{0, 0.1, 0.02}}, {}};
    WireModel both = first;
    both.wires.push_back(second.wires[0]);
    both.ports.push_back({1, 0.1, 0.02});
    const Solver one(first, {}, frequency);
    const Solver other(second, {10, 0, 1}, frequency); // the same mesh as the second wire of both
    const Solver together(both, {}, frequency);
    const std::size_t n = one.mesh().nodes();
    ASSERT_EQ(n + other.mesh().nodes(), together.mesh().nodes());
    const Loading loss{{{0.01, 0.01}}, {}};
    const Currents a = one.solve(frequency, loss).currents(std::vector<Complex>{{0.3, 1.0}, 2.0});
    const Currents b = other.solve(frequency, loss).currents(std::vector<Complex>{{0.0, 1.5}});
    const Complex there = reaction(one, a, other, b);
    const Complex back = reaction(other, b, one, a);
    const support::Compared table("theory", "Reciprocity of two loops askew");
    table.amount("fields of either on the other", "difference over size",
                 std::abs(there - back) / std::abs(there), 0, 1e-4);
    const FieldMatrix z = together.free_space(frequency);
    Complex matrix = 0;
    for (std::size_t i = 0; i < other.mesh().nodes(); ++i) {
        for (std::size_t k = 0; k < n; ++k) {
            const std::size_t at = (n + i) * (n + i + 1) / 2 + k;
            matrix -= b.unknown_A[i] * Complex(z.re[at], z.im[at]) * a.unknown_A[k];
        }
    }
    table.amount("fields and the mutual part of the matrix", "difference over size",
                 std::abs(there - matrix) / std::abs(there), 0, 3e-4);
}

/// Reactance of a long narrow rectangle at one short end.
double rectangle_reactance(double length_m, double apart_m, double radius_m, units::Frequency frequency) {
    const double h = apart_m / 2;
    const WireModel model{{polyline({{0, 0, -h}, {length_m, 0, -h}, {length_m, 0, h}, {0, 0, h}}, radius_m)},
                          {{0, 2 * length_m + 1.5 * apart_m, 0.1 * apart_m}},
                          {}};
    const Solver solver(model, {96, 0, 1}, frequency);
    return (1.0 / solver.solve(frequency, {{0.0}, {}}).admittance().at(0, 0)).imag();
}

// A two-wire line shorted at its end: inductance mu0/pi ln(d/a) a metre and impedance eta/pi ln(d/a) for
// current even around the wires (C. R. Paul, Analysis of Multiconductor Transmission Lines, wide separation;
// from memory). The two short sides add an inductance each, found at low frequency.
TEST(TwoWireLine, LongNarrowRectangleIsAShortedLine) {
    const double apart = 0.1, radius = 0.004;
    const double impedance = free_space_impedance_ohm / pi * std::log(apart / radius);
    const auto beta = [](double hertz) { return 2 * pi * hertz / speed_of_light_m_s; };
    const double x6 = rectangle_reactance(6, apart, radius, units::kilohertz(50));
    const double x9 = rectangle_reactance(9, apart, radius, units::kilohertz(50));
    const support::Compared table("theory", "Long narrow rectangle as a two-wire line");
    table.share("50 kHz, 3 m more", "X [ohm/m]", (x9 - x6) / 3, impedance * beta(5e4), 3e-4);
    const double end_m = 0.5 * (x6 / (impedance * beta(5e4)) - 6); // as a length of line, each end
    EXPECT_LT(std::abs(end_m), apart);
    // The charge at the driven end, not in this picture, is worth some centimetres of line: 1 %.
    for (const double hertz : {2e6, 4e6, 6e6}) { // up to 0.18 wavelengths
        const double b = beta(hertz);
        const auto angle = [&](double length_m) {
            const double x = rectangle_reactance(length_m, apart, radius, units::hertz(hertz));
            return std::atan(x / impedance - b * end_m);
        };
        table.share(std::to_string(std::lround(hertz / 1e6)) + " MHz, 3 m more", "phase constant [rad/m]",
                    (angle(9) - angle(6)) / 3, b, 1e-2);
    }
}

} // namespace
} // namespace loopwright::wire::testing
