// The voltage along the conductor: symmetry, the shorted line's closed form, perfect ground as an image.
#include "base/error.hpp"
#include "loop/conductor_voltage.hpp"
#include "loop/full_wave.hpp"
#include "units/constants.hpp"

#include <cmath>
#include <gtest/gtest.h>

namespace loopwright::loop {
namespace {

design::Design circle(design::GroundKind ground = design::GroundKind::free_space) {
    design::Design d;
    d.loop.size = units::metres(1);
    d.conductor.diameter = units::millimetres(22);
    d.capacitor.loss.q = 1000;
    d.site.ground.kind = ground;
    d.site.lowest_point = units::metres(1);
    return d;
}

struct Solved {
    ConductorVoltage voltage;
    double capacitor_rms_V;
};

Solved solved(const design::Design& d, double f_MHz, double watt = 10, int points = 33) {
    const FullWave model(d, Workload::few_frequencies);
    const auto f = units::megahertz(f_MHz);
    const auto point = model.at(f, units::watts(watt), 2);
    auto along = conductor_voltage(*model.solved(f), units::watts(watt), points);
    return {along.value(), point.resonance->capacitor_voltage_rms.value()};
}

} // namespace

// By symmetry a balanced loop in free space has half of the capacitor's voltage at each end, against each
// other, and none opposite. What the potential leaves out of the voltage is the magnetic part of the field
// across the gap, of the order of the gap over the perimeter.
TEST(ConductorVoltage, HalfAtEachEndNoneOpposite) {
    for (const double f_MHz : {3.65, 7.1, 14.15, 28.5}) {
        const Solved s = solved(circle(), f_MHz);
        const auto& points = s.voltage.points;
        EXPECT_NEAR(points.front().rms.value() / s.capacitor_rms_V, 0.5, 0.01) << f_MHz;
        EXPECT_NEAR(points.back().rms.value() / s.capacitor_rms_V, 0.5, 0.01) << f_MHz;
        EXPECT_LT(s.voltage.at_middle_rms.value() / s.capacitor_rms_V, 2e-3) << f_MHz;
        EXPECT_NEAR(s.voltage.highest_rms.value(), points.front().rms.value(),
                    1e-3 * points.front().rms.value());
        EXPECT_NEAR(points[5].peak.value(), points[5].rms.value() * std::sqrt(2.0), 1e-9);
    }
}

// A shorted line seen from its open end: V(x) = V(l) sin(kx)/sin(kl), x from the short (textbook, e.g. D. M.
// Pozar, Microwave Engineering, section 2.3: V = j 2 V0 sin(beta l)). Against it within 2 % of the highest up
// to 0.3 wavelengths of conductor.
TEST(ConductorVoltage, FollowsTheShortedLine) {
    for (const double f_MHz : {3.65, 7.1, 14.15, 28.5}) {
        const Solved s = solved(circle(), f_MHz);
        const double k = 2 * units::constants::pi * f_MHz * 1e6 / units::constants::speed_of_light_m_s;
        const double half_m = 0.5 * s.voltage.points.back().along.value();
        const double end_V = s.voltage.points.front().rms.value();
        for (const TouchPoint& point : s.voltage.points) {
            const double x = half_m - point.from_capacitor.value();
            const double line_V = end_V * std::sin(k * x) / std::sin(k * half_m);
            EXPECT_NEAR(point.rms.value() / end_V, line_V / end_V, 0.02) << f_MHz << ' ' << x;
        }
    }
}

TEST(ConductorVoltage, GrowsWithTheRootOfThePower) {
    const Solved one = solved(circle(), 7.1, 1, 9), hundred = solved(circle(), 7.1, 100, 9);
    for (std::size_t i = 0; i < 9; ++i) {
        if (i != 4) { // nothing opposite
            EXPECT_NEAR(hundred.voltage.points[i].rms.value() / one.voltage.points[i].rms.value(), 10, 1e-9);
        }
    }
}

TEST(ConductorVoltage, OverGroundSymmetryStaysAndGoodSoilIsAnImage) {
    design::Design perfect = circle(design::GroundKind::perfect);
    design::Design metal = circle(design::GroundKind::soil);
    metal.site.ground.conductivity = units::siemens_per_metre(100);
    const Solved image = solved(perfect, 7.1, 10, 17), table = solved(metal, 7.1, 10, 17);
    for (std::size_t i = 0; i < 17; ++i) {
        // Skin depth at 100 S/m and 7 MHz: 19 mm of some 1.5 m of height.
        EXPECT_NEAR(table.voltage.points[i].rms.value() / table.capacitor_rms_V,
                    image.voltage.points[i].rms.value() / image.capacitor_rms_V, 0.005)
            << i;
    }
    const Solved soil = solved(circle(design::GroundKind::soil), 14.15, 10, 17);
    EXPECT_NEAR(soil.voltage.points.front().rms.value() / soil.capacitor_rms_V, 0.5, 0.01);
    EXPECT_LT(soil.voltage.at_middle_rms.value() / soil.capacitor_rms_V, 2e-3);
    EXPECT_GT(soil.voltage.points.front().position_m[2], 1.9) << "the capacitor is at the top";
}

TEST(ConductorVoltage, SaysWhereItDoesNotHold) {
    const FullWave model(circle(), Workload::few_frequencies);
    const auto loop = model.solved(units::megahertz(40));
    ASSERT_TRUE(loop);
    EXPECT_FALSE(conductor_voltage(*loop, units::watts(5)).has_value()); // 0.42 wavelengths
    EXPECT_THROW((void)conductor_voltage(*loop, units::watts(0)), base::InputError);
    EXPECT_THROW((void)conductor_voltage(*loop, units::watts(5), 2), base::InputError);
}

} // namespace loopwright::loop
