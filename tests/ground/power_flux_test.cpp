// Sky and ground power of small loops and dipoles against the independent dipole cases and the energy
// balance.
#include "ground/power_flux.hpp"

#include "ground/soil.hpp"
#include "ground/waves.hpp"
#include "support/cases.hpp"
#include "support/compared.hpp"
#include "units/constants.hpp"

#include <cmath>
#include <gtest/gtest.h>

namespace loopwright::ground {
namespace {

using Complex = std::complex<double>;
using units::constants::free_space_impedance_ohm;
using units::constants::pi;

/// A circle of 1 A, uniform, as short elements.
std::vector<CurrentElement> circle(double radius_m, double height_m, bool vertical) {
    std::vector<CurrentElement> elements;
    constexpr int n = 96; // trapezium rule; the lowest point of one case is a quarter of its radius up
    const double dl = 2.0 * pi * radius_m / n;
    for (int i = 0; i < n; ++i) {
        const double c = std::cos(2.0 * pi * i / n), s = std::sin(2.0 * pi * i / n);
        if (vertical) {
            elements.push_back({{radius_m * c, 0, height_m + radius_m * s}, {-s * dl, 0, c * dl}});
        } else {
            elements.push_back({{radius_m * c, radius_m * s, height_m}, {-s * dl, c * dl, 0}});
        }
    }
    return elements;
}

TEST(PowerFlux, SmallLoopsMatchTheIndependentDipoleCases) {
    const support::Compared table("independent-cases", "Ground: sky and ground power of small loops");
    int met = 0;
    for (const auto& c : support::independent_cases("ground")) {
        if (c.has_input("radius") || !c.has_input("eps_r")) {
            continue;
        }
        const double f = c.input("frequency");
        const double h = c.input("height");
        const double radius = 0.02 * h; // costs about its square
        const Complex eps = complex_permittivity(
            {c.input("eps_r"), units::siemens_per_metre(c.input("sigma"))}, units::hertz(f));
        const double r0 = free_space_impedance_ohm * pi / 6.0 * std::pow(k0_at(f) * radius, 4);
        for (const bool vertical : {false, true}) {
            const std::string name = vertical ? "vertical" : "horizontal";
            const auto elements = circle(radius, h, vertical);
            table.share(c.id, name + "_sky_over_R0", sky_power_W(elements, k0_at(f), eps) / r0,
                        c.output(name + "_sky_over_R0"), 1e-3);
            table.share(c.id, name + "_ground_over_R0", ground_power_W(elements, k0_at(f), eps) / r0,
                        c.output(name + "_ground_over_R0"), 2e-3);
        }
        ++met;
    }
    EXPECT_EQ(met, 4);
}

TEST(PowerFlux, FiniteLoopsMatchTheIndependentCases) {
    const support::Compared table("independent-cases",
                                  "Ground: sky and ground power of loops of uniform current");
    for (const auto& c : support::independent_cases("ground")) {
        if (!c.has_input("radius")) {
            continue;
        }
        const double f = c.input("frequency");
        const Complex eps = complex_permittivity(
            {c.input("eps_r"), units::siemens_per_metre(c.input("sigma"))}, units::hertz(f));
        for (const bool vertical : {false, true}) {
            const std::string name = vertical ? "vertical" : "horizontal";
            const auto elements = circle(c.input("radius"), c.input("height"), vertical);
            const double r0 = c.output("R0");
            const double sky = sky_power_W(elements, k0_at(f), eps);
            table.share(c.id, name + "_sky_over_R0", sky / r0, c.output(name + "_sky_over_R0"), 1e-5);
            // What the ground adds to the resistance and what leaves: 1 A, so powers are resistances.
            const double ground = ground_power_W(elements, k0_at(f), eps);
            table.share(c.id, name + ": sky + ground [ohm]", sky + ground, r0 + c.output(name + "_dR"), 1e-5);
        }
    }
}

TEST(PowerFlux, PerfectGroundTakesNothing) {
    const auto elements = circle(0.3, 1.0, true);
    const double k0 = k0_at(14e6);
    EXPECT_LT(ground_power_W(elements, k0, {1.0, -1e14}), 1e-5 * sky_power_W(elements, k0, {1.0, -1e14}));
}

TEST(PowerFlux, FreeSpaceSplitsEvenly) {
    // Half goes up, half crosses the surface that is not there. A horizontal loop is symmetrical up and down.
    const auto elements = circle(0.2, 0.5, false);
    const double k0 = k0_at(14e6);
    const double up = sky_power_W(elements, k0, {1.0, 0.0});
    EXPECT_NEAR(ground_power_W(elements, k0, {1.0, 0.0}) / up, 1.0, 1e-6);
    EXPECT_NEAR(2.0 * up / (free_space_impedance_ohm * pi / 6.0 * std::pow(k0 * 0.2, 4)), 1.0, 2e-3);
}

} // namespace
} // namespace loopwright::ground
