// Drift: expansion against handbook values and scaling, the rest against designs solved anew.
#include "tuning/drift.hpp"

#include "base/error.hpp"
#include "conductor/metals.hpp"
#include "loop/full_wave.hpp"
#include "numeric/roots.hpp"
#include "tuning/expansion.hpp"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <cmath>
#include <utility>

namespace loopwright::tuning {
namespace {

/// A ring of 1 m, tube of 22 mm, copper, over average ground unless said otherwise (invented).
design::Design ring(bool over_ground) {
    design::Design design;
    design.conductor.metal.name = "copper";
    design.capacitor.loss.q = 1000;
    if (over_ground) {
        design.site.ground.kind = design::GroundKind::soil;
        design.site.ground.class_name = "average ground";
    }
    return design;
}

const DriftRow& row_of(const DriftReport& report, DriftCause cause) {
    for (const DriftRow& row : report.rows) {
        if (row.cause == cause) {
            return row;
        }
    }
    throw base::ProgramError("no such row");
}

double needed_F(const design::Design& design, double f) {
    return loop::FullWave(design, loop::Workload::few_frequencies)
        .solved(units::hertz(f))
        ->tuning_capacitance.value();
}

/// Where a changed design resonates with the capacitance the first one has at f, less f.
double solved_shift(const design::Design& before, const design::Design& after, double f) {
    const double kept = needed_F(before, f);
    return numeric::bracketed_root([&](double at) { return needed_F(after, at) - kept; }, f * 0.99, f * 1.01,
                                   40) -
           f;
}

// CRC Handbook of Chemistry and Physics, linear thermal expansion of the elements at 25 degC: Cu 16.5,
// Ag 18.9, Sn 22.0, Zn 30.2 per million and kelvin. ASM Metals Handbook: 6061 23.6, 304 17.3. All from
// memory.
TEST(Expansion, HandbookValues) {
    const auto per_million = [](const char* metal) {
        design::Metal named;
        named.name = metal;
        return expansion_of(named)->coefficient.value() * 1e6;
    };
    EXPECT_NEAR(per_million("copper"), 16.5, 0.05);
    EXPECT_NEAR(per_million("silver"), 18.9, 0.05);
    EXPECT_NEAR(per_million("tin"), 22.0, 0.05);
    EXPECT_NEAR(per_million("zinc"), 30.2, 0.05);
    EXPECT_NEAR(per_million("aluminium 6061"), 23.6, 0.05);
    EXPECT_NEAR(per_million("stainless steel"), 17.3, 0.05);
}

TEST(Expansion, OfEveryNamedMetalAndOfNoneGivenByNumbers) {
    for (const conductor::MetalData& metal : conductor::metals()) {
        design::Metal named;
        named.name = metal.name;
        const auto expansion = expansion_of(named);
        ASSERT_TRUE(expansion) << metal.name;
        EXPECT_THAT(expansion->source, testing::HasSubstr("from memory"));
    }
    design::Metal by_numbers;
    by_numbers.name = "";
    EXPECT_FALSE(expansion_of(by_numbers));
}

// By hand: L grows with size, C stays, f ~ 1/sqrt(L C): half the growth. With the whole resonator growing
// (n without bound: no lumped capacitor) f ~ 1/size.
TEST(Drift, ScalingByHand) {
    EXPECT_DOUBLE_EQ(shift_by_growth(1e-3, 2), -0.5e-3);
    EXPECT_NEAR(shift_by_growth(1e-3, 1e9), -1e-3, 1e-11);
    EXPECT_THROW(static_cast<void>(shift_by_growth(1e-3, 0)), base::ProgramError);
    // 15 K on copper at 7 MHz, far below self-resonance: 16.5e-6 x 15 / 2 x 7 MHz = 866 Hz lower.
    const auto report = drift({ring(false), units::megahertz(7), 15, 2});
    EXPECT_NEAR(row_of(report, DriftCause::conductor).shift->value(), -866, 0.08 * 866);
}

TEST(Drift, ExpansionAgainstALoopSolvedLarger) {
    const design::Design before = ring(false);
    design::Design after = before;
    const double growth = 2e-3;
    for (units::Length* length : {&after.loop.size.value, &after.loop.gap.value,
                                  &after.conductor.diameter.value, &after.conductor.wall.value}) {
        *length = *length * (1 + growth);
    }
    for (const double f : {7e6, 21e6}) {
        const double solved = solved_shift(before, after, f);
        const auto report = drift({before, units::hertz(f), 15, 2});
        const double closed = row_of(report, DriftCause::conductor).shift->value() * growth / (15 * 16.5e-6);
        EXPECT_NEAR(closed, solved, 0.01 * std::abs(solved)) << f;
    }
}

TEST(Drift, TheSiteAgainstDesignsSolvedAnew) {
    const design::Design before = ring(true);
    const double f = 14.1e6;
    const auto report = drift({before, units::hertz(f), 15, 2});
    design::Design higher = before, lower = before, wet = before, tilted = before;
    lower.site.lowest_point = units::metres(0.5);
    higher.site.lowest_point = units::metres(1.5);
    wet.site.ground.class_name = "wet ground";
    tilted.site.tilt = units::degrees(10);
    const auto check = [&](DriftCause cause, const design::Design& after) {
        const double solved = solved_shift(before, after, f);
        EXPECT_NEAR(row_of(report, cause).shift->value(), solved, 0.01 * std::abs(solved) + 1)
            << name_of(cause);
    };
    check(DriftCause::higher, higher);
    check(DriftCause::lower, lower);
    check(DriftCause::wet_soil, wet);
    check(DriftCause::tilt, tilted);
}

// By hand: C = 150 pF variable alone, 100 per million and kelvin over 20 K raise it by 0.2 %; f falls by 0.1
// % far below self-resonance. A fixed capacitor of the same size beside it halves that.
TEST(Drift, TheCapacitorThroughItsNetwork) {
    design::Design design = ring(false);
    design.capacitor.maximum = units::picofarads(600);
    design.capacitor.temperature_coefficient = units::per_kelvin(100e-6);
    const double f = 4e6;
    const double alone =
        row_of(drift({design, units::hertz(f), 20, 2}), DriftCause::capacitor).shift->value();
    EXPECT_NEAR(alone, -1e-3 * f, 0.03 * 1e-3 * f);
    design::AddedCapacitor half;
    half.capacitance = units::farads(needed_F(design, f) / 2);
    half.q = 1000;
    design.capacitor.added = {half};
    const double beside =
        row_of(drift({design, units::hertz(f), 20, 2}), DriftCause::capacitor).shift->value();
    EXPECT_NEAR(beside, alone / 2, 1e-3 * std::abs(alone));
    const auto report = drift({design, units::hertz(f), 20, 2});
    EXPECT_NEAR(row_of(report, DriftCause::warmth).shift->value(),
                row_of(report, DriftCause::conductor).shift->value() + beside, 1e-6 * f);
}

TEST(Drift, WordsAndVerdictsFollowTheUsableSpan) {
    design::Design design = ring(false);
    auto report = drift({design, units::megahertz(7), 15, 2});
    const DriftRow warm = row_of(report, DriftCause::warmth);
    EXPECT_THAT(warm.text, testing::StartsWith("after 15 K in the sun this loop is "));
    EXPECT_THAT(warm.text, testing::HasSubstr("off, lower"));
    const double span = report.usable_span->value();
    ASSERT_LT(*report.usable_span_low, *report.usable_span) << "the interval's unfavourable end counts";
    EXPECT_NEAR(warm.share_of_span, std::abs(warm.shift->value()) / report.usable_span_low->value(), 1e-12);
    // So much growth that the resonance leaves the span, and half as much.
    design.capacitor.temperature_coefficient = units::per_kelvin(1.2 * span / 7e6 / 15);
    EXPECT_EQ(row_of(drift({design, units::megahertz(7), 15, 2}), DriftCause::capacitor).verdict,
              DriftVerdict::retune);
    design.capacitor.temperature_coefficient = units::per_kelvin(0.7 * span / 7e6 / 15);
    EXPECT_EQ(row_of(drift({design, units::megahertz(7), 15, 2}), DriftCause::capacitor).verdict,
              DriftVerdict::check);
    design.capacitor.temperature_coefficient = units::per_kelvin(0.1 * span / 7e6 / 15);
    EXPECT_EQ(row_of(drift({design, units::megahertz(7), 15, 2}), DriftCause::capacitor).verdict,
              DriftVerdict::stays);
}

// By hand: a loop that grows with its capacitor in every length, no stray: f ~ 1/size (similarity of
// Maxwell's equations), whatever the share of the capacitor. Copper 16.5 per million and kelvin (CRC
// Handbook, from memory) over 15 K: 247.5 per million, of 7.1 and of 21.1 MHz.
TEST(Drift, AllOfOneMetalGoesWithItsSize) {
    design::Design design = ring(false);
    design.capacitor.temperature_coefficient = units::per_kelvin(16.5e-6);
    for (const double f : {7.1e6, 21.1e6}) {
        const auto report = drift({design, units::hertz(f), 15, 2});
        EXPECT_NEAR(row_of(report, DriftCause::warmth).shift->value(), -247.5e-6 * f, 0.003 * 247.5e-6 * f)
            << f;
    }
}

// Without the capacitor's coefficient the figure is the conductor's and the verdict that of twice the figure.
TEST(Drift, WithoutACapacitorsCoefficientItIsJudgedAsTwice) {
    const design::Design design = ring(false);
    const double f = 7e6;
    const auto probe = drift({design, units::hertz(f), 1, 2});
    const double share_of_one_K = row_of(probe, DriftCause::conductor).share_of_span;
    const std::pair<double, DriftVerdict> cases[] = {{0.24, DriftVerdict::stays},
                                                     {0.26, DriftVerdict::check},
                                                     {0.49, DriftVerdict::check},
                                                     {0.51, DriftVerdict::retune}};
    for (const auto& [twice, verdict] : cases) {
        const auto report = drift({design, units::hertz(f), twice / 2 / share_of_one_K, 2});
        const DriftRow& warm = row_of(report, DriftCause::warmth);
        const DriftRow& alone = row_of(report, DriftCause::conductor);
        EXPECT_EQ(warm.verdict, verdict) << twice;
        EXPECT_EQ(warm.shift, alone.shift);
        EXPECT_NEAR(warm.share_of_span, twice / 2, 1e-6);
        EXPECT_EQ(alone.verdict, twice < 0.5 ? DriftVerdict::stays : DriftVerdict::check) << twice;
        EXPECT_THAT(warm.text, testing::HasSubstr("perhaps twice that with the capacitor"));
        EXPECT_FALSE(row_of(report, DriftCause::capacitor).shift);
        EXPECT_TRUE(report.notices.has("capacitor_drift_unknown"));
    }
}

TEST(Drift, SaysThatTheCapacitorDoesNotReachTheFrequency) {
    DriftRequest request;
    request.design = ring(false);
    request.frequency = units::megahertz(14.1);
    request.design.capacitor.minimum = units::picofarads(1);
    request.design.capacitor.maximum = units::picofarads(1000);
    EXPECT_FALSE(drift(request).notices.has("drift_out_of_reach"));
    request.design.capacitor.maximum = units::picofarads(5);
    EXPECT_TRUE(drift(request).notices.has("drift_out_of_reach"));
}

TEST(Drift, SaysWhatItDoesNotKnow) {
    design::Design design = ring(false);
    design.conductor.metal.name = "";
    const auto report = drift({design, units::megahertz(7), 15, 2});
    const DriftRow& row = row_of(report, DriftCause::warmth);
    EXPECT_FALSE(row.shift);
    EXPECT_EQ(row.verdict, DriftVerdict::not_established);
    EXPECT_THAT(row.text, testing::HasSubstr("given by numbers"));
    EXPECT_TRUE(report.notices.has("hand_not_modelled"));
    EXPECT_TRUE(report.notices.has("capacitor_drift_unknown"));
    EXPECT_TRUE(report.notices.has("free_space_drift"));
    EXPECT_THROW(static_cast<void>(drift({design, units::megahertz(7), 101, 2})), base::InputError);
}

} // namespace
} // namespace loopwright::tuning
