// Laws that every loop must obey, over designs made at random from fixed seeds.
#include "loop/loop_model.hpp"
#include "support/spaced.hpp"
#include "units/constants.hpp"
#include "units/text.hpp"

#include <cmath>
#include <gtest/gtest.h>
#include <random>

namespace loopwright {
namespace {

using loop::Model;
using loop::OperatingPoint;
using loop::Resonance;
using units::constants::pi;
using units::constants::speed_of_light_m_s;

// Made by arithmetic on the raw generator, so that every library draws the same designs.
class Draw {
public:
    explicit Draw(unsigned seed) : generator_(seed) {}
    double between(double low, double high) {
        return low + (high - low) * double(generator_()) / double(std::mt19937::max());
    }
    int whole(int low, int high) { return static_cast<int>(between(low, high + 0.999)); }

private:
    std::mt19937 generator_;
};

design::Design any_design(Draw& draw, int most_turns = 3) {
    design::Design d;
    const double size = draw.between(0.4, 2.0);
    switch (draw.whole(0, 2)) {
    case 0:
        d.loop.size = units::metres(size);
        break;
    case 1:
        d.loop.outline = design::Outline::polygon;
        d.loop.sides = draw.whole(3, 9);
        d.loop.size_is = design::SizeMeaning::across_corners;
        d.loop.size = units::metres(size);
        break;
    default:
        d.loop.outline = design::Outline::rectangle;
        d.loop.width = units::metres(size);
        d.loop.height = units::metres(size * draw.between(0.5, 2.0));
    }
    const double diameter = size * draw.between(0.005, 0.025);
    d.conductor.diameter = units::metres(diameter);
    d.conductor.wall = units::metres(diameter * draw.between(0.05, 0.3));
    d.conductor.metal.name = "copper";
    d.loop.gap = units::metres(draw.between(0.01, 0.03));
    d.loop.turns = draw.whole(1, most_turns);
    d.loop.turn_spacing = units::metres(diameter * draw.between(2.5, 6.0));
    d.loop.lead = units::metres(2 * diameter);
    d.capacitor.loss.q = draw.between(300, 3000);
    return d;
}

double length_of(const design::Design& d) {
    return loop::make_model(d, Model::closed_form)
               ->at(units::megahertz(1), units::watts(1), 2)
               .perimeter_in_wavelengths *
           speed_of_light_m_s / 1e6;
}

Resonance resonance_of(const design::Design& d, double frequency_Hz, double power_W = 5) {
    const OperatingPoint point =
        loop::make_model(d, Model::closed_form)->at(units::hertz(frequency_Hz), units::watts(power_W), 2);
    EXPECT_TRUE(point.resonance);
    return point.resonance.value_or(Resonance{});
}

void expect_relative(double value, double wanted, double tolerance, const char* what) {
    EXPECT_NEAR(value / wanted - 1, 0, tolerance) << what;
}

template <class Quantity>
Quantity scaled(const units::Typed<Quantity>& typed, double factor) {
    return typed.value * factor;
}

} // namespace

// All lengths doubled at half the frequency: radiation resistance and gain of the lossless parts stay, L and
// C double, the skin resistance falls by the root of two where skin and wall are thick enough.
TEST(LoopProperties, LengthsDoubledAtHalfTheFrequency) {
    Draw draw(20240601);
    for (int i = 0; i < 12; ++i) {
        const design::Design d = any_design(draw);
        design::Design big = d;
        big.loop.size = scaled(d.loop.size, 2);
        big.loop.width = scaled(d.loop.width, 2);
        big.loop.height = scaled(d.loop.height, 2);
        big.loop.gap = scaled(d.loop.gap, 2);
        big.loop.turn_spacing = scaled(d.loop.turn_spacing, 2);
        big.loop.lead = scaled(d.loop.lead, 2);
        big.conductor.diameter = scaled(d.conductor.diameter, 2);
        big.conductor.wall = scaled(d.conductor.wall, 2);
        const double f = draw.between(0.08, 0.2) * speed_of_light_m_s / length_of(d);
        const Resonance small = resonance_of(d, f);
        const Resonance large = resonance_of(big, f / 2);
        expect_relative(large.resistance.radiation.value(), small.resistance.radiation.value(), 2e-4,
                        "radiation");
        expect_relative(large.tuning_capacitance.value(), 2 * small.tuning_capacitance.value(), 2e-3, "C");
        expect_relative(large.inductance.value(), 2 * small.inductance.value(), 2e-3, "L");
        expect_relative(large.resistance.conductor.value() * std::sqrt(2.0),
                        small.resistance.conductor.value(), 0.02, "conductor");
        expect_relative(large.resistance.capacitor.value(), small.resistance.capacitor.value(), 2e-3,
                        "capacitor");
    }
}

TEST(LoopProperties, LossesAddUpToTheInput) {
    Draw draw(7);
    for (int i = 0; i < 20; ++i) {
        design::Design d = any_design(draw);
        d.joints = {{draw.whole(1, 4), units::ohms(draw.between(0.0, 0.003))}};
        const double power = draw.between(1, 100);
        const double f = draw.between(0.03, 0.2) * speed_of_light_m_s / length_of(d);
        const Resonance r = resonance_of(d, f, power);
        const double current = r.loop_current_rms.value();
        const auto& parts = r.resistance;
        const double sum = parts.radiation.value() + parts.conductor.value() + parts.joints.value() +
                           parts.capacitor.value();
        expect_relative(current * current * sum, power, 1e-12, "input");
        expect_relative(r.efficiency * sum, parts.radiation.value(), 1e-12, "efficiency");
        // Capacitor voltage from its own current; its loss from its Q.
        const double omega = 2 * pi * f;
        expect_relative(r.capacitor_voltage_rms.value(),
                        r.capacitor_current_rms.value() / (omega * r.tuning_capacitance.value()), 1e-12, "V");
        expect_relative(r.capacitor_voltage_peak.value(), std::sqrt(2.0) * r.capacitor_voltage_rms.value(),
                        1e-12, "peak");
        const double own = r.capacitor_current_rms.value() * r.capacitor_voltage_rms.value() /
                           d.capacitor.loss.q.value_or(0);
        expect_relative(current * current * parts.capacitor.value(), own, 1e-6, "capacitor");
        EXPECT_GT(r.loop_current_rms, r.capacitor_current_rms); // the largest is opposite
        EXPECT_EQ(r.efficiency, r.efficiency_from_bandwidth);
    }
}

TEST(LoopProperties, CurrentsAndVoltagesFollowTheRootOfThePower) {
    Draw draw(11);
    for (int i = 0; i < 6; ++i) {
        const design::Design d = any_design(draw);
        const double f = draw.between(0.05, 0.2) * speed_of_light_m_s / length_of(d);
        const Resonance one = resonance_of(d, f, 1);
        const Resonance hundred = resonance_of(d, f, 100);
        expect_relative(hundred.capacitor_voltage_peak.value(), 10 * one.capacitor_voltage_peak.value(),
                        1e-12, "V");
        expect_relative(hundred.loop_current_rms.value(), 10 * one.loop_current_rms.value(), 1e-12, "I");
        EXPECT_EQ(hundred.efficiency, one.efficiency);
        EXPECT_EQ(hundred.tuning_capacitance, one.tuning_capacitance);
        EXPECT_EQ(hundred.bandwidth_vswr, one.bandwidth_vswr);
    }
}

TEST(LoopProperties, UnitsOfEntryDoNotMatter) {
    design::Design metric;
    metric.loop.size = units::parse<units::Length>("0.9144 m", "size");
    metric.conductor.diameter = units::parse<units::Length>("22.225 mm", "diameter");
    design::Design imperial;
    imperial.loop.size = units::parse<units::Length>("36 in", "size");
    imperial.conductor.diameter = units::parse<units::Length>("0.875 in", "diameter");
    const Resonance a = resonance_of(metric, 10.1e6);
    const Resonance b = resonance_of(imperial, 10.1e6);
    expect_relative(a.tuning_capacitance.value(), b.tuning_capacitance.value(), 1e-12, "C");
    expect_relative(a.resistance.total().value(), b.resistance.total().value(), 1e-12, "R");
}

TEST(LoopProperties, BetterPartsMakeBetterLoops) {
    Draw draw(99);
    for (int i = 0; i < 10; ++i) {
        const design::Design d = any_design(draw);
        const double f = draw.between(0.05, 0.2) * speed_of_light_m_s / length_of(d);
        const Resonance before = resonance_of(d, f);
        design::Design capacitor = d;
        capacitor.capacitor.loss.q = *d.capacitor.loss.q * 2;
        EXPECT_GT(resonance_of(capacitor, f).efficiency, before.efficiency);
        EXPECT_GT(resonance_of(capacitor, f).q_unloaded, before.q_unloaded);
        EXPECT_GT(resonance_of(capacitor, f).capacitor_voltage_peak, before.capacitor_voltage_peak);
        design::Design worse = d;
        worse.conductor.metal.name = "aluminium 6063";
        EXPECT_LT(resonance_of(worse, f).efficiency, before.efficiency);
        design::Design joints = d;
        joints.joints = {{2, units::ohms(0.005)}};
        EXPECT_LT(resonance_of(joints, f).efficiency, before.efficiency);
        EXPECT_GT(resonance_of(joints, f).bandwidth_vswr, before.bandwidth_vswr);
        // A voltage spread wider leaves the loop less capacitance of its own.
        design::Design wide = d;
        wide.loop.gap = scaled(d.loop.gap, 1.5);
        EXPECT_GT(resonance_of(wide, f).tuning_capacitance, before.tuning_capacitance);
    }
}

TEST(LoopProperties, RadiationRisesAndTuningCapacitanceFallsWithFrequency) {
    Draw draw(5);
    for (int i = 0; i < 8; ++i) {
        const design::Design d = any_design(draw, 2);
        const double length = length_of(d);
        const auto model = loop::make_model(d, Model::closed_form);
        double radiation = 0;
        double capacitance = 1;
        for (const double p : support::geometric(0.02, 0.249, 1.2)) {
            const OperatingPoint point =
                model->at(units::hertz(p * speed_of_light_m_s / length), units::watts(5), 2);
            if (!point.resonance) {
                EXPECT_TRUE(point.notices.has("self_resonant"));
                break;
            }
            EXPECT_GT(point.resonance->resistance.radiation.value(), radiation);
            EXPECT_LT(point.resonance->tuning_capacitance.value(), capacitance);
            radiation = point.resonance->resistance.radiation.value();
            capacitance = point.resonance->tuning_capacitance.value();
        }
    }
}

// Directivity of a small loop is 1.5 (Balanis, Antenna Theory, section 5.2); the electric dipole part of the
// uneven current adds to it in the best direction while the loop grows.
TEST(LoopProperties, GainIsEfficiencyTimesTheDirectivityOfASmallLoop) {
    Draw draw(17);
    for (int i = 0; i < 10; ++i) {
        const design::Design d = any_design(draw);
        const double f = 0.02 * speed_of_light_m_s / length_of(d);
        const Resonance r = resonance_of(d, f);
        EXPECT_NEAR(r.gain_max->value, 10 * std::log10(1.5 * r.efficiency), 0.02);
        EXPECT_LE(r.gain_low_angle->value, r.gain_max->value + 1e-9);
    }
}

// However the loop stands in free space, only the gain toward a given elevation changes.
TEST(LoopProperties, OrientationChangesNothingButTheLowAngle) {
    Draw draw(23);
    for (int i = 0; i < 6; ++i) {
        const design::Design upright = any_design(draw, 2);
        const double f = 0.15 * speed_of_light_m_s / length_of(upright);
        const Resonance a = resonance_of(upright, f);
        for (const double tilt : {25.0, 60.0, 90.0}) {
            design::Design tilted = upright;
            tilted.site.tilt = units::degrees(tilt);
            const Resonance b = resonance_of(tilted, f);
            expect_relative(b.resistance.total().value(), a.resistance.total().value(), 1e-8, "R");
            expect_relative(b.tuning_capacitance.value(), a.tuning_capacitance.value(), 1e-8, "C");
            EXPECT_NEAR(b.gain_max->value, a.gain_max->value, 0.01);
        }
        design::Design horizontal = upright;
        horizontal.site.plane = design::Plane::horizontal;
        EXPECT_NEAR(
            resonance_of(horizontal, f).gain_low_angle->value,
            [&] {
                design::Design flat = upright;
                flat.site.tilt = units::degrees(90);
                return resonance_of(flat, f).gain_low_angle->value;
            }(),
            1e-9);
    }
}

// Nothing that comes out is infinite or undefined, whatever valid design goes in.
TEST(LoopProperties, EveryNumberIsFinite) {
    Draw draw(31);
    for (int i = 0; i < 40; ++i) {
        design::Design d = any_design(draw, 12);
        d.loop.arrangement = draw.whole(0, 3) == 0 && d.loop.turns < 4 ? design::Arrangement::spiral
                                                                       : design::Arrangement::stack;
        const double f = std::exp(draw.between(std::log(1e4), std::log(3e8)));
        const OperatingPoint point =
            loop::make_model(d, Model::closed_form)->at(units::hertz(f), units::watts(5), 1.5);
        if (!point.resonance) {
            EXPECT_EQ(point.notices.worst_first().front().severity, base::Severity::not_established);
            continue;
        }
        const Resonance& r = *point.resonance;
        for (const double value :
             {r.inductance.value(), r.tuning_capacitance.value(), r.resistance.total().value(), r.efficiency,
              r.q_unloaded, r.bandwidth_half_power.value(), r.bandwidth_vswr.value(),
              r.capacitor_voltage_peak.value(), r.total_resistance_range.high.value(),
              r.efficiency_range.high, r.capacitor_voltage_peak_range.high.value()}) {
            EXPECT_TRUE(std::isfinite(value) && value > 0) << i;
        }
        EXPECT_TRUE(std::isfinite(r.gain_max->value) && std::isfinite(r.gain_low_angle->value)) << i;
        EXPECT_LE(r.tuning_capacitance_range.low, r.tuning_capacitance);
        EXPECT_LE(r.total_resistance_range.low, r.resistance.total());
        EXPECT_LE(r.efficiency_range.high, 1.0);
    }
}

} // namespace loopwright
