// Temperature rise: a textbook example, limits and monotony.
#include "base/error.hpp"
#include "loop/heating.hpp"
#include "loop/loop_model.hpp"

#include <cmath>
#include <gtest/gtest.h>
#include <numbers>

namespace loopwright::loop {
namespace {

HotBody pipe() {
    return {units::metres(0.1), units::metres(1), 0.85, {0.85, 0.85}};
}

} // namespace

// F. P. Incropera and D. P. DeWitt, Fundamentals of Heat and Mass Transfer, example on a horizontal steam
// pipe (from memory, its arithmetic worked again): 0.1 m diameter, surface 165 degC, air and walls 23 degC,
// emissivity 0.85: Ra 5.07e6, Nu 23.3, 325 W/m by convection and 441 W/m by radiation. Their air table is
// some 2 % denser than the gas law.
TEST(Heating, TextbookPipe) {
    const StillAir air{units::metres(0), units::degrees_celsius(23)};
    const GivenOff off = given_off(pipe(), air, 142, 0.85);
    EXPECT_NEAR(off.rayleigh / 5.07e6, 1, 0.06);
    EXPECT_NEAR(off.convection.value() / 325, 1, 0.03);
    EXPECT_NEAR(off.radiation.value() / 441, 1, 0.005);
    const Heating back = heating(units::watts(766), pipe(), air);
    ASSERT_TRUE(back.rise_K || back.notices.has("heating_beyond_range"));
    EXPECT_FALSE(back.rise_K) << "the upper end, with 25 % less convection, lies above 150 K";
    HotBody larger = pipe();
    larger.length = units::metres(2);
    const Heating half = heating(units::watts(766), larger, air);
    ASSERT_TRUE(half.rise_K);
    // What it gives off at the rise that is found is the power that went in.
    const GivenOff balance = given_off(larger, air, *half.rise_K, 0.85);
    EXPECT_NEAR((balance.convection + balance.radiation).value(), 766, 0.01);
    EXPECT_LT(half.rise_range_K.low, *half.rise_K);
    EXPECT_GT(half.rise_range_K.high, *half.rise_K);
}

// Air that does not move: Nu tends to 0.36 as (H3) tends with Ra to 0.
TEST(Heating, SmallBodiesTendToStillAir) {
    HotBody hair{units::metres(1e-6), units::metres(1), 0, {0, 0}};
    const GivenOff off = given_off(hair, {}, 1, 0);
    const double nusselt = off.convection.value() / (std::numbers::pi * 0.0257); // 0.0257 W/mK at 294 K
    EXPECT_NEAR(nusselt, 0.36, 0.02);
    EXPECT_LT(off.rayleigh, 1e-5);
    EXPECT_TRUE(heating(units::watts(1e-2), hair, {}).notices.has("heating_outside_correlation"));
}

TEST(Heating, GrowsWithPowerAndThinAir) {
    const HotBody tube{units::millimetres(22), units::metres(3)};
    double last = 0;
    for (const double watt : {0.0, 1e-9, 0.1, 1.0, 5.0, 20.0, 100.0}) {
        const Heating now = heating(units::watts(watt), tube, {});
        ASSERT_TRUE(now.rise_K) << watt;
        EXPECT_GE(*now.rise_K, last);
        EXPECT_LE(now.rise_range_K.low, *now.rise_K);
        EXPECT_GE(now.rise_range_K.high, *now.rise_K);
        last = *now.rise_K;
    }
    const Heating low = heating(units::watts(20), tube, {units::metres(0), units::degrees_celsius(20)});
    const Heating high = heating(units::watts(20), tube, {units::metres(4000), units::degrees_celsius(20)});
    EXPECT_GT(*high.rise_K, *low.rise_K);
    EXPECT_FALSE(heating(units::watts(1e5), tube, {}).rise_K.has_value());
    EXPECT_THROW((void)heating(units::watts(-1), tube, {}), base::ProgramError);
}

TEST(Heating, OfALoopFollowsItsLosses) {
    design::Design design;
    design.capacitor.loss.q = 1000;
    design.station.power = units::watts(100);
    const auto model = make_model(design, Model::closed_form);
    const OperatingPoint point = model->at(units::megahertz(7.1), units::watts(100), 2);
    ASSERT_TRUE(point.resonance);
    const LoopHeating whole = heating(design, point, 1);
    const LoopHeating half = heating(design, point, 0.5);
    const Resonance& r = *point.resonance;
    // The parts of the power: conductor and joints over the total resistance.
    EXPECT_NEAR(whole.conductor_average.value(),
                100 * ((r.resistance.conductor + r.resistance.joints) / r.resistance.total()).value(), 1e-6);
    EXPECT_NEAR(whole.capacitor_average.value(),
                100 * (r.resistance.capacitor / r.resistance.total()).value(), 1e-6);
    EXPECT_NEAR(half.conductor_average.value(), whole.conductor_average.value() / 2, 1e-9);
    ASSERT_TRUE(whole.conductor.rise_K && half.conductor.rise_K);
    EXPECT_GT(*whole.conductor.rise_K, *half.conductor.rise_K);
    EXPECT_GT(*whole.conductor.rise_K, 1);
    EXPECT_TRUE(half.capacitor.notices.has("capacitor_body_assumed"));
    OperatingPoint nothing = point;
    nothing.resonance.reset();
    EXPECT_FALSE(heating(design, nothing, 1).conductor.rise_K.has_value());
}

} // namespace loopwright::loop
