#include "conductor/conductor.hpp"

#include "base/error.hpp"
#include "conductor/joints.hpp"
#include "conductor/metals.hpp"
#include "conductor/skin_effect.hpp"
#include "support/spaced.hpp"

#include <cmath>
#include <gtest/gtest.h>
#include <limits>

namespace loopwright::conductor {
namespace {

using units::millimetres;

ConductorSpec spec_of(Form form, const char* metal_name = "copper") {
    const MetalData& metal = find_metal(metal_name);
    ConductorSpec spec;
    spec.form = form;
    spec.diameter = millimetres(10);
    spec.wall = millimetres(1);
    spec.width = millimetres(20);
    spec.thickness = millimetres(1);
    spec.conductivity = metal.conductivity;
    spec.conductivity_range = metal.range;
    spec.temperature_coefficient = metal.temperature_coefficient;
    spec.factor = form == Form::braid || form == Form::stranded ? 1.5 : 1.0;
    return spec;
}

constexpr Form all_forms[] = {Form::wire, Form::tube, Form::strip, Form::braid, Form::stranded};

} // namespace

TEST(Conductor, IsTheFormulaOfItsForm) {
    const auto f = units::megahertz(7);
    const auto sigma = units::siemens_per_metre(58e6);
    const auto wire = wire_internal_impedance(millimetres(10), sigma, f).value();
    EXPECT_EQ(Conductor(spec_of(Form::wire)).internal_impedance(f).value(), wire);
    const auto tube = tube_internal_impedance(millimetres(10), millimetres(1), sigma, f).value();
    EXPECT_NEAR(std::abs(Conductor(spec_of(Form::tube)).internal_impedance(f).value() - tube), 0.0,
                1e-14 * std::abs(tube));
    for (const Form form : {Form::braid, Form::stranded}) {
        EXPECT_NEAR(std::abs(Conductor(spec_of(form)).internal_impedance(f).value() - 1.5 * wire), 0.0,
                    1e-14 * std::abs(wire));
    }
    EXPECT_DOUBLE_EQ(Conductor(spec_of(Form::tube)).equivalent_radius().value(), 0.005);
}

// A warm conductor has the impedance of its conductivity: copper at 80 degC 1.2358 times the resistivity (NBS
// Handbook 100), so sqrt(1.2358) times the thin-skin resistance but for the curvature of the wire.
TEST(Conductor, IsAsWarmAsItSays) {
    ConductorSpec spec = spec_of(Form::wire);
    const double cold = Conductor(spec).internal_impedance(units::megahertz(14)).value().real();
    spec.temperature = units::degrees_celsius(80);
    const Conductor warm(spec);
    EXPECT_NEAR(warm.internal_impedance(units::megahertz(14)).value().real() / cold, std::sqrt(1.2358), 1e-3);
    EXPECT_NEAR(warm.conductivity().value(), 58e6 / 1.2358, 1.0);
}

TEST(Conductor, ResistanceRisesWithFrequencyFromDirectCurrent) {
    for (const Form form : all_forms) {
        const Conductor conductor(spec_of(form));
        double before = conductor.dc_resistance().value() * (1 - 1e-9);
        EXPECT_NEAR(conductor.internal_impedance(units::hertz(0)).value().real(),
                    conductor.dc_resistance().value(), 1e-12 * before);
        // NOLINTNEXTLINE(clang-analyzer-security.FloatLoopCounter)
        for (const double f_Hz : support::geometric(1.0, 1e9, 1.3)) {
            const auto z = conductor.internal_impedance_ohm_per_m(f_Hz);
            EXPECT_GE(z.real(), before) << static_cast<int>(form) << " " << f_Hz;
            EXPECT_GT(z.imag(), 0.0) << static_cast<int>(form) << " " << f_Hz;
            before = z.real() * (1 - 1e-9);
        }
    }
}

// A thin skin: resistance and reactance alike, and as the root of the frequency.
TEST(Conductor, HasAThinSkinAtHighFrequency) {
    for (const Form form : all_forms) {
        const Conductor conductor(spec_of(form));
        const auto z = conductor.internal_impedance(units::megahertz(100)).value();
        EXPECT_NEAR(z.imag() / z.real(), 1.0, 0.02) << static_cast<int>(form);
        const auto four = conductor.internal_impedance(units::megahertz(400)).value();
        EXPECT_NEAR(four.real() / z.real(), 2.0, 0.02) << static_cast<int>(form);
        EXPECT_NEAR(conductor.radius_over_skin_depth(100e6) *
                        conductor.skin_depth(units::megahertz(100)).value(),
                    conductor.equivalent_radius().value(), 1e-15);
    }
}

// Plumbing tube of 85 % with copies up to 93 % (the interval in metals.cpp): resistance down to sqrt(85/93) =
// 0.956.
TEST(Conductor, IntervalsFollowTheirCauses) {
    const auto f = units::megahertz(14);
    const auto plain = Conductor(spec_of(Form::wire)).resistance_factor_range(f);
    EXPECT_EQ(plain.low, 1.0);
    EXPECT_EQ(plain.high, 1.0);
    const auto plumbing = Conductor(spec_of(Form::tube, "plumbing copper")).resistance_factor_range(f);
    EXPECT_NEAR(plumbing.low, std::sqrt(0.85 / 0.93), 1e-3);
    EXPECT_EQ(plumbing.high, 1.0);
    const auto braid = Conductor(spec_of(Form::braid)).resistance_factor_range(f);
    EXPECT_NEAR(braid.low, 1.0 / 1.5, 1e-12);  // no excess
    EXPECT_NEAR(braid.high, 2.0 / 1.5, 1e-12); // twice the excess
    const auto strip = Conductor(spec_of(Form::strip)).resistance_factor_range(f);
    EXPECT_LT(strip.low, 1.0);
    EXPECT_GT(strip.high, 1.0);
}

TEST(Conductor, SaysWhereBraidAndStrandsAreNotEstablished) {
    EXPECT_TRUE(Conductor(spec_of(Form::braid)).notices(units::kilohertz(100)).has("braid_below_range"));
    EXPECT_TRUE(Conductor(spec_of(Form::stranded)).notices(units::hertz(0)).has("strands_below_range"));
    for (const Form form : all_forms) {
        EXPECT_TRUE(Conductor(spec_of(form)).notices(units::kilohertz(500)).empty());
    }
    EXPECT_TRUE(Conductor(spec_of(Form::tube)).notices(units::hertz(10)).empty());
}

TEST(Conductor, RefusesWhatNoConductorIs) {
    const auto refused = [](Form form, auto change, const std::string& field) {
        ConductorSpec spec = spec_of(form);
        change(spec);
        try {
            const Conductor conductor(spec);
            ADD_FAILURE() << field << " accepted";
        } catch (const base::InputError& error) {
            EXPECT_EQ(error.where(), field);
        }
    };
    const double nan = std::numeric_limits<double>::quiet_NaN();
    refused(
        Form::wire, [](ConductorSpec& s) { s.diameter = millimetres(0); }, "conductor.diameter");
    refused(
        Form::wire, [nan](ConductorSpec& s) { s.diameter = millimetres(nan); }, "conductor.diameter");
    refused(
        Form::tube, [](ConductorSpec& s) { s.wall = millimetres(5.1); }, "conductor.wall");
    refused(
        Form::strip, [](ConductorSpec& s) { s.width = millimetres(2000); }, "conductor.width");
    refused(
        Form::strip, [](ConductorSpec& s) { s.thickness = millimetres(0.003); }, "conductor.thickness");
    refused(
        Form::braid, [](ConductorSpec& s) { s.factor = 0.9; }, "conductor.braid_factor");
    refused(
        Form::stranded, [](ConductorSpec& s) { s.factor = 25; }, "conductor.stranded_factor");
    refused(
        Form::wire, [](ConductorSpec& s) { s.conductivity = units::siemens_per_metre(0); },
        "conductor.metal.conductivity");
    refused(
        Form::wire, [](ConductorSpec& s) { s.temperature_coefficient = units::per_kelvin(0.1); },
        "conductor.metal.temperature_coefficient");
    refused(
        Form::wire, [](ConductorSpec& s) { s.temperature = units::degrees_celsius(400); },
        "conductor.temperature");
    EXPECT_THROW((void)Conductor(spec_of(Form::wire)).internal_impedance(units::hertz(-1)),
                 base::ProgramError);
}

TEST(Joints, AddUp) {
    EXPECT_NEAR(joints_resistance({{2, units::ohms(1e-3)}, {3, units::ohms(0.5e-3)}}).value(), 3.5e-3, 1e-15);
    EXPECT_EQ(joints_resistance({}).value(), 0.0);
    EXPECT_THROW((void)joints_resistance({{-1, units::ohms(1e-3)}}), base::InputError);
    try {
        (void)joints_resistance({{1, units::ohms(0)}, {1, units::ohms(-1)}});
        ADD_FAILURE();
    } catch (const base::InputError& error) {
        EXPECT_EQ(error.where(), "joints[1].resistance");
    }
}

} // namespace loopwright::conductor
