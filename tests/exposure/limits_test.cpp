// The limit tables against their standards. Formulas of the standards as listed in standards' tables (FCC 47
// CFR 1.1310 Table 1; ICNIRP 2020 Tables 5 and 6; ICNIRP 2010 Tables 3 and 4; EU 1999/519/EC annex III; read
// in secondary copies); the values at the bands are those formulas worked out apart from this code and
// rounded, so the tolerance is the rounding.
#include "exposure/limits.hpp"
#include "exposure/tiers.hpp"

#include <gtest/gtest.h>
#include <string>

namespace loopwright::exposure {
namespace {

struct Row {
    const char* id;
    Tier tier;
    double f_MHz, electric, magnetic;
    double tolerance_e, tolerance_h;
};

class Levels : public ::testing::TestWithParam<Row> {};

TEST_P(Levels, AreThoseOfTheTable) {
    const Row row = GetParam();
    const Limit* limit = find_limit(row.id);
    ASSERT_NE(limit, nullptr);
    const auto level = at(*limit, row.tier, units::megahertz(row.f_MHz));
    ASSERT_TRUE(level.has_value()) << row.id << ' ' << row.f_MHz;
    EXPECT_NEAR(level->electric.value(), row.electric, row.tolerance_e) << row.id << ' ' << row.f_MHz;
    EXPECT_NEAR(level->magnetic.value(), row.magnetic, row.tolerance_h) << row.id << ' ' << row.f_MHz;
}

INSTANTIATE_TEST_SUITE_P(
    Published, Levels,
    ::testing::Values(
        Row{"fcc_1_1310", gen, 1.84, 447.8, 1.190, .05, .0005},
        Row{"fcc_1_1310", gen, 7.074, 116.5, .310, .05, .0005},
        Row{"fcc_1_1310", gen, 28.074, 29.4, .078, .05, .0005},
        Row{"fcc_1_1310", gen, 50.313, 27.5, .073, .05, .0005},
        Row{"fcc_1_1310", occ, 1.84, 614, 1.63, .05, .005},
        Row{"fcc_1_1310", occ, 7.074, 260.4, .691, .05, .0005},
        Row{"fcc_1_1310", occ, 28.074, 65.6, .174, .05, .0005},
        Row{"fcc_1_1310", occ, 50.313, 61.4, .163, .05, .0005},
        Row{"icnirp_2020", gen, 1.84, 195.8, 1.196, .05, .0005},
        Row{"icnirp_2020", gen, 7.074, 76.3, .311, .05, .0005},
        Row{"icnirp_2020", gen, 28.074, 29.1, .078, .05, .0005},
        Row{"icnirp_2020", gen, 50.313, 27.7, .073, .05, .0005},
        Row{"icnirp_2020", occ, 1.84, 430.7, 2.663, .05, .0005},
        Row{"icnirp_2020", occ, 14.074, 103.7, .348, .06, .0005},
        Row{"icnirp_2020", occ, 28.074, 63.9, .175, .05, .0005},
        Row{"icnirp_2020_local", gen, 1.84, 437.9, 2.663, .05, .0005},
        Row{"icnirp_2020_local", gen, 10.136, 132.6, .483, .1, .0006},
        Row{"icnirp_2020_local", gen, 28.074, 65.0, .175, .05, .0005},
        // 1504/f^0.7 and 10.8/f at 1, 10 and 30 MHz side
        Row{"icnirp_2020_local", occ, 1.0, 1504, 10.8, .5, .05},
        Row{"icnirp_2020_local", occ, 10.0, 300.1, 1.08, .1, .005},
        Row{"icnirp_2020_local", occ, 50.0, 139, .36, .5, .005},
        Row{"icnirp_1998", gen, 1.84, 64.1, .397, .05, .0005},
        Row{"icnirp_1998", gen, 7.074, 32.7, .103, .05, .0005},
        Row{"icnirp_1998", gen, 14.074, 28, .073, .05, .0005},
        Row{"icnirp_1998", occ, 1.84, 331.5, .870, .05, .0005},
        Row{"icnirp_1998", occ, 7.074, 86.2, .226, .05, .0005},
        Row{"icnirp_1998", occ, 21.074, 61, .160, .05, .0005},
        Row{"eu_1999_519", gen, 3.573, 46.0, .204, .05, .0005},
        Row{"eu_1999_519", gen, 5.357, 37.6, .136, .05, .0005},
        Row{"eu_1999_519", gen, 24.915, 28, .073, .05, .0005}, Row{"icnirp_2010", gen, 1.84, 83, 21, .5, .5},
        Row{"icnirp_2010", gen, 7.074, 83, 21, .5, .5}, Row{"icnirp_2010", gen, 10.0, 83, 21, .5, .5},
        Row{"icnirp_2010", occ, 1.84, 170, 80, .5, .5}, Row{"icnirp_2010", occ, 3.573, 170, 80, .5, .5},
        Row{"icnirp_2010", occ, 10.0, 170, 80, .5, .5},
        // DOE-HDBK-1092 Table 10-2 for the 1991/99 edition; the 2019 numbers are from memory
        Row{"ieee_c95_1_2019", gen, 7.074, 116.5, 2.304, .05, .0005},
        Row{"ieee_c95_1_2019", gen, 14.074, 58.53, 1.158, .05, .0005},
        Row{"ieee_c95_1_2019", gen, 30.0, 27.5, .5443, .05, .0015},
        Row{"ieee_c95_1_2019", occ, 7.074, 260.4, 2.304, .05, .0005}));

TEST(Limits, ChangeRowsWhereTheTableDoes) {
    // Continuous within the rounding of the printed coefficients, at every break; nothing beyond the ends.
    for (const Limit& limit : limits()) {
        for (const LimitTable& table : limit.tables) {
            for (std::size_t i = 1; i < table.segments.size(); ++i) {
                EXPECT_EQ(table.segments[i].from_MHz, table.segments[i - 1].to_MHz) << limit.id;
                const double edge = table.segments[i].from_MHz;
                const auto below = at(limit, table.tier, units::megahertz(edge * (1 - 1e-9)));
                const auto above = at(limit, table.tier, units::megahertz(edge));
                ASSERT_TRUE(below && above);
                EXPECT_NEAR(above->electric.value() / below->electric.value(), 1.0, 0.02) << limit.id << edge;
            }
            const auto first = units::megahertz(table.segments.front().from_MHz * 0.99);
            const auto last = units::megahertz(table.segments.back().to_MHz * 1.01);
            EXPECT_FALSE(at(limit, table.tier, first).has_value()) << limit.id;
            EXPECT_FALSE(at(limit, table.tier, last).has_value()) << limit.id;
            EXPECT_TRUE(at(limit, table.tier, units::megahertz(table.segments.back().to_MHz)).has_value())
                << limit.id;
        }
    }
}

TEST(Limits, MemoryIsMarked) {
    EXPECT_TRUE(at(*find_limit("ieee_c95_1_2019"), gen, units::megahertz(7))->from_memory);
    EXPECT_TRUE(at(*find_limit("icnirp_2020"), occ, units::megahertz(7))->from_memory);
    EXPECT_FALSE(at(*find_limit("fcc_1_1310"), gen, units::megahertz(7))->from_memory);
    EXPECT_FALSE(at(*find_limit("eu_1999_519"), occ, units::megahertz(7)).has_value());
    EXPECT_EQ(find_limit("no_such_limit"), nullptr);
}

TEST(Limits, AveragingTimes) {
    EXPECT_EQ(find_limit("fcc_1_1310")->averaging(gen)->value(), 1800);
    EXPECT_EQ(find_limit("fcc_1_1310")->averaging(occ)->value(), 360);
    EXPECT_FALSE(find_limit("icnirp_2010")->averaging(gen).has_value());
    EXPECT_EQ(find_limit("eu_1999_519")->averaging(gen)->value(), 360);
}

TEST(Exemption, HoldsOnlyBeyondItsDistance) {
    // 47 CFR 1.1307(b)(3)(i)(C) Table 1; lambda/2pi = 3.39 m at 14.074 MHz.
    EXPECT_FALSE(fcc_exemption_erp(units::megahertz(14.074), units::metres(3.38)).has_value());
    const auto erp = fcc_exemption_erp(units::megahertz(14.074), units::metres(4.0));
    ASSERT_TRUE(erp.has_value());
    EXPECT_NEAR(erp->value(), 3450.0 * 16.0 / (14.074 * 14.074), 1e-9);
    EXPECT_NEAR(fcc_exemption_erp(units::megahertz(50.313), units::metres(2.0))->value(), 15.32, 1e-9);
    EXPECT_NEAR(fcc_exemption_erp(units::megahertz(1.0), units::metres(50.0))->value(), 4.8e6, 1e-3);
    EXPECT_FALSE(fcc_exemption_erp(units::megahertz(0.1), units::metres(1000)).has_value());
}

} // namespace
} // namespace loopwright::exposure
