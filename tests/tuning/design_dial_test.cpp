// What the calibration of a design starts from, and what two points do to it.
#include "tuning/design_dial.hpp"

#include "design/made.hpp"
#include "tuning/calibration_report.hpp"

#include <cmath>
#include <gtest/gtest.h>

namespace loopwright::tuning {
namespace {

using units::picofarads;

/// Readings of 0 to 180 degrees (invented).
design::Design with_dial() {
    design::Design design;
    design.station.bands = {"40m", "30m", "20m", "17m"};
    design.capacitor.maximum = picofarads(400);
    design.capacitor.loss.q = 1000;
    design.capacitor.dial = design::Dial{};
    return design;
}

HardwarePrior prior_for(const design::Design& design) {
    return hardware_of(design, design_curve(with_dial())).prior;
}

double dial_width(const design::Design& design) {
    const CalibrationReport report = calibration_report(design);
    double sum = 0;
    for (const CalibrationRow& row : report.rows) {
        sum += (row.calibrated->range.high - row.calibrated->range.low) /
               static_cast<double>(report.rows.size());
    }
    return sum;
}

design::Design measured_at(std::initializer_list<double> megahertz, double off) {
    design::Design design = with_dial();
    const CalibratedDial file = calibrated_dial(design);
    design.calibration = design::Calibration{};
    for (const double f : megahertz) {
        design.calibration->points.push_back(
            {file.predicted(units::megahertz(f))->reading + off, units::megahertz(f)});
    }
    return design;
}

// Half the finest step and half the backlash as two independent errors, over 180 degrees: by hand
// sqrt((1/6)^2 + 0.5^2)/2/180 = 1.46402e-3; never below 1/2000.
TEST(DesignDial, StepAndBacklashAreTheErrorOfAReading) {
    design::Design design = with_dial();
    design.capacitor.dial->hand_step = 1;
    design.capacitor.dial->reduction = 6;
    design.capacitor.dial->backlash = 0.5;
    EXPECT_NEAR(prior_for(design).reading_error, 1.46402e-3, 1e-8);
    design.capacitor.dial->hand_step = 0.01;
    design.capacitor.dial->backlash = 0;
    EXPECT_NEAR(prior_for(design).reading_error, 0.0005, 1e-12);
}

TEST(DesignDial, TheFileDecidesHowFarHardwareMayStray) {
    design::Design design = with_dial();
    EXPECT_NEAR(prior_for(design).stray.value(), 3e-12, 1e-18);
    EXPECT_NEAR(prior_for(design).capacitor, 0.03, 1e-12);
    EXPECT_NEAR(prior_for(design).law, 0.01, 1e-12);
    design.capacitor.stray = picofarads(12);
    EXPECT_NEAR(prior_for(design).stray.value(), 4e-12, 1e-18);
    design.capacitor.dial->law = design::DialLaw::table;
    design.capacitor.dial->table = {{0, picofarads(12)}, {180, picofarads(400)}};
    EXPECT_NEAR(prior_for(design).law, 0.005, 1e-12);
    design.capacitor.dial = design::Dial{};
    design.capacitor.made = design::MadeCapacitor{};
    design::follow_made(design.capacitor, true, true);
    EXPECT_NEAR(prior_for(design).capacitor, 0.10, 1e-12);
}

// Of 7.0 to 7.2 MHz in region 1, and a tenth to either side: 6.37 to 7.91 MHz.
TEST(DesignDial, AFixedCapacitorIsInUseOnItsBandsAndNearThem) {
    design::Design design = with_dial();
    design.capacitor.added.resize(2);
    design.capacitor.added[0].bands = {"40m"};
    const Hardware hardware = hardware_of(design, design_curve(with_dial()));
    ASSERT_EQ(hardware.fixed.size(), 2U);
    for (const auto& [megahertz, there] :
         {std::pair{7.1, true}, {6.4, true}, {7.9, true}, {6.3, false}, {8.0, false}, {10.12, false}}) {
        EXPECT_EQ(hardware.fixed[0].in_use(units::megahertz(megahertz)), there) << megahertz;
    }
    EXPECT_FALSE(hardware.fixed[1].in_use) << "always";
}

TEST(DesignDial, TwoPointsAlreadyHelp) {
    const double none = dial_width(with_dial());
    const double one = dial_width(measured_at({7.1}, 3));
    const double two = dial_width(measured_at({7.1, 14.2}, 3));
    EXPECT_LT(one, none);
    EXPECT_LT(two, one);
    EXPECT_LT(two, none / 3);
    design::Design loose = measured_at({7.1, 14.2}, 3);
    loose.capacitor.dial->backlash = 3;
    EXPECT_GT(dial_width(loose), 1.5 * two) << "what the drive loses is in every figure";
}

} // namespace
} // namespace loopwright::tuning
