// Partial inductances against closed forms of whole circuits.
#include "coupling/partial_inductance.hpp"

#include "units/constants.hpp"

#include <boost/math/special_functions/ellint_1.hpp>
#include <boost/math/special_functions/ellint_2.hpp>

#include <cmath>
#include <gtest/gtest.h>

namespace loopwright::coupling {
namespace {

using units::constants::pi;
constexpr double mu0 = 4e-7 * pi;

std::vector<WirePiece> circle(double radius_m, double height_m, double wire_m, int conductor, int pieces) {
    std::vector<WirePiece> all;
    const auto at = [&](int i) {
        const double t = 2 * pi * i / pieces;
        return geometry::Vector3{radius_m * std::cos(t), radius_m * std::sin(t), height_m};
    };
    for (int i = 0; i < pieces; ++i) {
        all.push_back({at(i), at(i + 1), wire_m, conductor});
    }
    return all;
}

// A straight wire, current on its surface: mu0 l/(2 pi) (ln(2 l/a) - 1), l >> a (Grover 1946, ch. 5, without
// the internal part; from memory).
TEST(PartialInductance, StraightWire) {
    const WirePiece wire{{0, 0, 0}, {2, 0, 0}, 1e-3, 0};
    const double expected = mu0 * 2 / (2 * pi) * (std::log(2 * 2 / 1e-3) - 1);
    EXPECT_NEAR(partial_inductance(wire, wire).value() / expected, 1, 1e-4);
}

// Two parallel wires of length l at distance d: mu0 l/(2 pi) (asinh(l/d) - sqrt(1 + d^2/l^2) + d/l), the same
// integral done by hand.
TEST(PartialInductance, ParallelAndAntiparallelWires) {
    const WirePiece one{{0, 0, 0}, {1, 0, 0}, 1e-3, 0};
    const WirePiece other{{0, 0.1, 0}, {1, 0.1, 0}, 1e-3, 1};
    const WirePiece back{{1, 0.1, 0}, {0, 0.1, 0}, 1e-3, 1};
    const double expected = mu0 / (2 * pi) * (std::asinh(10) - std::sqrt(1.01) + 0.1);
    EXPECT_NEAR(partial_inductance(one, other).value() / expected, 1, 1e-9);
    EXPECT_NEAR(partial_inductance(one, back).value() / expected, -1, 1e-9);
}

// A nearly parallel pair takes the quadrature, the parallel one the closed form.
TEST(PartialInductance, QuadratureMeetsTheClosedForm) {
    const WirePiece one{{0, 0, 0}, {0.1, 0, 0}, 1e-3, 0};
    const WirePiece parallel{{0.05, 0.05, 0}, {0.15, 0.05, 0}, 1e-3, 1};
    const WirePiece nearly{{0.05, 0.05, 0}, {0.15, 0.05, 1e-6}, 1e-3, 1};
    EXPECT_NEAR(partial_inductance(one, nearly).value() / partial_inductance(one, parallel).value(), 1, 1e-6);
}

// Within the accuracy that the quadrature states.
TEST(PartialInductance, IsReciprocal) {
    const WirePiece one{{0, 0, 0}, {0.1, 0.02, 0}, 1e-3, 0};
    const WirePiece other{{0.05, 0.1, 0.03}, {0.2, 0.05, 0}, 2e-3, 1};
    EXPECT_NEAR(partial_inductance(one, other).value() / partial_inductance(other, one).value(), 1, 1e-4);
}

// Thin ring with the current on the surface: mu0 R (ln(8 R/a) - 2) (Rosa and Grover, NBS SP 169, 1916, from
// memory).
TEST(PartialInductance, Ring) {
    const auto ring = circle(0.5, 0, 0.005, 0, 360);
    EXPECT_NEAR(partial_inductance(ring, ring).value() / (mu0 * 0.5 * (std::log(8 * 0.5 / 0.005) - 2)), 1,
                1e-3);
}

// Coaxial circles (Maxwell, Treatise, art. 701): mu0 sqrt(R r) ((2/k - k) K - 2/k E), k^2 = 4 R r/((R + r)^2
// + h^2).
TEST(PartialInductance, CoaxialCircles) {
    const double R = 0.5, r = 0.2, h = 0.1;
    const double k = std::sqrt(4 * R * r / ((R + r) * (R + r) + h * h));
    const double maxwell =
        mu0 * std::sqrt(R * r) * ((2 / k - k) * boost::math::ellint_1(k) - 2 / k * boost::math::ellint_2(k));
    const auto large = circle(R, 0, 0.001, 0, 240);
    const auto small = circle(r, h, 0.001, 1, 240);
    EXPECT_NEAR(partial_inductance(large, small).value() / maxwell, 1, 3e-4);
}

// A long narrow rectangle is a two-wire line: mu0/pi ln(d/a) a metre.
TEST(PartialInductance, TwoWireLine) {
    const double l = 200, d = 0.1, a = 0.002;
    const std::vector<WirePiece> line{{{0, 0, 0}, {l, 0, 0}, a, 0},
                                      {{l, 0, 0}, {l, d, 0}, a, 1},
                                      {{l, d, 0}, {0, d, 0}, a, 2},
                                      {{0, d, 0}, {0, 0, 0}, a, 3}};
    EXPECT_NEAR(partial_inductance(line, line).value() / (mu0 / pi * l * std::log(d / a)), 1, 1e-3);
}

} // namespace
} // namespace loopwright::coupling
