// The retune card and the dial: promised keys, rows, refusals.
#include "process.hpp"

#include <gmock/gmock.h>
#include <gtest/gtest.h>
#include <nlohmann/json.hpp>

#include <algorithm>
#include <cmath>

namespace loopwright::cli_test {
namespace {

using nlohmann::json;
using testing::HasSubstr;

constexpr const char* placed =
    R"(, "site": {"ground": "average ground"}, "station": {"bands": ["40m", "20m"], "reach": "2 m"})";

std::string with_dial(std::string text) {
    const std::string maximum = "\"maximum\": \"150 pF\",";
    const auto at = text.find(maximum);
    if (at == std::string::npos) {
        throw std::runtime_error("the sample's capacitor is written otherwise");
    }
    return text.insert(at + maximum.size(), R"( "dial": {"scale": "degrees", "hand_step": 1},)");
}

class Card : public testing::Test {
protected:
    Folder folder;
    std::string file = folder.write("card.loop", with_dial(copper_loop("5 kV", placed)));
};

TEST_F(Card, PrintsEveryPromisedKey) {
    const Result result = run({"card", file, "--json"});
    EXPECT_EQ(result.status, 0) << result.err;
    const json card = json::parse(result.out);
    EXPECT_EQ(card["schema"], "loopwright-card-1");
    EXPECT_EQ(not_finite(result.out), "");
    EXPECT_GT(card["highest_voltage_peak_V"].get<double>(), 0);
    EXPECT_GT(card["keep_out_distance_m"].get<double>(), 0);
    EXPECT_GT(card["tuning_power_W"].get<double>(), 0);
    EXPECT_EQ(card["reach_m"], 2);
    ASSERT_GE(card["rows"].size(), 12U);
    ASSERT_EQ(card["next"].size(), 3U);
    for (const json& next : card["next"]) {
        EXPECT_LT(next["mean_width_after"].get<double>(), next["mean_width"].get<double>());
    }
    const std::string text = run({"card", file}).out;
    EXPECT_THAT(text, HasSubstr("predicted reading is wide because"));
    EXPECT_THAT(text, HasSubstr("Measure next at"));
    for (const json& row : card["rows"]) {
        for (const char* key : {"band",
                                "frequency_Hz",
                                "tuning_capacitance_F",
                                "dial",
                                "dial_uncertainty",
                                "usable_span_Hz",
                                "capacitor_voltage_peak_V",
                                "reachable",
                                "remark",
                                "radio_frequency_Hz",
                                "audio_offset_Hz",
                                "dial_per_kHz",
                                "dial_predicted",
                                "dial_calibrated",
                                "plugged",
                                "whole_band",
                                "drive_resolves",
                                "needed_reduction",
                                "shortfall_F",
                                "fixed_capacitor"}) {
            EXPECT_TRUE(row.contains(key)) << key;
        }
    }
}

TEST_F(Card, RowsAreThePointsOfTheCommandPoint) {
    const json card = json::parse(run({"card", file, "--json"}).out);
    for (const json& row : card["rows"]) {
        if (row["emission"] != "ft8") {
            continue;
        }
        EXPECT_NEAR(row["audio_offset_Hz"].get<double>(), 1500, 1e-6);
        const std::string f = row["frequency_Hz"].dump() + "Hz";
        const json point = json::parse(run({"point", file, "--frequency", f, "--json"}).out);
        for (const char* key : {"tuning_capacitance_F", "capacitor_voltage_peak_V"}) {
            EXPECT_NEAR(row[key].get<double>() / point[key].get<double>(), 1, 1e-4) << key;
        }
        EXPECT_NEAR(row["usable_span_Hz"].get<double>() / point["bandwidth_vswr_Hz"].get<double>(), 1, 1e-3);
        EXPECT_EQ(row["reachable"], point["in_capacitor_range"]);
        // Straight-line capacitance over 180 degrees from 12 to 150 pF, the design's stray and no other.
        if (row["reachable"] == true) {
            const double variable_pF = row["variable_capacitance_F"].get<double>() * 1e12;
            EXPECT_NEAR(row["dial_predicted"].get<double>(), (variable_pF - 12) / (150 - 12) * 180, 0.02);
        }
        const json dial = json::parse(run({"dial", file, "--frequency", f, "--json"}).out);
        EXPECT_EQ(dial["schema"], "loopwright-dial-1");
        EXPECT_EQ(dial["reachable"], row["reachable"]);
        if (row["reachable"] == true) {
            EXPECT_NEAR(dial["dial"].get<double>(), row["dial"].get<double>(), 0.01);
        }
    }
}

TEST_F(Card, RegionDecidesAboutTheFrequencies) {
    const auto voice_on_40m = [&](const char* region) {
        const json card = json::parse(run({"card", file, "--region", region, "--json"}).out);
        for (const json& row : card["rows"]) {
            if (row["band"] == "40m" && row["emission"] == "ssb") {
                EXPECT_EQ(row["sideband"], "lower");
                EXPECT_EQ(row["audio_offset_Hz"].get<double>(), -1500);
                return row["radio_frequency_Hz"].get<double>();
            }
        }
        return 0.0;
    };
    EXPECT_NEAR(voice_on_40m("1"), 7.090e6, 1e-3);
    EXPECT_NEAR(voice_on_40m("2"), 7.285e6, 1e-3); // outside the band of region 1
    const Result wrong = run({"card", file, "--region", "4"});
    EXPECT_EQ(wrong.status, 2);
    EXPECT_THAT(wrong.err, HasSubstr("--region"));
}

TEST_F(Card, CsvHasARowAFrequency) {
    const Result csv = run({"card", file, "--csv"});
    EXPECT_EQ(csv.status, 0) << csv.err;
    EXPECT_EQ(csv.out.find("band,use,emission,own,"), 0U);
    const json card = json::parse(run({"card", file, "--json"}).out);
    EXPECT_EQ(static_cast<std::size_t>(std::count(csv.out.begin(), csv.out.end(), '\n')),
              card["rows"].size() + 1);
}

TEST_F(Card, TextHasHazardsTuningAndRows) {
    const Result text = run({"card", file});
    EXPECT_EQ(text.status, 0) << text.err;
    EXPECT_THAT(text.out, HasSubstr("\nHazards\n"));
    EXPECT_THAT(text.out, HasSubstr("Greatest tune-up power with the body 2 m from the capacitor"));
    EXPECT_THAT(text.out, HasSubstr("peak the received noise"));
    EXPECT_THAT(text.out, HasSubstr("7075.5"));
    EXPECT_THAT(text.out, HasSubstr("14285.0"));
    EXPECT_THAT(text.out, HasSubstr("middle of the audio passband"));
    EXPECT_THAT(text.out, HasSubstr("calibrate"));
}

TEST_F(Card, DialTakesTheRadiosFrequencyWithAnEmission) {
    const json plain = json::parse(run({"dial", file, "--frequency", "14.074MHz", "--json"}).out);
    const json ft8 =
        json::parse(run({"dial", file, "--frequency", "14.074MHz", "--emission", "ft8", "--json"}).out);
    EXPECT_EQ(plain["frequency_Hz"].get<double>(), 14.074e6);
    EXPECT_EQ(ft8["frequency_Hz"].get<double>(), 14.0755e6);
    EXPECT_EQ(ft8["radio_frequency_Hz"].get<double>(), 14.074e6);
    EXPECT_LT(ft8["dial"].get<double>(), plain["dial"].get<double>());
    const Result out = run({"dial", file, "--frequency", "1.84MHz"});
    EXPECT_EQ(out.status, 1);
    EXPECT_THAT(out.err, HasSubstr("short"));
    EXPECT_EQ(run({"dial", file, "--frequency", "14MHz", "--emission", "smoke"}).status, 2);
    EXPECT_EQ(run({"card", file, "--paper", "a4"}).status, 2); // goes with --pdf
}

TEST_F(Card, SaysWhereTheProgramThatPaintsIsMissing) {
    const Result result =
        run({"card", file, "--pdf", (folder.path() / "card.pdf").string()}, {"PATH=/nowhere"});
    EXPECT_EQ(result.status, 1);
    EXPECT_THAT(result.err, HasSubstr("painted by the workbench"));
    EXPECT_FALSE(std::filesystem::exists(folder.path() / "card.pdf"));
}

} // namespace
} // namespace loopwright::cli_test
