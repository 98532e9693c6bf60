// Both sides of every break of every limit table, and three frequencies or more of each: the formulas of the
// published tables worked out by hand. Read in secondary copies: FCC 47 CFR 1.1310(e)(1) Table 1; ICNIRP 2020
// Table 5 (public) and Table 6; ICNIRP 2010 Tables 3 and 4; EU 1999/519/EC annex III table 2 = ICNIRP 1998
// Table 7; DOE-HDBK-1092 Table 10-2 for C95.1-1991/99. From memory: ICNIRP 2020 Table 5 occupational, ICNIRP
// 1998 Table 6, C95.1-2019 (its unrestricted rows are those of 1991 in the copy read).
#include "exposure/limits.hpp"
#include "exposure/tiers.hpp"

#include <algorithm>
#include <gtest/gtest.h>
#include <set>
#include <string>
#include <vector>

namespace loopwright::exposure {
namespace {

constexpr double end = -1; // no row on that side

struct Break {
    const char* id;
    Tier tier;
    double f_MHz;
    double electric_below, magnetic_below; // just below
    double electric_at, magnetic_at;       // at the break
};

const std::vector<Break> breaks{
    {"fcc_1_1310", occ, 0.3, end, end, 614, 1.63},
    {"fcc_1_1310", occ, 3, 614, 1.63, 1842.0 / 3, 4.89 / 3},
    {"fcc_1_1310", occ, 30, 1842.0 / 30, 4.89 / 30, 61.4, 0.163},
    {"fcc_1_1310", occ, 300, 61.4, 0.163, 61.4, 0.163},
    {"fcc_1_1310", gen, 0.3, end, end, 614, 1.63},
    {"fcc_1_1310", gen, 1.34, 614, 1.63, 614.925, 1.63433},
    {"fcc_1_1310", gen, 30, 27.46667, 0.073, 27.5, 0.073},
    {"fcc_1_1310", gen, 300, 27.5, 0.073, 27.5, 0.073},
    // 30^0.7 = 10.81395, 0.1^0.7 = 0.199526
    {"icnirp_2020", gen, 0.1, end, end, 1503.562, 22},
    {"icnirp_2020", gen, 30, 27.7419, 0.0733333, 27.7, 0.073},
    {"icnirp_2020", gen, 400, 27.7, 0.073, 27.7, 0.073},
    {"icnirp_2020", occ, 0.1, end, end, 3307.836, 49},
    {"icnirp_2020", occ, 30, 61.0322, 0.163333, 61, 0.16},
    {"icnirp_2020", occ, 400, 61, 0.16, 61, 0.16},
    {"icnirp_2020_local", gen, 0.1, end, end, 3362.966, 49},
    {"icnirp_2020_local", gen, 30, 62.0494, 0.163333, 62, 0.163},
    {"icnirp_2020_local", gen, 400, 62, 0.163, 62, 0.163},
    {"icnirp_2020_local", occ, 0.1, end, end, 7537.856, 108},
    {"icnirp_2020_local", occ, 30, 139.0794, 0.36, 139, 0.36},
    {"icnirp_2020_local", occ, 400, 139, 0.36, 139, 0.36},
    {"icnirp_1998", gen, 0.15, end, end, 87, 4.866667},
    {"icnirp_1998", gen, 1, 87, 0.73, 87, 0.73},
    {"icnirp_1998", gen, 10, 27.51182, 0.073, 28, 0.073},
    {"icnirp_1998", gen, 400, 28, 0.073, 28, 0.073},
    {"icnirp_1998", occ, 0.065, end, end, 610, 24.61538},
    {"icnirp_1998", occ, 1, 610, 1.6, 610, 1.6},
    {"icnirp_1998", occ, 10, 61, 0.16, 61, 0.16},
    {"icnirp_1998", occ, 400, 61, 0.16, 61, 0.16},
    {"icnirp_2010", occ, 0.003, end, end, 170, 80},
    {"icnirp_2010", occ, 10, 170, 80, 170, 80},
    {"icnirp_2010", gen, 0.003, end, end, 83, 21},
    {"icnirp_2010", gen, 10, 83, 21, 83, 21},
    {"eu_1999_519", gen, 0.15, end, end, 87, 4.866667},
    {"eu_1999_519", gen, 1, 87, 0.73, 87, 0.73},
    {"eu_1999_519", gen, 10, 27.51182, 0.073, 28, 0.073},
    {"eu_1999_519", gen, 400, 28, 0.073, 28, 0.073},
    {"ieee_c95_1_2019", gen, 0.1, end, end, 614, 163},
    {"ieee_c95_1_2019", gen, 1.34, 614, 12.16418, 614.7761, 12.16418},
    {"ieee_c95_1_2019", gen, 30, 27.46, 0.543333, 27.5, 0.5440548},
    {"ieee_c95_1_2019", occ, 0.1, end, end, 1842, 163},
    {"ieee_c95_1_2019", occ, 1, 1842, 16.3, 1842, 16.3},
    {"ieee_c95_1_2019", occ, 30, 61.4, 0.543333, 61.4, 0.543333},
};

void expect_level(const Break& row, double f_MHz, double electric, double magnetic) {
    const auto level = at(*find_limit(row.id), row.tier, units::megahertz(f_MHz));
    if (electric == end) {
        EXPECT_FALSE(level.has_value()) << row.id << ' ' << f_MHz;
        return;
    }
    ASSERT_TRUE(level.has_value()) << row.id << ' ' << name_of(row.tier) << ' ' << f_MHz;
    EXPECT_NEAR(level->electric.value() / electric, 1, 2e-5) << row.id << ' ' << f_MHz;
    EXPECT_NEAR(level->magnetic.value() / magnetic, 1, 2e-5) << row.id << ' ' << f_MHz;
}

} // namespace

TEST(LimitBreaks, BothSidesAreThoseOfTheTable) {
    for (const Break& row : breaks) {
        expect_level(row, row.f_MHz * (1 - 1e-9), row.electric_below, row.magnetic_below);
        expect_level(row, row.f_MHz, row.electric_at, row.magnetic_at);
    }
}

TEST(LimitBreaks, EveryBreakOfEveryTableIsListed) {
    for (const Limit& limit : limits()) {
        for (const LimitTable& table : limit.tables) {
            std::set<double> here;
            for (const Break& row : breaks) {
                if (row.id == limit.id && row.tier == table.tier) {
                    here.insert(row.f_MHz);
                }
            }
            for (const LimitSegment& segment : table.segments) {
                EXPECT_TRUE(here.count(segment.from_MHz)) << limit.id << ' ' << segment.from_MHz;
            }
        }
    }
}

TEST(LimitBreaks, MoreFrequenciesOfTablesWithFew) {
    struct Row {
        const char* id;
        Tier tier;
        double f_MHz, electric, magnetic;
    };
    // 7.074^0.7 = 3.933380, 1.84^0.7 = 1.532401, 28.074^0.7 = 10.32319
    for (const Row& row :
         {Row{"icnirp_2020_local", gen, 7.074, 170.5913, 0.692677},
          Row{"icnirp_2020_local", gen, 50.313, 62, 0.163},
          Row{"icnirp_2020_local", occ, 1.84, 981.4662, 5.869565},
          Row{"icnirp_2020_local", occ, 7.074, 382.3687, 1.526718},
          Row{"icnirp_2020", occ, 7.074, 167.7948, 0.692677}, Row{"icnirp_2020", occ, 50.313, 61, 0.16},
          Row{"icnirp_2010", occ, 7.074, 170, 80}, Row{"icnirp_2010", gen, 3.573, 83, 21},
          Row{"eu_1999_519", gen, 7.074, 32.71047, 0.1031948}, Row{"eu_1999_519", gen, 50.313, 28, 0.073},
          Row{"ieee_c95_1_2019", gen, 3.573, 230.5626, 4.561993},
          Row{"ieee_c95_1_2019", gen, 50.313, 27.5, 0.2296563},
          Row{"ieee_c95_1_2019", occ, 3.573, 515.5332, 4.561993},
          Row{"ieee_c95_1_2019", occ, 14.074, 130.8796, 1.158164},
          Row{"ieee_c95_1_2019", occ, 50.313, 61.4, 0.3239719}}) {
        const auto level = at(*find_limit(row.id), row.tier, units::megahertz(row.f_MHz));
        ASSERT_TRUE(level) << row.id;
        EXPECT_NEAR(level->electric.value() / row.electric, 1, 1e-5) << row.id << ' ' << row.f_MHz;
        EXPECT_NEAR(level->magnetic.value() / row.magnetic, 1, 1e-5) << row.id << ' ' << row.f_MHz;
    }
}

TEST(LimitBreaks, WhatStandsFromMemoryIsMarked) {
    const std::set<std::pair<std::string, Tier>> memory{
        {"icnirp_2020", occ}, {"icnirp_1998", occ}, {"ieee_c95_1_2019", gen}, {"ieee_c95_1_2019", occ}};
    for (const Limit& limit : limits()) {
        for (const LimitTable& table : limit.tables) {
            EXPECT_EQ(table.from_memory, memory.count({limit.id, table.tier}) > 0)
                << limit.id << ' ' << name_of(table.tier);
        }
    }
}

} // namespace loopwright::exposure
