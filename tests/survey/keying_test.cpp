// The report before keying: that verdicts follow from the figures, the figures from the fields, and that
// every intermediate step can be had by itself.
#include "survey/keying.hpp"

#include "base/error.hpp"
#include "exposure/duty.hpp"
#include "loop/full_wave.hpp"
#include "units/text.hpp"

#include <algorithm>
#include <chrono>
#include <cmath>
#include <gtest/gtest.h>
#include <thread>

namespace loopwright::survey {
namespace {

using exposure::Tier;
using units::metres;

design::Design keyed_loop() {
    design::Design d;
    d.capacitor.minimum = units::picofarads(5);
    d.capacitor.maximum = units::picofarads(500);
    d.capacitor.loss.q = 1000.0;
    d.capacitor.rating.peak_voltage = units::volts(5000);
    d.site.ground.kind = design::GroundKind::soil;
    d.site.ground.class_name = "average ground";
    d.station.emission = "carrier";
    d.station.power = units::watts(10);
    d.station.bands = {"40m", "20m"};
    return d;
}

KeyingRequest nominal(design::Design d, std::vector<std::string> limits = {"icnirp_1998"}) {
    KeyingRequest request;
    request.design = std::move(d);
    request.limits = std::move(limits);
    request.intervals = false;
    return request;
}

const KeyingDistance& of(const KeyingBand& band, const std::string& limit, Tier tier) {
    const auto found = std::find_if(band.distances.begin(), band.distances.end(),
                                    [&](const auto& d) { return d.limit == limit && d.tier == tier; });
    if (found == band.distances.end()) {
        throw std::runtime_error("no distance by " + limit);
    }
    return *found;
}

TEST(Keying, DistanceIsThatOfTheSurroundings) {
    const design::Design d = keyed_loop();
    const Keying report = keying(nominal(d));
    ASSERT_TRUE(report.complete);
    ASSERT_EQ(report.bands.size(), 2U);
    const KeyingBand& band = report.bands.front();
    EXPECT_EQ(band.band, "40m");
    exposure::Surroundings around(loop::FullWave(d).solved(band.point.frequency).value(), metres(0));
    const auto limit =
        exposure::at(*exposure::find_limit("icnirp_1998"), Tier::general_public, band.point.frequency);
    const double root = std::sqrt(10.0);
    const auto expected = around.farthest({limit->electric.value() / root, limit->magnetic.value() / root});
    const KeyingDistance& got = of(band, "icnirp_1998", Tier::general_public);
    EXPECT_EQ(got.duty, 1);
    EXPECT_NEAR(got.farthest->distance.value(), expected->distance.value(), 0.004);
    EXPECT_EQ(got.farthest->cause, expected->cause);
    EXPECT_EQ(band.verdict, KeyingVerdict::within);
}

// Duty: what the limit allows to average, and nothing for the limit that holds at every instant.
TEST(Keying, AveragesOnlyWhereTheLimitDoes) {
    design::Design d = keyed_loop();
    d.station.emission = "ft8";
    const Keying report = keying(nominal(d, {"icnirp_1998", "fcc_1_1310", "icnirp_2010"}));
    const KeyingBand& band = report.bands.front();
    const auto schedule = exposure::schedule_of("ft8", exposure::usual_use("ft8"));
    EXPECT_EQ(of(band, "icnirp_1998", Tier::general_public).duty,
              exposure::worst_window_average(schedule, units::seconds(360)));
    EXPECT_EQ(of(band, "fcc_1_1310", Tier::general_public).duty,
              exposure::worst_window_average(schedule, units::seconds(1800)));
    EXPECT_EQ(of(band, "icnirp_2010", Tier::general_public).duty, 1);
    EXPECT_LT(of(band, "icnirp_1998", Tier::general_public).duty, 0.5);
    // Above 10 MHz that limit has no row.
    EXPECT_THROW((void)of(report.bands.back(), "icnirp_2010", Tier::general_public), std::runtime_error);
}

TEST(Keying, PeopleTooNearAreRefusedAndTheFixMendsIt) {
    design::Design d = keyed_loop();
    d.site.people_distance = metres(1.0);
    const KeyingBand band = keying(nominal(d)).bands.front();
    ASSERT_EQ(band.verdict, KeyingVerdict::exceeded);
    EXPECT_FALSE(band.reasons.front().fix.empty());
    const KeyingDistance& d1 = of(band, "icnirp_1998", Tier::general_public);
    ASSERT_TRUE(d1.power_for_people);
    EXPECT_LT(d1.power_for_people->value(), 10);
    design::Design farther = d, weaker = d;
    farther.site.people_distance = d1.range.high + metres(0.01);
    weaker.station.power = 0.97 * *d1.power_for_people;
    EXPECT_EQ(keying(nominal(farther)).bands.front().verdict, KeyingVerdict::within);
    EXPECT_EQ(keying(nominal(weaker)).bands.front().verdict, KeyingVerdict::within);
}

// A capacitor plugged in on 80 m alone: that band is out of reach without it, and its volts and amperes are
// told there and nowhere else. By the circuit: all volts across it, I = omega C V/sqrt(2).
TEST(Keying, PluggedCapacitorIsLoadedOnItsBandsOnly) {
    design::Design d = keyed_loop();
    d.station.bands = {"80m", "40m"};
    EXPECT_EQ(keying(nominal(d)).bands.front().verdict, KeyingVerdict::out_of_reach);
    d.capacitor.added.resize(1);
    d.capacitor.added[0].capacitance = units::picofarads(500);
    d.capacitor.added[0].peak_voltage = units::volts(6000);
    d.capacitor.added[0].q = 2000.0;
    d.capacitor.added[0].bands = {"80m"};
    const Keying report = keying(nominal(d));
    ASSERT_EQ(report.bands.size(), 2U);
    const KeyingBand &low = report.bands[0], &high = report.bands[1];
    EXPECT_NE(low.verdict, KeyingVerdict::out_of_reach);
    ASSERT_TRUE(low.load && high.load);
    ASSERT_EQ(low.load->members.size(), 2U);
    EXPECT_EQ(high.load->members.size(), 1U);
    const capacitor::MemberLoad& plug = low.load->members[1];
    EXPECT_EQ(plug.kind, capacitor::MemberKind::added);
    EXPECT_EQ(plug.voltage_peak, low.voltage_peak.high);
    const double omega = 2 * 3.141592653589793 * low.point.frequency.value();
    EXPECT_NEAR(plug.current_rms.value() / (omega * 500e-12 * plug.voltage_peak.value() / std::sqrt(2.0)), 1,
                1e-12);
    EXPECT_GT(plug.current_rms.value(), 0.1);
}

TEST(Keying, CapacitorRatingIsHeldAgainstThePeak) {
    design::Design d = keyed_loop();
    const KeyingBand band = keying(nominal(d)).bands.front();
    ASSERT_TRUE(band.usable_voltage && band.power_for_capacitor);
    EXPECT_NEAR(band.usable_voltage->value(), 5000, 1e-6);
    d.station.power = 1.02 * *band.power_for_capacitor;
    EXPECT_EQ(keying(nominal(d)).bands.front().verdict, KeyingVerdict::exceeded);
    d.station.power = 0.98 * *band.power_for_capacitor;
    d.capacitor.rating.peak_voltage = units::volts(5000);
    const KeyingBand under = keying(nominal(d)).bands.front();
    EXPECT_LE(under.voltage_peak.high, *under.usable_voltage);
    d.capacitor.rating.peak_voltage.reset();
    EXPECT_EQ(keying(nominal(d)).bands.front().verdict, KeyingVerdict::not_established);
}

// What the words advise must pass when it is done.
TEST(Keying, AdvisedPowerPasses) {
    for (const double rating_V : {900.0, 1000.0, 1100.0, 1234.0}) {
        design::Design d = keyed_loop();
        d.capacitor.rating.peak_voltage = units::volts(rating_V);
        KeyingRequest request = nominal(d);
        request.design.station.bands = {"20m"};
        request.intervals = true;
        const KeyingBand over = keying(request).bands.front();
        ASSERT_EQ(over.verdict, KeyingVerdict::exceeded);
        const std::string& fix = over.reasons.front().fix;
        const auto at = fix.find("At most ");
        ASSERT_NE(at, std::string::npos) << fix;
        const auto power = units::parse<units::Power>(fix.substr(at + 8, fix.find(',') - at - 8), "fix");
        EXPECT_GT(power.value(), 0.85 * over.power_for_capacitor->value()) << fix;
        request.design.station.power = power;
        EXPECT_EQ(keying(request).bands.front().verdict, KeyingVerdict::within) << fix;
    }
}

// Where volts and people both forbid, the power that is advised first mends both.
TEST(Keying, AdviceMendsVoltsAndPeopleTogether) {
    design::Design d = keyed_loop();
    d.station.bands = {"20m"};
    d.station.power = units::watts(50);
    d.capacitor.rating.peak_voltage = units::volts(1000);
    for (const double people_m : {1.6, 2.4}) { // people set the power, then the capacitor
        d.site.people_distance = metres(people_m);
        KeyingRequest request = nominal(d);
        request.intervals = true;
        const KeyingBand over = keying(request).bands.front();
        ASSERT_EQ(over.reasons.size(), 2U) << people_m;
        const std::string& fix = over.reasons.front().fix;
        const auto end = fix.find(" for volts and people together");
        ASSERT_EQ(fix.find("At most "), 0U) << fix;
        ASSERT_NE(end, std::string::npos) << fix;
        EXPECT_NE(fix.find("; for the volts alone: at most "), std::string::npos) << fix;
        EXPECT_EQ(greatest_power(over)->by_people, people_m < 2) << fix;
        request.design.station.power = units::parse<units::Power>(fix.substr(8, end - 8), "fix");
        EXPECT_EQ(keying(request).bands.front().verdict, KeyingVerdict::within) << fix;
    }
}

TEST(Keying, NominalFiguresSaySo) {
    const KeyingBand band = keying(nominal(keyed_loop())).bands.front();
    EXPECT_EQ(band.reasons.front().text.find("Nominal figures only"), 0U) << band.reasons.front().text;
}

TEST(Keying, IntervalsHoldTheNominalFigureAndVerdictsTheUpperEnd) {
    KeyingRequest request = nominal(keyed_loop());
    request.intervals = true;
    request.design.station.bands = {"40m"};
    KeyingBand band = keying(request).bands.front();
    const KeyingDistance& d = of(band, "icnirp_1998", Tier::general_public);
    EXPECT_LT(d.range.low, d.farthest->distance);
    EXPECT_GT(d.range.high, d.farthest->distance);
    EXPECT_LT(d.range.high.value(), 1.3 * d.farthest->distance.value());
    EXPECT_LT(band.voltage_peak.low, band.voltage_peak.high);
    // Between the nominal distance and its upper end people are too near.
    request.design.site.people_distance = 0.5 * (d.farthest->distance + d.range.high);
    EXPECT_EQ(keying(request).bands.front().verdict, KeyingVerdict::exceeded);
}

TEST(Keying, OutOfReachIsSaid) {
    design::Design d = keyed_loop();
    d.capacitor.maximum = units::picofarads(60);
    d.site.people_distance = metres(8);
    const Keying report = keying(nominal(d));
    EXPECT_EQ(report.bands.front().verdict, KeyingVerdict::out_of_reach);
    EXPECT_FALSE(greatest_power(report.bands.front())); // there is nothing to key
    EXPECT_TRUE(greatest_power(report.bands.back()));
}

TEST(Keying, TuningPowerGrowsWithReach) {
    double before = 0;
    for (const double reach : {0.5, 1.0, 2.0}) {
        design::Design d = keyed_loop();
        d.station.reach = metres(reach);
        const KeyingBand band = keying(nominal(d)).bands.front();
        const auto power = of(band, "icnirp_1998", Tier::general_public).power_for_tuning;
        ASSERT_TRUE(power);
        EXPECT_GE(power->value(), before) << reach;
        before = power->value();
    }
    EXPECT_GT(before, 0.1);
}

TEST(Keying, OwnLimitCounts) {
    design::Design d = keyed_loop();
    design::OwnLimit own;
    own.name = "of the site";
    own.electric = units::ElectricField::from_value(5);
    own.magnetic = units::MagneticField::from_value(0.01);
    d.station.own_limits = {own};
    const KeyingBand band = keying(nominal(d)).bands.front();
    EXPECT_GT(of(band, "own_1", Tier::general_public).farthest->distance,
              of(band, "icnirp_1998", Tier::general_public).farthest->distance);
}

TEST(Keying, LargestDistanceIsThePublicOne) {
    const Keying report = keying(nominal(keyed_loop()));
    const LargestDistance largest = largest_distance(report);
    ASSERT_NE(largest.distance, nullptr);
    EXPECT_TRUE(largest.complete);
    EXPECT_EQ(largest.distance->tier, Tier::general_public);
    for (const KeyingBand& band : report.bands) {
        for (const KeyingDistance& d : band.distances) {
            EXPECT_LE(d.range.high, largest.distance->range.high);
        }
    }
}

TEST(Keying, RefusesUnknownLimits) {
    EXPECT_THROW((void)keying(nominal(keyed_loop(), {"icnirp_1897"})), base::InputError);
    KeyingRequest request = nominal(keyed_loop());
    request.frequencies = {units::hertz(0)};
    EXPECT_THROW((void)keying(request), base::InputError);
}

TEST(Keying, StopsSoon) {
    KeyingRequest request = nominal(keyed_loop(), {});
    request.design.station.bands.clear();
    request.design.loop.size = metres(0.913); // of nothing remembered
    request.intervals = true;
    const base::StopToken stop;
    std::chrono::steady_clock::time_point asked;
    std::thread asking([&] {
        std::this_thread::sleep_for(std::chrono::milliseconds(60));
        asked = std::chrono::steady_clock::now();
        stop.request_stop();
    });
    const Keying report = keying(request, stop);
    const auto waited = std::chrono::steady_clock::now() - asked;
    asking.join();
    EXPECT_FALSE(report.complete);
    EXPECT_LT(std::chrono::duration<double>(waited).count(), 0.2);
}

} // namespace
} // namespace loopwright::survey
