// The solver against the Fourier series of the thin circular loop, and both against the independent cases.
#include "wire/fourier_loop.hpp"

#include "support/cases.hpp"
#include "support/compared.hpp"
#include "units/constants.hpp"
#include "wire/loops.hpp"

#include <algorithm>
#include <cmath>
#include <cstdio>
#include <gtest/gtest.h>

namespace loopwright::wire::testing {
namespace {

using units::constants::pi;
using units::constants::speed_of_light_m_s;

PortMatrix solved(const FourierLoop& loop, units::Frequency frequency, double refinement) {
    WireModel model{{vertical_circle(2 * loop.radius_m, loop.wire_radius_m)},
                    {{0, pi * loop.radius_m, loop.gap_m}, {0, 0, loop.gap_m}},
                    {}};
    const Solver solver(model, {24, speed_of_light_m_s / frequency.value(), refinement}, frequency);
    return solver.solve(frequency, {{0.0}, {}}).admittance();
}

/// Compares input and transfer admittance; the imaginary part of the input passes through zero, so it is held
/// against the larger of the two.
void compare(const FourierLoop& loop, double perimeter, double refinement, double tolerance) {
    const double k = perimeter / loop.radius_m;
    const PortMatrix y = solved(loop, units::hertz(k * speed_of_light_m_s / (2 * pi)), refinement);
    const Complex input = loop.admittance(k, 0);
    const Complex transfer = loop.admittance(k, pi);
    const double scale = std::max(std::abs(input), std::abs(transfer));
    const support::Compared table("theory", "Circular loop by Fourier series");
    char name[96];
    (void)std::snprintf(name, sizeof name, "%g wavelengths, a/b %g, gap/b %g, refinement %g", perimeter,
                        loop.wire_radius_m / loop.radius_m, loop.gap_m / loop.radius_m, refinement);
    table.share(name, "G in [S]", y.at(0, 0).real(), input.real(), tolerance);
    table.amount(name, "B in [mS]", 1e3 * y.at(0, 0).imag(), 1e3 * input.imag(), 1e3 * tolerance * scale);
    table.amount(name, "B transfer [mS]", 1e3 * y.at(0, 1).imag(), 1e3 * transfer.imag(),
                 1e3 * tolerance * scale);
    table.amount(name, "G transfer over G in", y.at(0, 1).real() / std::abs(input.real()),
                 transfer.real() / std::abs(input.real()), tolerance);
}

// Storer's and Wu's formulas leave out terms of order (a/b)^2: 1e-4 here.
TEST(FourierLoop, FineMeshAgreesFromAThirtiethToOneAndAHalfWavelengthsOfPerimeter) {
    for (const double perimeter : {0.03, 0.1, 0.3, 0.48, 0.6, 0.9, 1.0, 1.1, 1.25, 1.5}) {
        compare({1.0, 0.01, 0.02}, perimeter, 3, 6e-4);
    }
}

TEST(FourierLoop, DefaultMeshAgreesWhereSmallLoopsWork) {
    for (const double perimeter : {0.03, 0.06, 0.1, 0.15, 0.2, 0.25, 0.3, 0.35}) {
        compare({1.0, 0.01, 0.02}, perimeter, 1, 1e-3);
        compare({1.0, 0.002, 0.03}, perimeter, 1, 1e-3);
    }
}

TEST(FourierLoop, IndependentCasesOfTheLosslessLoop) {
    const support::Compared table("independent-cases", "Admittance of the lossless circular loop");
    int met = 0;
    for (const auto& c : support::independent_cases("fullwave")) {
        if (!c.has_output("G11")) {
            continue;
        }
        const FourierLoop loop{c.input("radius"), c.input("wire_diameter") / 2, c.input("gap_width")};
        const PortMatrix y = solved(loop, units::hertz(c.input("frequency")), 1);
        const double k = 2 * pi * c.input("frequency") / speed_of_light_m_s;
        for (const bool opposite : {false, true}) {
            const std::string g = opposite ? "G12" : "G11";
            const std::string b = opposite ? "B12" : "B11";
            const Complex series = loop.admittance(k, opposite ? pi : 0.0);
            table.share(c.id, g + ", series", series.real(), c.output(g), 5 * c.u_num(g));
            table.share(c.id, b + ", series", series.imag(), c.output(b), 5 * c.u_num(b));
            const Complex got = y.at(0, opposite ? 1 : 0);
            table.share(c.id, g + ", solver", got.real(), c.output(g), c.u_model(g) + 0.01);
            table.share(c.id, b + ", solver", got.imag(), c.output(b), c.u_model(b) + 0.01);
        }
        ++met;
    }
    EXPECT_EQ(met, 2);
}

} // namespace
} // namespace loopwright::wire::testing
