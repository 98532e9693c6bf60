// The quick sum against LoopField, point by point, and against published near fields of a magnetic dipole.
#include "field/quick_field.hpp"

#include "base/error.hpp"
#include "field/loop_field.hpp"
#include "units/constants.hpp"

#include <cmath>
#include <gtest/gtest.h>
#include <random>

namespace loopwright::field {
namespace {

using units::metres;
using units::constants::pi;

struct Case {
    const char* name;
    design::GroundKind ground;
    double tilt_deg, lowest_m, frequency_Hz, size_m;
};

design::Design design_of(const Case& c) {
    design::Design d;
    d.loop.size = metres(c.size_m);
    d.capacitor.loss.q = 1000.0;
    d.site.ground.kind = c.ground;
    d.site.tilt = units::degrees(c.tilt_deg);
    d.site.lowest_point = metres(c.lowest_m);
    return d;
}

loop::SolvedLoop solved(const Case& c) {
    auto loop = loop::FullWave(design_of(c)).solved(units::hertz(c.frequency_Hz));
    if (!loop) {
        throw std::runtime_error("not solved");
    }
    return *std::move(loop);
}

class QuickFields : public testing::TestWithParam<Case> {};

TEST_P(QuickFields, AgreeWithLoopField) {
    const Case& c = GetParam();
    QuickField quick(solved(c), metres(40), metres(6));
    const LoopField slow(solved(c), units::watts(1));
    std::mt19937 random(5);
    std::uniform_real_distribution<double> share(0, 1);
    double worst = 0;
    for (int i = 0; i < 40; ++i) {
        const double across = 0.3 * std::pow(100.0, share(random)), angle = 2 * pi * share(random);
        const std::array<double, 3> p{across * std::cos(angle), across * std::sin(angle),
                                      0.02 + 3 * share(random)};
        if (quick.clearance_m(p) < 0.2) {
            continue;
        }
        const Field a = quick.at_1W(p);
        const Field b = slow.at(metres(p[0]), metres(p[1]), metres(p[2]));
        const double e = a.electric().value() / b.electric().value() - 1;
        const double h = a.magnetic().value() / b.magnetic().value() - 1;
        worst = std::max({worst, std::abs(e), std::abs(h)});
        EXPECT_NEAR(e, 0, 3e-3) << p[0] << ", " << p[1] << ", " << p[2];
        EXPECT_NEAR(h, 0, 3e-3) << p[0] << ", " << p[1] << ", " << p[2];
    }
    RecordProperty("worst_relative_difference", std::to_string(worst));
}

INSTANTIATE_TEST_SUITE_P(
    Sites, QuickFields,
    testing::Values(Case{"soil_7", design::GroundKind::soil, 0, 1.0, 7.1e6, 1.0},
                    Case{"soil_28_tilted", design::GroundKind::soil, 35, 0.5, 28.5e6, 0.9},
                    Case{"soil_14_lying", design::GroundKind::soil, 90, 0.3, 14.1e6, 1.0},
                    Case{"perfect_14", design::GroundKind::perfect, 0, 0.7, 14.1e6, 1.0},
                    Case{"free_space_7", design::GroundKind::free_space, 0, 1.0, 7.1e6, 1.0}),
    [](const auto& tested) { return tested.param.name; });

// Magnetic field of a small loop on its axis, C. A. Balanis, Antenna Theory, small-loop fields (eq. 5-18: H_r
// = j k a^2 I cos(theta)/(2 r^2) [1 + 1/(jkr)] exp(-jkr), exact for a dipole of moment pi a^2 I; from memory
// as to the number). At 3.5 MHz a loop of 0.3 m is a dipole at 3 m within (a/r)^2.
TEST(QuickField, OfASmallLoopOnItsAxisIsADipoles) {
    const Case c{"", design::GroundKind::free_space, 0, 0, 3.5e6, 0.3};
    const loop::SolvedLoop loop = solved(c);
    const double current_A = 1 / std::sqrt(loop.total.value());
    QuickField quick(solved(c), metres(10), metres(1));
    const double k = 2 * pi * 3.5e6 / units::constants::speed_of_light_m_s, a = 0.15;
    for (const double r : {1.5, 3.0, 6.0}) {
        const double moment = pi * a * a * current_A;
        const double expected = moment / (2 * pi * r * r * r) * std::sqrt(1 + k * r * k * r);
        const double on_axis = expected * std::pow(1 + a * a / (r * r), -1.5);
        EXPECT_NEAR(quick.at_1W({0, r, 0}).magnetic().value() / on_axis, 1, 0.01) << r;
    }
}

// The same source, eq. 5-18a and b, off the axis: H_r as above, H_theta = -(ka)^2 I sin(theta)/(4 r) [1 +
// 1/(jkr)
// - 1/(kr)^2] exp(-jkr), theta from the axis, which is y. Low in frequency: the electric dipole of the
// capacitor's charges, which the formula has not, adds in the loop's plane (1.7 % at 3.5 MHz, as the
// frequency).
TEST(QuickField, OfASmallLoopOffItsAxisIsADipoles) {
    const Case c{"", design::GroundKind::free_space, 0, 0, 1.8e6, 0.3};
    const loop::SolvedLoop loop = solved(c);
    const double current_A = 1 / std::sqrt(loop.total.value());
    QuickField quick(solved(c), metres(30), metres(1));
    const double k = 2 * pi * 1.8e6 / units::constants::speed_of_light_m_s, a = 0.15;
    for (const double r : {3.0, 6.0, 12.0}) {
        for (const double theta : {0.3, 0.8, 1.2, 0.5 * pi}) {
            const double kr = k * r, moment = pi * a * a * current_A;
            const double radial = moment * std::cos(theta) / (2 * pi * r * r * r) * std::hypot(1, kr);
            const double polar =
                moment * std::sin(theta) / (4 * pi * r * r * r) * std::hypot(1 - kr * kr, kr);
            for (const double around : {0.0, 0.5 * pi}) { // in the loop's plane: along x, along z
                const double across = r * std::sin(theta);
                const Field at =
                    quick.at_1W({across * std::cos(around), r * std::cos(theta), across * std::sin(around)});
                EXPECT_NEAR(at.magnetic().value() / std::hypot(radial, polar), 1, 0.01)
                    << r << " m, " << theta << ", " << around;
            }
        }
    }
}

// Far away E/H is the impedance of free space and the power density is the gain's, FCC OET Bulletin 65 Ed.
// 97-01: S = P G/(4 pi R^2).
TEST(QuickField, FarAwayIsAPlaneWave) {
    const Case c{"", design::GroundKind::free_space, 0, 0, 28.5e6, 0.9};
    QuickField quick(solved(c), metres(150), metres(1));
    const auto point = loop::FullWave(design_of(c)).at(units::hertz(c.frequency_Hz), units::watts(1), 2.0);
    const double gain = std::pow(10, point.resonance.value().gain_max.value().value / 10);
    double best = 0;
    for (int i = 0; i < 72; ++i) {
        const double polar = 2 * pi * i / 72;
        const Field f = quick.at_1W({100 * std::sin(polar), 0, 100 * std::cos(polar)});
        const double e = f.electric().value(), h = f.magnetic().value();
        EXPECT_NEAR(e / h / units::constants::free_space_impedance_ohm, 1, 0.01);
        best = std::max(best, e * h);
    }
    EXPECT_NEAR(best / (gain / (4 * pi * 1e4)), 1, 0.01);
}

TEST(QuickField, RefusesPointsOutside) {
    QuickField quick(solved({"", design::GroundKind::soil, 0, 1.0, 7.1e6, 1.0}), metres(5), metres(2));
    EXPECT_THROW((void)quick.at_1W({6, 0, 1}), base::ProgramError);
    EXPECT_THROW((void)quick.at_1W({1, 0, -0.1}), base::ProgramError);
    EXPECT_THROW((void)quick.at_1W({0, 0, 1.0}), base::InputError); // inside the conductor
}

TEST(QuickField, ClearanceIsFromTheSurface) {
    const QuickField quick(solved({"", design::GroundKind::soil, 0, 1.0, 7.1e6, 1.0}), metres(5), metres(2));
    EXPECT_NEAR(quick.clearance_m({0, 0, 0.5}), 0.5 - 0.011, 1e-3);
    EXPECT_NEAR(quick.clearance_m({0, 0, 1.5}), 0.5 - 0.011, 2e-3);
    EXPECT_NEAR(quick.clearance_m({0, 3, 1.5}), std::hypot(3, 0.5) - 0.011, 2e-3);
}

} // namespace
} // namespace loopwright::field
