#include "base/error.hpp"
#include "loop/loop_model.hpp"
#include "support/cases.hpp"

#include <gtest/gtest.h>

namespace loopwright::loop {
namespace {

design::Design tube_circle(const support::Case& c) {
    design::Design d;
    d.loop.size = units::metres(2 * c.input("radius"));
    d.loop.gap = units::metres(c.input("gap_width"));
    d.conductor.diameter = units::metres(c.input("conductor.od"));
    d.conductor.wall = units::metres(c.input("conductor.wall"));
    d.conductor.metal.name = "";
    d.conductor.metal.conductivity = units::siemens_per_metre(c.input("conductor.sigma"));
    d.capacitor.loss.q = 1e12; // the reference has a lossless capacitor
    return d;
}

void expect_relative(double value, double wanted, double tolerance, const std::string& what) {
    EXPECT_NEAR(value / wanted - 1, 0, tolerance) << what << ": " << value << " against " << wanted;
}

} // namespace

// Reference: independent Fourier series solution of the tuned circular loop (independent_cases.json,
// fullwave-01 to -09). Its resistances are referred to the capacitor's current. Limits: C its stated
// uncertainty + 1 % + 0.5 pF, resistance 1.5 % up to 0.15 wavelengths and 2 % beyond.
TEST(ClosedForm, AgreesWithTheSeriesTheoryOfCircularLoops) {
    int compared = 0;
    for (const support::Case& c : support::independent_cases("fullwave")) {
        if (!c.has_output("R_total_at_capacitor")) {
            continue;
        }
        ++compared;
        const auto model = make_model(tube_circle(c), Model::closed_form);
        const OperatingPoint point =
            model->at(units::hertz(c.input("frequency")), units::watts(c.input("power")), 2.0);
        ASSERT_TRUE(point.resonance) << c.id;
        const Resonance& r = *point.resonance;
        const double ratio = c.output("I_cap_rms") / c.output("I_opposite_rms");
        const double tolerance = point.perimeter_in_wavelengths <= 0.15 ? 0.015 : 0.02;
        EXPECT_NEAR(r.tuning_capacitance.value(), c.output("C"), 0.01 * c.output("C") + 0.5e-12) << c.id;
        expect_relative(r.resistance.total().value(), c.output("R_total_at_capacitor") * ratio * ratio,
                        tolerance, c.id + " R");
        expect_relative(r.efficiency, c.output("efficiency"), 0.003, c.id + " efficiency");
        expect_relative(r.capacitor_voltage_rms.value(), c.output("V_cap_rms"), tolerance, c.id + " V");
        expect_relative(r.loop_current_rms / r.capacitor_current_rms, 1 / ratio, tolerance, c.id + " I");
    }
    EXPECT_EQ(compared, 9);
}

TEST(ClosedForm, RefusesWhatIsOutOfRange) {
    const auto model = make_model({}, Model::closed_form);
    EXPECT_THROW((void)model->at(units::hertz(9e3), units::watts(5), 2), base::InputError);
    EXPECT_THROW((void)model->at(units::megahertz(7), units::watts(0), 2), base::InputError);
    EXPECT_THROW((void)model->at(units::megahertz(7), units::watts(5), 1), base::InputError);
    EXPECT_THROW((void)make_model({}, Model::full_wave), base::InputError);
}

TEST(ClosedForm, SaysNotEstablishedBeyondItsRange) {
    const auto model = make_model({}, Model::closed_form);
    const OperatingPoint point = model->at(units::megahertz(50), units::watts(5), 2);
    EXPECT_FALSE(point.resonance);
    EXPECT_TRUE(point.notices.has("perimeter_beyond_range"));
    EXPECT_TRUE(point.notices.has("free_space_only"));
}

} // namespace loopwright::loop
