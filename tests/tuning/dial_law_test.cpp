#include "base/error.hpp"
#include "tuning/dial_law.hpp"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <cmath>
#include <random>

namespace loopwright::tuning {
namespace {

using testing::HasSubstr;
using units::picofarads;

design::Capacitor with_law(design::DialLaw law, double least_pF = 12, double most_pF = 150) {
    design::Capacitor capacitor;
    capacitor.minimum = picofarads(least_pF);
    capacitor.maximum = picofarads(most_pF);
    capacitor.dial = design::Dial();
    capacitor.dial->law = law;
    return capacitor;
}

double picofarad(units::Capacitance c) {
    return c.value() * 1e12;
}

std::string message(const auto& action) {
    try {
        action();
    } catch (const base::InputError& error) {
        return error.what();
    }
    return "accepted";
}

} // namespace

// Closed forms of the three laws, worked by hand: 16 pF to 144 pF over 0 to 180 degrees (roots 4 and 12).
TEST(DialCurve, FollowsTheThreeLaws) {
    const DialCurve capacitance(with_law(design::DialLaw::capacitance, 16, 144));
    EXPECT_NEAR(picofarad(capacitance.capacitance_at(90)), 80, 1e-9);
    EXPECT_NEAR(picofarad(capacitance.slope_at(90)), 128.0 / 180, 1e-12);
    // Halfway the root of C is the mean of 4 and 12; the wavelength is proportional to it.
    const DialCurve wavelength(with_law(design::DialLaw::wavelength, 16, 144));
    EXPECT_NEAR(picofarad(wavelength.capacitance_at(90)), 64, 1e-9);
    EXPECT_NEAR(picofarad(wavelength.slope_at(90)), 2 * 8 * 8.0 / 180, 1e-9);
    // Halfway 1/root is the mean of 1/4 and 1/12, 1/6; the frequency is proportional to it.
    const DialCurve frequency(with_law(design::DialLaw::frequency, 16, 144));
    EXPECT_NEAR(picofarad(frequency.capacitance_at(90)), 36, 1e-9);
    EXPECT_NEAR(picofarad(frequency.slope_at(90)), 2 * 216 * (1.0 / 6) / 180, 1e-9);
}

// Readings by hand for falling scales and other marks.
TEST(DialCurve, ScaleMayFallAndIsInItsOwnMarks) {
    design::Capacitor capacitor = with_law(design::DialLaw::frequency, 16, 144);
    capacitor.dial->at_minimum = 20;
    capacitor.dial->at_maximum = 0;
    capacitor.dial->scale = design::DialScale::turns;
    capacitor.dial->hand_step = 0.03;
    capacitor.dial->reduction = 6;
    capacitor.dial->backlash = 0.1;
    const DialCurve curve(capacitor);
    EXPECT_NEAR(curve.reading_at(picofarads(36)), 10, 1e-12);
    EXPECT_LT(curve.slope_at(10).value(), 0);
    EXPECT_EQ(curve.readings(), (units::Interval<double>{0, 20}));
    EXPECT_EQ(curve.at_minimum(), 20);
    EXPECT_EQ(curve.range().high, picofarads(144));
    EXPECT_NEAR(curve.finest_step(), 0.005, 1e-15);
    EXPECT_EQ(curve.backlash(), 0.1);
    EXPECT_EQ(curve.scale(), design::DialScale::turns);
}

// With any inductance and no stray, frequency or wavelength is a straight line over the reading.
TEST(DialCurve, LawsAreStraightInWhatTheyAreNamedFor) {
    const double henry = 2.7e-6;
    for (const auto law : {design::DialLaw::frequency, design::DialLaw::wavelength}) {
        const DialCurve curve(with_law(law, 9, 365));
        const auto straight = [&](double reading) {
            const double Hz = 1 / (2 * M_PI * std::sqrt(henry * curve.capacitance_at(reading).value()));
            return law == design::DialLaw::frequency ? Hz : 299792458.0 / Hz;
        };
        const double first = straight(0), step = (straight(180) - first) / 180;
        for (double reading = 0; reading <= 180; reading += 7.5) {
            EXPECT_NEAR(straight(reading), first + reading * step, 1e-11 * std::abs(first)) << reading;
        }
    }
}

TEST(DialCurve, TableGoesThroughItsEntriesAndEndsThere) {
    design::Capacitor capacitor = with_law(design::DialLaw::table);
    for (const auto& [reading, value] : {std::pair{10.0, 145.0}, {6.0, 60.0}, {2.0, 20.0}, {1.0, 13.0}}) {
        design::DialEntry entry;
        entry.reading = reading;
        entry.capacitance = picofarads(value);
        capacitor.dial->table.push_back(entry);
    }
    const DialCurve curve(capacitor);
    for (const design::DialEntry& entry : capacitor.dial->table) {
        EXPECT_NEAR(picofarad(curve.capacitance_at(entry.reading)), picofarad(entry.capacitance.value), 1e-9);
        EXPECT_NEAR(curve.reading_at(entry.capacitance.value), entry.reading, 1e-9);
    }
    EXPECT_EQ(curve.readings(), (units::Interval<double>{1, 10}));
    EXPECT_EQ(curve.range(), (units::Interval<units::Capacitance>{picofarads(13), picofarads(145)}));
    EXPECT_FALSE(curve.find_reading(picofarads(12)));
    EXPECT_FALSE(curve.find_reading(picofarads(149)));
    capacitor.dial->table.resize(2); // two entries: a straight line
    EXPECT_NEAR(picofarad(DialCurve(capacitor).capacitance_at(8)), 102.5, 1e-9);
}

TEST(DialCurve, RefusesWhatLiesBeyondTheStops) {
    const DialCurve curve(with_law(design::DialLaw::wavelength));
    EXPECT_EQ(message([&] { (void)curve.capacitance_at(181); }),
              "reading: '181' is not accepted; from 0 to 180, between the stops");
    EXPECT_THAT(message([&] { (void)curve.capacitance_at(-1); }), HasSubstr("reading: '-1'"));
    EXPECT_THAT(message([&] { (void)curve.slope_at(NAN); }), HasSubstr("reading: 'not a number'"));
    EXPECT_EQ(message([&] { (void)curve.reading_at(picofarads(151)); }),
              "capacitance: '151 pF' is not accepted; from 12 pF to 150 pF, what the dial sets");
    EXPECT_THAT(message([&] { (void)curve.reading_at(units::farads(NAN)); }), HasSubstr("not a number"));
    EXPECT_EQ(message([&] { (void)curve.capacitance_at(180 + 1e-8); }), "accepted");
    EXPECT_EQ(curve.capacitance_at(180), picofarads(150));
    EXPECT_EQ(curve.capacitance_at(0), picofarads(12));
    EXPECT_THAT(message([] { (void)DialCurve(design::Capacitor()); }), HasSubstr("capacitor.dial: 'none'"));
    design::Capacitor wrong = with_law(design::DialLaw::table);
    EXPECT_THAT(message([&] { (void)DialCurve(wrong); }), HasSubstr("capacitor.dial.table: '0 entries'"));
}

TEST(DialCurve, GoesOnStraightBeyondTheStopsForFits) {
    const DialCurve curve(with_law(design::DialLaw::frequency));
    EXPECT_NEAR(curve.continued_reading(picofarads(70)), curve.reading_at(picofarads(70)), 1e-12);
    const double per_pF = 1e-12 / curve.slope_at(180).value();
    EXPECT_NEAR(curve.continued_reading(picofarads(160)), 180 + 10 * per_pF, 1e-9);
    EXPECT_LT(curve.continued_reading(picofarads(5)), 0);
}

// Property: on randomly made dials, capacitance to reading to capacitance comes back, rises or falls all the
// way, and the slope is that of differences. Fixed seed.
TEST(DialCurve, ComesBackOnRandomDials) {
    std::mt19937 random(20260501);
    const auto in = [&](double low, double high) {
        return std::uniform_real_distribution<double>(low, high)(random);
    };
    for (int i = 0; i < 300; ++i) {
        const auto law = static_cast<design::DialLaw>(i % 4);
        design::Capacitor capacitor = with_law(law, in(1, 30), in(40, 1000));
        design::Dial& dial = *capacitor.dial;
        dial.at_minimum = in(-50, 50);
        dial.at_maximum = dial.at_minimum + (i % 8 < 4 ? 1 : -1) * in(1, 300);
        if (law == design::DialLaw::table) {
            const int entries = 2 + i % 9;
            double value = capacitor.minimum.value.value();
            const double room = (capacitor.maximum.value.value() - value) / entries;
            for (int k = 0; k < entries; ++k) {
                design::DialEntry entry;
                entry.reading = dial.at_minimum + (dial.at_maximum - dial.at_minimum) * k / (entries - 1.0);
                entry.capacitance = units::farads(value);
                value += room * in(0.1, 1);
                dial.table.push_back(entry);
            }
        }
        const DialCurve curve(capacitor);
        const double sense = dial.at_maximum > dial.at_minimum ? 1 : -1;
        const double way = curve.at_maximum() - curve.at_minimum();
        for (int k = 1; k < 20; ++k) {
            const double reading = curve.at_minimum() + way * k / 20.0;
            const auto value = curve.capacitance_at(reading);
            ASSERT_NEAR(curve.reading_at(value), reading, 1e-9 * std::abs(way)) << i;
            ASSERT_GT(sense * curve.slope_at(reading).value(), 0) << i;
            const double step = 1e-5 * way;
            const double secant =
                (curve.capacitance_at(reading + step) - curve.capacitance_at(reading - step)).value() /
                (2 * step);
            ASSERT_NEAR(curve.slope_at(reading).value(), secant, 1e-3 * std::abs(secant)) << i << ' ' << k;
        }
    }
}

} // namespace loopwright::tuning
