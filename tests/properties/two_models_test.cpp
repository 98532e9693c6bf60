// Two models made apart answer the same question in free space: the closed form (three currents, power
// series) and the full wave (method of moments). They may differ by what each leaves out.
#include "loop/closed_form.hpp"
#include "support/compared.hpp"
#include "units/constants.hpp"

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

} // namespace loopwright
