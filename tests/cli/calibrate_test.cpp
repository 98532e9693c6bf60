// calibrate: the points of a file joined with the model, shown and stored.
#include "process.hpp"

#include <gmock/gmock.h>
#include <gtest/gtest.h>
#include <nlohmann/json.hpp>

#include <cmath>
#include <sstream>

namespace loopwright::cli_test {
namespace {

using nlohmann::json;
using testing::HasSubstr;

/// An invented loop with a half-turn capacitor of straight-line capacitance.
const char* const design_text = R"({
  "format": "loopwright-design", "version": 1, "title": "Made for a test", "note": "invented example",
  "loop": { "outline": "circle", "size": "1 m" },
  "conductor": { "form": "tube", "diameter": "22 mm", "wall": "1 mm", "metal": "copper" },
  "capacitor": { "minimum": "12 pF", "maximum": "150 pF", "stray": "4 pF", "loss": { "q": 1000 },
                 "dial": { "law": "capacitance", "scale": "degrees", "at_minimum": 0, "at_maximum": 180 } },
  "station": { "region": 1, "bands": ["40m", "30m", "20m", "17m"] }
})";

double reading_for(double whole_F) {
    return 180 * (whole_F - 16e-12) / 138e-12;
}

/// What a dial without fault reads in resonance at some frequencies, from the program's own tuning curve.
std::string points_of(const std::string& file, double shift, bool spoil) {
    const json sweep =
        json::parse(run({"sweep", file, "--from", "7.1MHz", "--to", "18MHz", "--points", "6", "--json"}).out);
    std::ostringstream text;
    text.precision(15);
    text << "reading;frequency_Hz\n";
    int number = 0;
    for (const json& row : sweep["rows"]) {
        const double off = spoil && ++number == 4 ? 25 : 0;
        text << reading_for(row["tuning_capacitance_F"]) + shift + off << ";"
             << row["frequency_Hz"].get<double>() << "\n";
    }
    return text.str();
}

TEST(Calibrate, WithoutPointsThePredictedDialWithItsInterval) {
    const Folder folder;
    const std::string file = folder.write("my.loop", design_text);
    const Result result = run({"calibrate", file, "--json"});
    EXPECT_EQ(result.status, 0) << result.err;
    EXPECT_EQ(not_finite(result.out), "");
    const json all = json::parse(result.out);
    EXPECT_EQ(all["schema"], "loopwright-calibrate-1");
    EXPECT_EQ(all["scale"], "degrees");
    EXPECT_TRUE(all["points"].empty());
    ASSERT_EQ(all["rows"].size(), 12U);
    for (const json& row : all["rows"]) {
        const json at = json::parse(run({"point", file, "--frequency",
                                         std::to_string(row["frequency_Hz"].get<double>()) + "Hz", "--json"})
                                        .out);
        EXPECT_NEAR(row["dial"], reading_for(at["tuning_capacitance_F"]), 0.05);
        EXPECT_LT(row["dial_low"], row["dial"]);
        EXPECT_GT(row["dial_high"], row["dial"]);
        EXPECT_EQ(row["dial"], row["dial_predicted"]);
    }
    ASSERT_EQ(all["next"].size(), 3U);
    EXPECT_LT(all["next"][0]["mean_width_after"], all["next"][0]["mean_width"]);
    EXPECT_LT(all["next"][1]["mean_width_after"], all["next"][0]["mean_width_after"]);
}

TEST(Calibrate, PointsMoveTheDialAndAreStoredOnRequest) {
    const Folder folder;
    const std::string file = folder.write("my.loop", design_text);
    const std::string points = folder.write("dial.csv", points_of(file, 2, false));
    const Result shown = run({"calibrate", file, "--points", points, "--json"});
    EXPECT_EQ(shown.status, 0) << shown.err;
    const json moved = json::parse(shown.out);
    ASSERT_FALSE(moved["rows"].empty());
    for (const json& row : moved["rows"]) {
        EXPECT_NEAR(row["dial"].get<double>() - row["dial_predicted"].get<double>(), 2, 0.35);
        EXPECT_LT(row["dial_uncertainty"], 2);
    }
    EXPECT_EQ(read_file(file), design_text) << "not stored unless asked to";
    const Result stored = run({"calibrate", file, "--points", points, "--write", "--date", "2026-05-17",
                               "--note", "mast up", "--json"});
    EXPECT_EQ(stored.status, 0) << stored.err;
    EXPECT_TRUE(json::parse(stored.out)["written"]);
    const json kept = json::parse(read_file(file));
    EXPECT_EQ(kept["calibration"]["date"], "2026-05-17");
    EXPECT_EQ(kept["calibration"]["points"].size(), 6U);
    const json again = json::parse(run({"calibrate", file, "--json"}).out);
    EXPECT_EQ(again["note"], "mast up");
    EXPECT_EQ(again["rows"], json::parse(stored.out)["rows"]);
}

TEST(Calibrate, ShowsAMistakenPointWithItsReason) {
    const Folder folder;
    const std::string file = folder.write("my.loop", design_text);
    const std::string points = folder.write("dial.csv", points_of(file, 2, true));
    const json all = json::parse(run({"calibrate", file, "--points", points, "--json"}).out);
    ASSERT_EQ(all["points"].size(), 6U);
    for (std::size_t i = 0; i < 6; ++i) {
        EXPECT_EQ(all["points"][i]["used"], i != 3) << i;
    }
    EXPECT_THAT(all["points"][3]["reason"].get<std::string>(), HasSubstr("from what the other five say"));
    EXPECT_GT(all["points"][3]["times_scatter"], 4);
    for (const json& row : all["rows"]) {
        EXPECT_NEAR(row["dial"].get<double>() - row["dial_predicted"].get<double>(), 2, 0.5);
    }
    const std::string text = run({"calibrate", file, "--points", points}).out;
    EXPECT_THAT(text, HasSubstr("left out: reads"));
    EXPECT_THAT(text, HasSubstr("5 of 6 points used"));
    EXPECT_THAT(text, HasSubstr("Measure next at"));
    EXPECT_EQ(not_finite(text), "");
    EXPECT_THAT(run({"calibrate", file, "--points", points, "--csv"}).out,
                HasSubstr("band,frequency_Hz,dial_predicted"));
}

TEST(Calibrate, RefusalsAndUsage) {
    const Folder folder;
    const std::string file = folder.write("my.loop", design_text);
    const std::string bare = folder.write("bare.csv", "45,14.1\n");
    const Result refused = run({"calibrate", file, "--points", bare});
    EXPECT_EQ(refused.status, 1);
    EXPECT_THAT(refused.err, HasSubstr("line 1 of"));
    EXPECT_THAT(refused.err, HasSubstr("'14.1'"));
    EXPECT_EQ(run({"calibrate", file, "--points", "/nonexistent.csv"}).status, 1);
    EXPECT_EQ(run({"calibrate", file, "--write"}).status, 2);
    std::string no_dial = design_text;
    const auto at = no_dial.find(",\n                 \"dial\"");
    no_dial.replace(at, no_dial.find("180 } }", at) + 6 - at, " ");
    const Result without = run({"calibrate", folder.write("no.loop", no_dial)});
    EXPECT_EQ(without.status, 1);
    EXPECT_THAT(without.err, HasSubstr("capacitor.dial"));
}

} // namespace
} // namespace loopwright::cli_test
