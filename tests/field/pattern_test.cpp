// Patterns against the independent full-wave cases and against what a pattern must integrate to.
#include "field/pattern.hpp"

#include "base/error.hpp"
#include "support/fullwave_cases.hpp"
#include "support/fullwave_designs.hpp"
#include "units/constants.hpp"

#include <gtest/gtest.h>

#include <cmath>

namespace loopwright::field {
namespace {

using units::constants::pi;

// Limit stated with the cases: 0.05 dB.
TEST(Pattern, GainsOfTheIndependentCases) {
    int compared = 0;
    for (const auto& c : support::fullwave_cases()) {
        if (c.has("coupling_D") || c.gains().empty()) {
            continue;
        }
        for (const auto& g : c.gains()) {
            PatternRequest request;
            request.azimuth = units::degrees(g.azimuth_deg);
            request.step = units::degrees(0.5);
            const auto found = pattern(support::design_of(c), units::hertz(c.in("f")), request);
            ASSERT_TRUE(found) << c.id;
            const auto index = static_cast<std::size_t>(std::lround(g.elevation_deg / 0.5));
            ASSERT_NEAR(found->elevation.angle.at(index).value() * 180 / pi, g.elevation_deg, 1e-6);
            EXPECT_NEAR(found->elevation.gain.at(index).value, g.gain_dBi, 0.05) << c.id;
            ++compared;
        }
    }
    EXPECT_GT(compared, 10);
}

design::Design over_soil() {
    design::Design d;
    d.site.ground.kind = design::GroundKind::soil;
    return d;
}

TEST(Pattern, CutsMeetEachOther) {
    PatternRequest request;
    request.azimuth = units::degrees(30);
    request.elevation = units::degrees(30);
    request.dipole = loop::ComparisonDipole{};
    const auto p = pattern(over_soil(), units::megahertz(14.1), request);
    ASSERT_TRUE(p);
    EXPECT_NEAR(p->elevation.angle.back().value(), pi, 1e-12);
    // 30 degrees up at azimuth 30: index 10 of both cuts at steps of 3 degrees.
    EXPECT_NEAR(p->elevation.gain.at(10).value, p->azimuth.gain.at(10).value, 1e-9);
    EXPECT_NEAR(p->dipole_elevation->gain.at(10).value, p->dipole_azimuth->gain.at(10).value, 1e-9);
    // Over the zenith on the other side: azimuth 210 degrees.
    EXPECT_NEAR(p->elevation.gain.at(50).value, p->azimuth.gain.at(70).value, 1e-9);
    for (const units::Decibel gain : p->elevation.gain) {
        EXPECT_LE(gain.value, p->gain_max.value + 0.01);
    }
}

// A small loop in free space: the doughnut of a magnetic dipole, gain 1.5 times the efficiency in its plane,
// nothing along its axis (y).
TEST(Pattern, OfASmallLoopIsTheDoughnut) {
    design::Design d;
    d.loop.size = units::metres(0.4);
    d.capacitor.maximum = units::picofarads(2000);
    PatternRequest request;
    request.elevation = units::degrees(0);
    const auto p = pattern(d, units::megahertz(7), request);
    ASSERT_TRUE(p);
    EXPECT_TRUE(p->free_space);
    EXPECT_NEAR(p->elevation.angle.back().value(), 2 * pi, 1e-12);
    for (const units::Decibel gain : p->elevation.gain) {
        EXPECT_NEAR(gain.value, 10 * std::log10(1.5 * p->efficiency), 0.15);
    }
    EXPECT_LT(p->azimuth.gain.at(30).value, p->azimuth.gain.at(0).value - 15);
}

TEST(Pattern, SaysWhyThereIsNone) {
    base::Notices notices;
    EXPECT_FALSE(pattern(over_soil(), units::megahertz(300), {}, &notices));
    EXPECT_FALSE(notices.empty());
    PatternRequest fine;
    fine.step = units::degrees(0.01);
    EXPECT_THROW(static_cast<void>(pattern(over_soil(), units::megahertz(14), fine)), base::InputError);
    PatternRequest below;
    below.elevation = units::degrees(-10);
    EXPECT_THROW(static_cast<void>(pattern(over_soil(), units::megahertz(14), below)), base::InputError);
}

} // namespace
} // namespace loopwright::field
