// Near fields over ground against the independent full-wave cases, and Maxwell's equations at random points.
#include "field/loop_field.hpp"

#include "base/error.hpp"
#include "support/compared.hpp"
#include "support/fullwave_designs.hpp"
#include "units/constants.hpp"

#include <array>
#include <cmath>
#include <gtest/gtest.h>
#include <random>

namespace loopwright::field {
namespace {

using Complex = std::complex<double>;
using units::metres;

LoopField field_of(const design::Design& design, double frequency_Hz, double power_W) {
    auto solved = loop::FullWave(design).solved(units::hertz(frequency_Hz));
    EXPECT_TRUE(solved.has_value());
    return {std::move(solved.value()), units::watts(power_W)};
}

// Limits stated with the cases: magnetic 1 %, electric 1.5 %, at 0.5 m or more from the wire.
TEST(LoopField, IndependentCases) {
    const support::Compared table("full-wave-cases", "Near fields of the design");
    int points = 0;
    for (const auto& c : support::fullwave_cases()) {
        if (c.text("drive") != "series gap opposite the capacitor" || c.text("shape") == "stack8") {
            continue; // stacks: scaled to equal current elsewhere, the cases leave proximity out
        }
        const LoopField field = field_of(support::design_of(c), c.in("f"), 10);
        for (const auto& near : c.near_fields()) {
            const std::string at = support::place_text(near.position_m);
            const Field f =
                field.at(metres(near.position_m[0]), metres(near.position_m[1]), metres(near.position_m[2]));
            table.share(c.id, "H" + at, f.magnetic().value(), near.magnetic_rms, 0.01);
            table.share(c.id, "E" + at, f.electric().value(), near.electric_rms, 0.015);
            ++points;
        }
    }
    EXPECT_GT(points, 60);
}

design::Design copper_loop(design::GroundKind ground, double tilt_deg) {
    design::Design d;
    d.capacitor.loss.q = 1000.0;
    d.site.ground.kind = ground;
    d.site.lowest_point = metres(0.7);
    d.site.tilt = units::degrees(tilt_deg);
    return d;
}

/// curl F by central differences, component by component.
template <class Get>
std::array<Complex, 3> curl(const LoopField& field, const std::array<double, 3>& p, const Get& get) {
    constexpr double h = 2e-3;
    const auto slope = [&](std::size_t axis) {
        auto up = p, down = p;
        up[axis] += h;
        down[axis] -= h;
        const auto a = get(field.at(metres(up[0]), metres(up[1]), metres(up[2])));
        const auto b = get(field.at(metres(down[0]), metres(down[1]), metres(down[2])));
        return std::array<Complex, 3>{(a[0] - b[0]) / (2 * h), (a[1] - b[1]) / (2 * h),
                                      (a[2] - b[2]) / (2 * h)};
    };
    const auto dx = slope(0), dy = slope(1), dz = slope(2);
    return {dy[2] - dz[1], dz[0] - dx[2], dx[1] - dy[0]};
}

TEST(LoopField, MaxwellsEquationsOverGround) {
    std::mt19937 random(11);
    std::uniform_real_distribution<double> side(-2.5, 2.5), height(0.3, 2.5);
    const double f_Hz = 14.1e6;
    const double omega = 2 * units::constants::pi * f_Hz;
    for (const auto ground : {design::GroundKind::soil, design::GroundKind::perfect}) {
        for (const double tilt : {0.0, 35.0}) {
            const LoopField field = field_of(copper_loop(ground, tilt), f_Hz, 5);
            for (int i = 0; i < 4; ++i) {
                const std::array<double, 3> p{side(random), 1.0 + std::abs(side(random)), height(random)};
                const Field at = field.at(metres(p[0]), metres(p[1]), metres(p[2]));
                const auto curl_h = curl(field, p, [](const Field& f) { return f.magnetic_A_m; });
                const auto curl_e = curl(field, p, [](const Field& f) { return f.electric_V_m; });
                const Complex of_e(0, omega * units::constants::electric_constant_F_m);
                const Complex of_h(0, -omega * units::constants::magnetic_constant_H_m);
                const double e = at.electric().value(), m = at.magnetic().value();
                for (std::size_t n = 0; n < 3; ++n) {
                    EXPECT_LT(std::abs(curl_e[n] - of_h * at.magnetic_A_m[n]),
                              2e-3 * (std::abs(of_h) * m + e / 2))
                        << n;
                    EXPECT_LT(std::abs(curl_h[n] - of_e * at.electric_V_m[n]),
                              2e-3 * (std::abs(of_e) * e + m / 2))
                        << n;
                }
            }
        }
    }
}

TEST(LoopField, GrowsWithTheRootOfPower) {
    const auto d = copper_loop(design::GroundKind::soil, 0);
    const double a = field_of(d, 7.1e6, 5).at(metres(1), metres(1), metres(1)).magnetic().value();
    const double b = field_of(d, 7.1e6, 20).at(metres(1), metres(1), metres(1)).magnetic().value();
    EXPECT_NEAR(b / a, 2.0, 1e-9);
}

TEST(LoopField, RefusesPointsBelowTheGround) {
    const LoopField field = field_of(copper_loop(design::GroundKind::soil, 0), 7.1e6, 5);
    EXPECT_THROW((void)field.at(metres(1), metres(0), metres(0)), base::InputError);
    EXPECT_THROW((void)field.at(metres(1), metres(0), metres(-1)), base::InputError);
}

} // namespace
} // namespace loopwright::field
