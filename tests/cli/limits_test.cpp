// The list of exposure limits: keys, values, marks, refusals.
#include "process.hpp"

#include <gmock/gmock.h>
#include <gtest/gtest.h>
#include <nlohmann/json.hpp>

namespace loopwright::cli_test {
namespace {

using nlohmann::json;
using testing::HasSubstr;

TEST(Limits, ListsEveryTableWithItsSource) {
    const Result result = run({"limits", "--json"});
    EXPECT_EQ(result.status, 0) << result.err;
    EXPECT_EQ(not_finite(result.out), "");
    const json all = json::parse(result.out);
    EXPECT_EQ(all["schema"], "loopwright-limits-1");
    EXPECT_TRUE(all["frequency_Hz"].is_null());
    ASSERT_EQ(all["limits"].size(), 7U);
    EXPECT_EQ(all["limits"][0]["limit"], "fcc_1_1310");
    for (const json& limit : all["limits"]) {
        EXPECT_FALSE(limit["standard"].get<std::string>().empty() ||
                     limit["edition"].get<std::string>().empty());
        for (const json& table : limit["tables"]) {
            for (const char* key : {"tier", "table", "from_memory", "averaging_s", "rows",
                                    "electric_field_rms_V_per_m", "magnetic_field_rms_A_per_m"}) {
                EXPECT_TRUE(table.contains(key)) << key;
            }
            EXPECT_FALSE(table["rows"].empty());
            EXPECT_TRUE(table["electric_field_rms_V_per_m"].is_null()) << "no frequency was asked for";
        }
    }
}

TEST(Limits, GivesTheValuesAtAFrequency) {
    const Result result = run({"limits", "fcc_1_1310", "--frequency", "7.074MHz", "--json"});
    EXPECT_EQ(result.status, 0) << result.err;
    const json fcc = json::parse(result.out);
    ASSERT_EQ(fcc["limits"].size(), 1U);
    for (const json& table : fcc["limits"][0]["tables"]) {
        const bool open_to_all = table["tier"] == "public";
        // 47 CFR 1.1310 Table 1: 824/f and 2.19/f over 30 min, 1842/f and 4.89/f over 6 min
        EXPECT_NEAR(table["electric_field_rms_V_per_m"].get<double>(), (open_to_all ? 824 : 1842) / 7.074,
                    1e-9);
        EXPECT_NEAR(table["magnetic_field_rms_A_per_m"].get<double>(), (open_to_all ? 2.19 : 4.89) / 7.074,
                    1e-9);
        EXPECT_EQ(table["averaging_s"].get<double>(), open_to_all ? 1800 : 360);
        EXPECT_FALSE(table["from_memory"].get<bool>());
    }
}

TEST(Limits, WhatStandsFromMemoryIsMarkedInTheText) {
    const Result all = run({"limits"});
    EXPECT_EQ(all.status, 0);
    EXPECT_THAT(all.out, HasSubstr("824/f"));
    EXPECT_THAT(all.out, HasSubstr("300/f^0.7"));
    EXPECT_THAT(all.out, HasSubstr("Table 5 (from memory)"));
    EXPECT_THAT(all.out, HasSubstr("none: every instant"));
    EXPECT_THAT(all.out, HasSubstr("for the law of the place"));
    EXPECT_THAT(all.out, testing::Not(HasSubstr(" safe")));
    EXPECT_THAT(run({"limits", "eu_1999_519"}).out, testing::Not(HasSubstr("(from memory)")));
    EXPECT_THAT(run({"limits", "--csv"}).out, HasSubstr("limit,tier,from_Hz,to_Hz"));
}

TEST(Limits, NoRowIsSaid) {
    const Result result = run({"limits", "icnirp_2010", "--frequency", "14MHz", "--json"});
    EXPECT_EQ(result.status, 1);
    EXPECT_EQ(result.err, "loopwright-cli: 14 MHz: no table has a row there\n");
    EXPECT_TRUE(json::parse(result.out)["limits"][0]["tables"][0]["electric_field_rms_V_per_m"].is_null());
}

TEST(Limits, Refusals) {
    const Result unknown = run({"limits", "fcc"});
    EXPECT_EQ(unknown.status, 2);
    EXPECT_THAT(unknown.err, HasSubstr("ID: 'fcc' is not accepted; fcc_1_1310, icnirp_2020"));
    EXPECT_EQ(run({"limits", "fcc_1_1310", "icnirp_2020"}).status, 2);
    EXPECT_EQ(run({"limits", "--frequency", "7W"}).status, 2);
}

} // namespace
} // namespace loopwright::cli_test
