// drift: keys, signs, refusals.
#include "process.hpp"
#include "support/samples.hpp"

#include <gmock/gmock.h>
#include <gtest/gtest.h>
#include <nlohmann/json.hpp>

namespace loopwright::cli_test {
namespace {

using nlohmann::json;
using support::samples;
using testing::HasSubstr;

TEST(Drift, GivesEveryCauseAtAFrequency) {
    ASSERT_FALSE(samples().empty());
    const std::string sample = samples().front();
    const Result result = run({"drift", sample, "--frequency", "14.1MHz", "--json"});
    EXPECT_EQ(result.status, 0) << result.err;
    EXPECT_EQ(not_finite(result.out), "");
    const json all = json::parse(result.out);
    EXPECT_EQ(all["schema"], "loopwright-drift-1");
    EXPECT_EQ(all["rise_K"], 15);
    ASSERT_EQ(all["rows"].size(), 1U);
    const json& row = all["rows"][0];
    EXPECT_TRUE(row["band"].is_null());
    EXPECT_GT(row["usable_span_Hz"], 0);
    for (const json& cause : row["causes"]) {
        EXPECT_EQ(cause["shift_Hz"].is_null(), cause["verdict"] == "not_established");
    }
    EXPECT_EQ(row["causes"][0]["cause"], "warmth");
    EXPECT_LT(row["causes"][0]["shift_Hz"], 0) << "warm metal grows";
    const json cold =
        json::parse(run({"drift", sample, "--frequency", "14.1MHz", "--rise", "-15 K", "--json"}).out);
    EXPECT_DOUBLE_EQ(cold["rows"][0]["causes"][0]["shift_Hz"], -row["causes"][0]["shift_Hz"].get<double>());
}

TEST(Drift, WithoutAFrequencyTheBandsInWords) {
    const std::string text = run({"drift", samples().front()}).out;
    EXPECT_THAT(text, HasSubstr("after 15 K in the sun this loop is"));
    EXPECT_THAT(text, HasSubstr("A hand or body near the loop"));
    EXPECT_EQ(not_finite(text), "");
    EXPECT_THAT(run({"drift", samples().front(), "--csv"}).out,
                HasSubstr("band,frequency_Hz,usable_span_Hz"));
}

TEST(Drift, RefusesARiseThatIsNone) {
    for (const char* rise : {"15", "288 degC", "200K", "K", "warm"}) {
        const Result result = run({"drift", samples().front(), "--rise", rise});
        EXPECT_EQ(result.status, 2) << rise;
        EXPECT_THAT(result.err, HasSubstr("--rise")) << rise;
    }
}

} // namespace
} // namespace loopwright::cli_test
