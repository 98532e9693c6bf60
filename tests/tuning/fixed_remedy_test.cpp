#include "tuning/fixed_remedy.hpp"

#include <cmath>
#include <gtest/gtest.h>

namespace loopwright::tuning {
namespace {

using units::picofarads;

double pF(units::Capacitance c) {
    return c.value() * 1e12;
}

Need need_of(double at_pF, double low_pF, double high_pF) {
    Need need;
    need.capacitance = picofarads(at_pF);
    need.uncertain = {picofarads(at_pF - 0.5), picofarads(at_pF + 0.5)};
    need.band = {picofarads(low_pF), picofarads(high_pF)};
    need.frequency = units::megahertz(7.1);
    need.voltage_peak = units::volts(1000);
    return need;
}

// IEC 60063, E12.
TEST(FixedRemedy, OffersTheE12Series) {
    const double series[] = {1.0, 1.2, 1.5, 1.8, 2.2, 2.7, 3.3, 3.9, 4.7, 5.6, 6.8, 8.2};
    ASSERT_EQ(preferred_values().size(), 48U);
    for (std::size_t i = 0; i < 48; ++i) {
        EXPECT_NEAR(pF(preferred_values()[i]), series[i % 12] * std::pow(10.0, static_cast<int>(i / 12)),
                    1e-9 * pF(preferred_values()[i]));
    }
}

// 12 to 150 pF; the band takes 170 to 185 pF: 35 pF more at least, 39 in E12, with which 51 to 189 is in
// reach. It carries what stands across the loop: 1 kV, and V w C / sqrt 2.
TEST(FixedRemedy, InParallelWhereMoreIsNeeded) {
    design::Capacitor c;
    const auto missing = shortfall(c, {}, need_of(180, 170, 185));
    ASSERT_TRUE(missing);
    EXPECT_TRUE(missing->above);
    EXPECT_NEAR(pF(missing->by), 30, 1e-9);
    EXPECT_NEAR(pF(missing->end), 150, 1e-9);
    ASSERT_TRUE(missing->remedy);
    EXPECT_EQ(missing->remedy->connection, design::AddedConnection::parallel);
    EXPECT_NEAR(pF(missing->remedy->capacitance), 39, 1e-9);
    EXPECT_TRUE(missing->remedy->whole_band);
    EXPECT_NEAR(missing->remedy->voltage_peak.value(), 1000, 1e-6);
    EXPECT_NEAR(missing->remedy->current_rms.value(), 1000 / std::sqrt(2.0) * 2 * M_PI * 7.1e6 * 39e-12,
                1e-6);
}

// Needs 8 pF (7.5 to 8.5 over the band), the least is 12: in series 1/(1/7.5 - 1/12) = 20 pF at the most,
// 18 in E12; with it 7.2 to 16.07 pF. Across it 1000 V * 8/18, through it the whole current.
TEST(FixedRemedy, InSeriesWhereLessIsNeeded) {
    design::Capacitor c;
    const auto missing = shortfall(c, {}, need_of(8, 7.5, 8.5));
    ASSERT_TRUE(missing);
    EXPECT_FALSE(missing->above);
    EXPECT_NEAR(pF(missing->by), 4, 1e-9);
    ASSERT_TRUE(missing->remedy);
    EXPECT_EQ(missing->remedy->connection, design::AddedConnection::series);
    EXPECT_NEAR(pF(missing->remedy->capacitance), 18, 1e-9);
    EXPECT_NEAR(missing->remedy->voltage_peak.value(), 1000 * 8.0 / 18, 1e-6);
    EXPECT_NEAR(missing->remedy->current_rms.value(), 1000 / std::sqrt(2.0) * 2 * M_PI * 7.1e6 * 8e-12, 1e-6);
}

// A range of 3 pF cannot cover 15 pF of band: the value then serves the frequency alone.
TEST(FixedRemedy, ServesTheFrequencyWhereNoValueServesTheBand) {
    design::Capacitor c;
    c.minimum = picofarads(10);
    c.maximum = picofarads(14);
    const auto missing = shortfall(c, {}, need_of(45, 38, 53));
    ASSERT_TRUE(missing && missing->remedy);
    EXPECT_FALSE(missing->remedy->whole_band);
    EXPECT_NEAR(pF(missing->remedy->capacitance), 33, 1e-9); // 43 to 47 pF
}

// 12 to 150 pF; the band takes 600 to 760 pF, more than any one value covers; its working frequencies take
// 700 to 740: from 740 - 150 = 590 to 700 - 12 = 688 pF, in E12 680. For 705 pF alone 560 were the least.
TEST(FixedRemedy, ServesTheWorkingFrequenciesTogetherWhereNoValueServesTheBand) {
    design::Capacitor c;
    Need need = need_of(705, 600, 760);
    auto missing = shortfall(c, {}, need);
    ASSERT_TRUE(missing && missing->remedy);
    EXPECT_NEAR(pF(missing->remedy->capacitance), 560, 1e-9);
    EXPECT_FALSE(missing->remedy->working_frequencies);
    need.working = units::Interval<units::Capacitance>{picofarads(700), picofarads(740)};
    missing = shortfall(c, {}, need);
    ASSERT_TRUE(missing && missing->remedy);
    EXPECT_NEAR(pF(missing->remedy->capacitance), 680, 1e-9);
    EXPECT_TRUE(missing->remedy->working_frequencies);
    EXPECT_FALSE(missing->remedy->whole_band);
    need.working = units::Interval<units::Capacitance>{picofarads(600), picofarads(760)};
    EXPECT_FALSE(shortfall(c, {}, need)->remedy->working_frequencies);
}

TEST(FixedRemedy, SaysNothingWhereItIsInReachAndOffersNothingWhereNothingHelps) {
    design::Capacitor c;
    EXPECT_FALSE(shortfall(c, {}, need_of(100, 90, 110)));
    EXPECT_FALSE(shortfall(c, {}, need_of(150, 150, 150)));
    c.stray = picofarads(20); // alone more than the 8 pF needed
    const auto missing = shortfall(c, {}, need_of(8, 7.5, 8.5));
    ASSERT_TRUE(missing);
    EXPECT_NEAR(pF(missing->by), 24, 1e-9);
    EXPECT_FALSE(missing->remedy);
}

} // namespace
} // namespace loopwright::tuning
