// The calibration: monotone for points of any kind, mistaken points shown, the next point does what it was
// said to do, hardware found again.
#include "tuning/calibration.hpp"

#include "base/error.hpp"
#include "tuning/made_hardware.hpp"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <cmath>

namespace loopwright::tuning {
namespace {

using testing::HasSubstr;

std::vector<units::Frequency> some_frequencies(int count) {
    std::vector<units::Frequency> frequencies;
    frequencies.reserve(static_cast<std::size_t>(count));
    for (int i = 0; i < count; ++i) {
        frequencies.push_back(
            units::hertz(lowest_Hz * std::pow(highest_Hz / lowest_Hz, static_cast<double>(i) / (count - 1))));
    }
    return frequencies;
}

TEST(Calibration, WithoutPointsTheModelWithItsInterval) {
    const auto dial = calibrate(made_file(), {});
    for (const units::Frequency& f : some_frequencies(7)) {
        const auto figure = dial.at(f);
        ASSERT_TRUE(figure);
        EXPECT_NEAR(figure->reading, Truth().reading(f.value()), 1e-9);
        EXPECT_EQ(figure->reading, dial.predicted(f)->reading);
        EXPECT_LT(figure->range.low, figure->reading);
        EXPECT_GT(figure->range.high, figure->reading);
        EXPECT_LT(figure->frequency_range.low, f);
        EXPECT_GT(figure->frequency_range.high, f);
        EXPECT_TRUE(figure->within_stops);
    }
    EXPECT_FALSE(dial.at(units::megahertz(7.0))->within_stops);
    EXPECT_TRUE(dial.notices().has("not_calibrated"));
}

// Points that no hardware gives, and too many of them: the dial still rises all along, and reading to
// frequency to reading comes back.
TEST(Calibration, IsMonotoneForPointsOfAnyKind) {
    std::mt19937_64 random(4711);
    std::uniform_real_distribution<double> anywhere(-50, 250);
    for (int trial = 0; trial < 60; ++trial) {
        std::vector<design::CalibrationPoint> points;
        for (int i = 0; i <= trial % 12; ++i) {
            points.push_back(point_at(anywhere(random), frequency_between(lowest_Hz, highest_Hz, random)));
        }
        const auto dial =
            calibrate(made_file(trial % 2 == 0 ? MadeLaw::capacitance : MadeLaw::frequency), points);
        double last = 1e9;
        for (const units::Frequency& f : some_frequencies(40)) {
            const auto figure = dial.at(f);
            ASSERT_TRUE(figure);
            EXPECT_LT(figure->reading, last) << "trial " << trial << " at " << f.value();
            EXPECT_LE(figure->range.low, figure->reading);
            EXPECT_GE(figure->range.high, figure->reading);
            last = figure->reading;
            const auto back = dial.frequency_at(figure->reading, {units::megahertz(6), units::megahertz(25)});
            ASSERT_TRUE(back);
            EXPECT_NEAR(back->value(), f.value(), 1e-6 * f.value());
        }
        EXPECT_GE(2 * dial.used_points() + 1, points.size()) << "at least half stay in";
    }
}

TEST(Calibration, ShowsAMistakenPointWithReason) {
    Truth truth;
    truth.stray_F = 6e-12;
    truth.noise = 0.001;
    std::mt19937_64 random(99);
    std::vector<design::CalibrationPoint> points;
    for (const units::Frequency& f : some_frequencies(6)) {
        points.push_back(measured(truth, f.value(), random));
    }
    points[2].reading += 12;
    const auto dial = calibrate(made_file(), points);
    for (std::size_t i = 0; i < points.size(); ++i) {
        EXPECT_EQ(dial.points()[i].used, i != 2);
        EXPECT_EQ(dial.points()[i].wrong > 0.5, i == 2);
    }
    const JudgedPoint& out = dial.points()[2];
    EXPECT_THAT(out.reason, testing::StartsWith("left out: reads "));
    EXPECT_THAT(out.reason, HasSubstr("from what the other five say"));
    EXPECT_GT(out.times_scatter, 4);
    EXPECT_NEAR(out.expected_reading, points[2].reading - 12, 2);
    // 12 degrees too far toward more capacitance: what was measured lies above what the others give for it.
    const double f = points[2].frequency.value.value();
    EXPECT_NEAR(out.off.value(), -12 / ((truth.reading(f * 1.001) - truth.reading(f * 0.999)) / (0.002 * f)),
                0.2 * std::abs(out.off.value()));
    EXPECT_TRUE(dial.notices().has("calibration_points_left_out"));
}

TEST(Calibration, SaysThatAReadingLiesBeyondTheStops) {
    Truth truth;
    std::mt19937_64 random(5);
    std::vector<design::CalibrationPoint> points;
    for (const units::Frequency& f : some_frequencies(5)) {
        points.push_back(measured(truth, f.value(), random));
    }
    const auto said = [&] {
        const CalibratedDial dial = calibrate(made_file(), points);
        std::vector<bool> each;
        for (const JudgedPoint& point : dial.points()) {
            each.push_back(point.reason.find("beyond the dial's stops") != std::string::npos);
        }
        return each;
    };
    EXPECT_THAT(said(), testing::Each(false));
    points[1].reading = 200; // of a dial from 0 to 180
    points[3].reading = -3;
    EXPECT_THAT(said(), testing::ElementsAre(false, true, false, true, false));
}

// Between a point that counts and one that is left out there are those of which nobody can tell: they are
// used for less, and said to be so.
TEST(Calibration, SaysWhichPointItDoubts) {
    Truth truth;
    truth.stray_F = 6e-12;
    truth.noise = 0.001;
    int doubted = 0;
    for (int tenths = 0; tenths <= 150; tenths += 5) {
        std::mt19937_64 random(7);
        std::vector<design::CalibrationPoint> points;
        for (const units::Frequency& f : some_frequencies(4)) {
            points.push_back(measured(truth, f.value(), random));
        }
        points[1].reading += 0.1 * tenths;
        const auto dial = calibrate(made_file(), points);
        for (const JudgedPoint& point : dial.points()) {
            EXPECT_EQ(point.doubtful(), point.used && point.wrong >= 0.2) << tenths;
            EXPECT_EQ(point.reason.find("doubtful") == 0, point.doubtful()) << point.reason;
            EXPECT_EQ(point.reason.find("left out") == 0, !point.used) << point.reason;
        }
        doubted += dial.points()[1].doubtful() ? 1 : 0;
        if (tenths == 0) {
            EXPECT_FALSE(dial.points()[1].doubtful());
        }
    }
    EXPECT_GT(doubted, 0);
}

TEST(Calibration, FindsStrayAndInductanceWhereManyPointsTellThem) {
    Truth truth;
    truth.stray_F = 9e-12;
    truth.inductance = 1.03;
    truth.noise = 0.0005;
    Hardware file = made_file();
    file.prior.law = 1e-4; // a capacitor known to follow its law,
    file.prior.reading_error = 1e-3;
    file.prior.capacitor = 1e-4; // of known size,
    file.prior.offset = 1e-4;    // with its pointer right: then the two can be told apart
    std::mt19937_64 random(5);
    std::vector<design::CalibrationPoint> points;
    for (const units::Frequency& f : some_frequencies(40)) {
        points.push_back(measured(truth, f.value(), random));
    }
    const auto dial = calibrate(file, points);
    for (const FittedPart& part : dial.parts()) {
        if (part.kind == PartKind::stray) {
            EXPECT_NEAR(part.value, 9e-12, 0.4e-12);
            EXPECT_TRUE(part.told);
            EXPECT_LT(part.range.low, 9e-12);
            EXPECT_GT(part.range.high, 9e-12);
        }
        if (part.kind == PartKind::inductance) {
            EXPECT_NEAR(part.value, 1.03, 0.006);
            EXPECT_TRUE(part.told);
        }
    }
    const auto two = calibrate(file, {points[3], points[4]});
    for (const FittedPart& part : two.parts()) {
        if (part.kind == PartKind::inductance) {
            EXPECT_FALSE(part.told) << "two points side by side do not tell stray from inductance";
        }
    }
}

// A capacitor of 100 pF in parallel below 8 MHz that really has 106 pF.
TEST(Calibration, FindsAFixedCapacitorThatIsPluggedInOnItsBandOnly) {
    Hardware file = made_file();
    FixedCapacitor fixed;
    fixed.capacitance = units::picofarads(100);
    fixed.in_use = [](units::Frequency f) { return f < units::megahertz(8); };
    file.fixed = {fixed};
    std::vector<design::CalibrationPoint> points;
    for (const double f : {5.6e6, 5.8e6, 6.0e6, 9e6, 12e6, 15e6, 19e6}) {
        const double beside_F = f < 8e6 ? 106e-12 : 0;
        points.push_back(
            point_at(made_travel * made_position(MadeLaw::capacitance, needed_F(f) - 4e-12 - beside_F), f));
    }
    const auto dial = calibrate(file, points);
    EXPECT_EQ(dial.used_points(), points.size());
    for (const FittedPart& part : dial.parts()) {
        if (part.kind == PartKind::fixed) {
            EXPECT_NEAR(part.value, 106e-12, 1.5e-12);
            EXPECT_TRUE(part.told);
        }
    }
    EXPECT_NEAR(dial.at(units::megahertz(5.9))->reading,
                made_travel * made_position(MadeLaw::capacitance, needed_F(5.9e6) - 110e-12), 0.5);
}

// The width that the next point was said to leave, against the mean over what it may read.
TEST(Calibration, TheNextPointNarrowsAsItWasSaid) {
    std::mt19937_64 random(31);
    Truth truth;
    truth.stray_F = 5.5e-12;
    truth.noise = 0.003;
    std::vector<design::CalibrationPoint> points;
    for (const double f : {8e6, 11e6, 15e6}) {
        points.push_back(measured(truth, f, random));
    }
    std::vector<units::Frequency> wanted; // all between the stops
    for (const double f : {8e6, 9e6, 10e6, 11.5e6, 13e6, 14.5e6, 16e6, 17.5e6, 19e6}) {
        wanted.push_back(units::hertz(f));
    }
    const auto before = calibrate(made_file(), points);
    const auto ranked = before.next_points(wanted, wanted);
    ASSERT_EQ(ranked.size(), wanted.size());
    EXPECT_LT(ranked.front().width_after, ranked.back().width_after);
    EXPECT_EQ(before.plan(wanted, wanted, 1).front().frequency, ranked.front().frequency);
    const auto two = before.plan(wanted, wanted, 2);
    EXPECT_LT(two[1].width_after, two[0].width_after);
    const auto mean_width = [&](const NextPoint& next) {
        double sum = 0;
        constexpr int draws = 60;
        for (int i = 0; i < draws; ++i) {
            auto more = points;
            more.push_back(measured(truth, next.frequency.value(), random));
            const auto after = calibrate(made_file(), more);
            for (const units::Frequency& f : wanted) {
                const auto figure = after.at(f);
                sum += (figure->range.high - figure->range.low) / static_cast<double>(wanted.size()) / draws;
            }
        }
        return sum;
    };
    for (const NextPoint& next : {ranked.front(), ranked.back()}) {
        EXPECT_NEAR(mean_width(next) / next.width_after, 1, 0.25) << next.frequency.value();
    }
    EXPECT_LT(mean_width(ranked.front()), mean_width(ranked.back()));
}

TEST(Calibration, DoubtsTheFileWhereTheLawIsAnother) {
    Truth truth;
    truth.law = MadeLaw::frequency;
    truth.noise = 0.002;
    std::mt19937_64 random(8);
    std::vector<design::CalibrationPoint> points;
    for (const units::Frequency& f : some_frequencies(8)) {
        points.push_back(measured(truth, f.value(), random));
    }
    EXPECT_TRUE(calibrate(made_file(), points).notices().has("calibration_other_hardware"));
    truth.law = MadeLaw::capacitance;
    points.clear();
    for (const units::Frequency& f : some_frequencies(8)) {
        points.push_back(measured(truth, f.value(), random));
    }
    EXPECT_FALSE(calibrate(made_file(), points).notices().has("calibration_other_hardware"));
}

TEST(Calibration, SaysWhatItCannotUse) {
    EXPECT_THROW(static_cast<void>(calibrate(made_file(), {point_at(std::nan(""), 8e6)})), base::InputError);
    EXPECT_THROW(static_cast<void>(calibrate(made_file(), {point_at(1, 0)})), base::InputError);
    EXPECT_THROW(static_cast<void>(
                     calibrate(made_file(), std::vector<design::CalibrationPoint>(1001, point_at(60, 9e6)))),
                 base::InputError);
    Hardware narrow = made_file();
    narrow.needed = [](units::Frequency f) {
        return f > units::megahertz(30) ? std::nullopt : std::optional(units::farads(needed_F(f.value())));
    };
    const auto partly = calibrate(narrow, {point_at(60, 40e6), point_at(90, 9.5e6)});
    EXPECT_TRUE(partly.points()[0].outside_model);
    EXPECT_FALSE(partly.points()[0].used);
    EXPECT_TRUE(partly.notices().has("calibration_points_unanswered"));
    EXPECT_EQ(partly.used_points(), 1U);
}

} // namespace
} // namespace loopwright::tuning
