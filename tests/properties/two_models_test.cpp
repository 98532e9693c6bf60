// Two models made apart answer the same question in free space: the closed form (three currents, power
// series) and the full wave (method of moments). They may differ by what each leaves out.
#include "loop/closed_form.hpp"
#include "support/compared.hpp"
#include "units/constants.hpp"

#include <cmath>
#include <gtest/gtest.h>
#include <string>

namespace loopwright {
namespace {

using loop::Model;
using loop::Resonance;

struct Trial {
    const char* name;
    design::Outline outline;
    int sides, turns;
    double size_m, diameter_mm, spacing_mm, tilt_deg, wavelengths;
};

design::Design design_of(const Trial& t) {
    design::Design d;
    d.loop.outline = t.outline;
    d.loop.sides = t.sides;
    d.loop.size_is = t.outline == design::Outline::polygon ? design::SizeMeaning::across_flats
                                                           : design::SizeMeaning::diameter;
    d.loop.size = units::metres(t.size_m);
    d.loop.width = units::metres(1.4 * t.size_m);
    d.loop.height = units::metres(t.size_m);
    d.loop.turns = t.turns;
    d.loop.turn_spacing = units::millimetres(t.spacing_mm);
    d.conductor.diameter = units::millimetres(t.diameter_mm);
    d.capacitor.loss.q = 1000;
    d.joints = {{2, units::ohms(0.002)}};
    d.site.tilt = units::degrees(t.tilt_deg);
    return d;
}

class TwoModels : public ::testing::TestWithParam<Trial> {};

} // namespace

TEST_P(TwoModels, AgreeInFreeSpace) {
    const Trial& t = GetParam();
    const design::Design d = design_of(t);
    const auto closed = loop::make_model(d, Model::closed_form);
    const auto full = loop::make_model(d, Model::full_wave);
    const double length = closed->at(units::megahertz(1), units::watts(1), 2).perimeter_in_wavelengths *
                          units::constants::speed_of_light_m_s / 1e6;
    const auto frequency = units::hertz(t.wavelengths * units::constants::speed_of_light_m_s / length);
    const auto a = closed->at(frequency, units::watts(10), 2);
    const auto b = full->at(frequency, units::watts(10), 2);
    ASSERT_TRUE(a.resonance && b.resonance) << t.name;
    const Resonance& x = *a.resonance;
    const Resonance& y = *b.resonance;
    const support::Compared table("two-models", "Closed form (ours) and full wave (theirs) in free space");
    const std::string what =
        std::string(t.name) + ", " + std::to_string(t.wavelengths).substr(0, 4) + " wavelengths";
    EXPECT_NEAR(a.perimeter_in_wavelengths, b.perimeter_in_wavelengths, 1e-9);
    // Several turns: the closed form lets the current crowd between turns, which takes up to 1 % of L.
    const bool several = t.turns > 1;
    table.share(what, "L", x.inductance.value(), y.inductance.value(), several ? 0.012 : 0.0015);
    table.amount(what, "C [pF]", x.tuning_capacitance.value() * 1e12, y.tuning_capacitance.value() * 1e12,
                 (several ? 0.012 : 0.0015) * y.tuning_capacitance.value() * 1e12 + 0.05);
    const double error =
        loop::closed_form_relative_error(a.perimeter_in_wavelengths, t.turns) + (several ? 0.006 : 0.0);
    table.share(what, "radiation", x.resistance.radiation.value(), y.resistance.radiation.value(), error);
    table.share(what, "conductor", x.resistance.conductor.value(), y.resistance.conductor.value(), error);
    table.share(what, "joints", x.resistance.joints.value(), y.resistance.joints.value(), error);
    table.share(what, "total", x.resistance.total().value(), y.resistance.total().value(), error + 0.001);
    table.share(what, "Q", x.q_unloaded, y.q_unloaded, error);
    table.share(what, "bandwidth", x.bandwidth_vswr.value(), y.bandwidth_vswr.value(), error);
    table.share(what, "voltage", x.capacitor_voltage_peak.value(), y.capacitor_voltage_peak.value(), error);
    table.amount(what, "gain [dBi]", x.gain_max->value, y.gain_max->value, 0.02);
    table.amount(what, "gain at 15 degrees [dBi]", x.gain_low_angle->value, y.gain_low_angle->value, 0.03);
}

INSTANTIATE_TEST_SUITE_P(
    Loops, TwoModels,
    ::testing::Values(Trial{"backpack", design::Outline::circle, 8, 1, 0.6, 10, 30, 0, 0.07},
                      Trial{"circle", design::Outline::circle, 8, 1, 1.0, 22, 30, 30, 0.20},
                      Trial{"thin circle", design::Outline::circle, 8, 1, 1.7, 4, 30, 0, 0.37},
                      Trial{"square", design::Outline::polygon, 4, 1, 1.1, 15, 30, 0, 0.15},
                      Trial{"octagon", design::Outline::polygon, 8, 1, 0.9, 22, 30, 75, 0.28},
                      Trial{"rectangle", design::Outline::rectangle, 4, 1, 0.8, 12, 30, 10, 0.33},
                      Trial{"two turns", design::Outline::polygon, 8, 2, 0.9, 8, 60, 0, 0.12},
                      Trial{"three turns", design::Outline::circle, 8, 3, 0.8, 8, 30, 0, 0.10}),
    [](const auto& one) {
        std::string name = one.param.name;
        for (char& c : name) {
            c = c == ' ' ? '_' : c;
        }
        return name;
    });

namespace {

/// What a ground does to the resistance of a small loop high above it. Image theory: of the far field at
/// the loop itself comes back, for a perfect mirror, 3/2 (sin u/u + cos u/u^2 - sin u/u^3) of the free-space
/// resistance for an upright loop (axis level), u = 2 k h, h the centre's height (here the lowest point's,
/// which gives more); two short magnetic dipoles side by side (textbook mutual resistance of short dipoles,
/// from memory). Soil gives back less. For other attitudes it is smaller still: a level loop has no field
/// straight down.
double most_of_the_ground(double frequency_Hz, double height_m) {
    const double u =
        4 * units::constants::pi * frequency_Hz / units::constants::speed_of_light_m_s * height_m;
    return 1.5 * (1 / u + 1 / (u * u) + 1 / (u * u * u));
}

struct HighTrial {
    const char* name;
    design::Outline outline;
    double size_m, diameter_mm, tilt_deg, wavelengths;
    const char* soil; ///< empty: perfect ground
};

class HighAboveGround : public ::testing::TestWithParam<HighTrial> {};

} // namespace

// The closed form knows free space only. High above ground its inductance, capacitance and conductor's loss
// have to be those of the full wave, and what leaves the wires (to sky and ground together) may differ by
// what a mirror gives back at most.
TEST_P(HighAboveGround, TheClosedFormHoldsButForWhatTheGroundGivesBack) {
    const HighTrial& t = GetParam();
    const support::Compared table("two-models",
                                  "Closed form (ours, free space) and full wave (theirs) high above ground");
    double before = 1;
    for (const double height_in_wavelengths : {0.5, 1.0, 2.0, 4.0}) {
        design::Design d = design_of({t.name, t.outline, 8, 1, t.size_m, t.diameter_mm, 30, t.tilt_deg, 0});
        const auto closed = loop::make_model(d, Model::closed_form);
        const double length = closed->at(units::megahertz(1), units::watts(1), 2).perimeter_in_wavelengths *
                              units::constants::speed_of_light_m_s / 1e6;
        const double wavelength_m = length / t.wavelengths;
        const auto frequency = units::hertz(units::constants::speed_of_light_m_s / wavelength_m);
        d.site.lowest_point = units::metres(height_in_wavelengths * wavelength_m);
        d.site.ground.kind = *t.soil == 0 ? design::GroundKind::perfect : design::GroundKind::soil;
        d.site.ground.class_name = t.soil;
        const auto a = closed->at(frequency, units::watts(10), 2);
        const auto b = loop::make_model(d, Model::full_wave)->at(frequency, units::watts(10), 2);
        ASSERT_TRUE(a.resonance && b.resonance) << t.name;
        const Resonance& x = *a.resonance;
        const Resonance& y = *b.resonance;
        const std::string what = std::string(t.name) +
                                 (*t.soil == 0 ? ", perfect ground" : ", " + std::string(t.soil)) + ", " +
                                 std::to_string(height_in_wavelengths).substr(0, 3) + " wavelengths up";
        const double error = loop::closed_form_relative_error(a.perimeter_in_wavelengths, 1);
        const double ground = most_of_the_ground(frequency.value(), d.site.lowest_point.value.value());
        const double field = y.resistance.radiation.value() + y.resistance.ground->value();
        table.share(what, "L", x.inductance.value(), y.inductance.value(), 0.0015);
        table.amount(what, "C [pF]", x.tuning_capacitance.value() * 1e12, y.tuning_capacitance.value() * 1e12,
                     0.0015 * y.tuning_capacitance.value() * 1e12 + 0.05);
        table.share(what, "conductor", x.resistance.conductor.value(), y.resistance.conductor.value(), error);
        table.share(what, "radiation, ground's part included", x.resistance.radiation.value(), field,
                    error + ground);
        const double apart = std::abs(x.resistance.radiation.value() / field - 1);
        EXPECT_LT(apart, before) << "higher up the two come together";
        before = apart;
    }
}

INSTANTIATE_TEST_SUITE_P(
    Loops, HighAboveGround,
    ::testing::Values(HighTrial{"circle", design::Outline::circle, 1.0, 22, 0, 0.15, "average ground"},
                      HighTrial{"circle", design::Outline::circle, 1.0, 22, 0, 0.15, ""},
                      HighTrial{"tilted circle", design::Outline::circle, 1.0, 22, 60, 0.25,
                                "average ground"},
                      HighTrial{"octagon", design::Outline::polygon, 0.9, 22, 0, 0.08, "sea water"},
                      HighTrial{"rectangle", design::Outline::rectangle, 0.8, 12, 0, 0.30, "average ground"}),
    [](const auto& one) { return "case_" + std::to_string(one.index); });

} // namespace loopwright
