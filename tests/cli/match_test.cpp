// The match: promised keys, refusals, sizes of coupling.
#include "process.hpp"

#include <gmock/gmock.h>
#include <gtest/gtest.h>
#include <nlohmann/json.hpp>

#include <algorithm>
#include <cmath>
#include <complex>

namespace loopwright::cli_test {
namespace {

using nlohmann::json;
using testing::HasSubstr;

constexpr const char* coupled = R"(, "coupling": {"kind": "loop", "diameter": "0.18 m"},
    "site": {"ground": "average ground"}, "station": {"bands": ["30m", "20m"]})";

class Match : public testing::Test {
protected:
    Folder folder;
    std::string file = folder.write("coupled.loop", copper_loop("5 kV", coupled));
    std::string bare = folder.write("bare.loop", copper_loop());
};

TEST_F(Match, PrintsEveryPromisedKey) {
    const Result result = run({"match", file, "--frequency", "14.1MHz", "--power", "5 W", "--json"});
    EXPECT_EQ(result.status, 0) << result.err;
    const json match = json::parse(result.out);
    for (const char* key : {"schema", "model", "frequency_Hz", "tuning_capacitance_F", "input_impedance_ohm",
                            "vswr", "vswr_at_radio", "feed_line_loss_dB", "curve", "mistuning", "notices"}) {
        EXPECT_TRUE(match.contains(key)) << key;
    }
    EXPECT_EQ(match["schema"], "loopwright-match-1");
    EXPECT_EQ(match["model"], "full-wave");
    EXPECT_EQ(match["power_W"], 5.0);
    EXPECT_EQ(match["vswr_at_radio"], match["vswr"]); // no feed line is given
    EXPECT_TRUE(match["feed_line_loss_dB"].is_null());
    EXPECT_EQ(not_finite(result.out), "");
    // The definition of the standing-wave ratio.
    const std::complex<double> z(match["input_impedance_ohm"][0].get<double>(),
                                 match["input_impedance_ohm"][1].get<double>());
    const double reflection = std::abs((z - 50.0) / (z + 50.0));
    EXPECT_NEAR(match["vswr"].get<double>(), (1 + reflection) / (1 - reflection), 1e-9);
}

TEST_F(Match, CurveAndMistuningStandAroundTheMatch) {
    const json match = json::parse(run({"match", file, "--frequency", "10.1MHz", "--json"}).out);
    const double vswr = match["vswr"].get<double>();
    const json& curve = match["curve"];
    ASSERT_EQ(curve.size(), 41U);
    EXPECT_NEAR(curve[20]["frequency_Hz"].get<double>(), 10.1e6, 1e-3);
    EXPECT_NEAR(curve[20]["vswr"].get<double>() / vswr, 1, 1e-4);
    EXPECT_GT(curve[0]["vswr"].get<double>(), 3 * vswr);
    EXPECT_GT(curve[40]["vswr"].get<double>(), 3 * vswr);
    double before = -1;
    for (const json& row : match["mistuning"]) {
        EXPECT_GT(row["capacitance_offset_F"].get<double>(), before);
        before = row["capacitance_offset_F"].get<double>();
        EXPECT_GE(row["vswr"].get<double>(), vswr * (1 - 1e-9));
        EXPECT_EQ(before == 0, row["radiated_power_dB"].get<double>() == 0);
    }
    EXPECT_GE(match["mistuning"].size(), 7U);
}

TEST_F(Match, CsvIsTheCurve) {
    const std::string csv = run({"match", file, "--frequency", "10.1MHz", "--csv"}).out;
    EXPECT_EQ(csv.find("frequency_Hz,input_resistance_ohm,input_reactance_ohm,vswr,vswr_at_radio"), 0U);
    EXPECT_EQ(std::count(csv.begin(), csv.end(), '\n'), 42);
}

TEST_F(Match, TextNamesHazardsAndMatch) {
    const std::string text = run({"match", file, "--frequency", "10.1MHz"}).out;
    EXPECT_THAT(text, HasSubstr("\nHazards\n"));
    EXPECT_THAT(text, HasSubstr("(no feed line given)"));
    EXPECT_THAT(text, HasSubstr("a choke belongs at the loop"));
}

TEST_F(Match, RefusesADesignWithoutCoupling) {
    const Result result = run({"match", bare, "--frequency", "10.1MHz", "--json"});
    EXPECT_EQ(result.status, 1);
    EXPECT_EQ(result.out, "");
    EXPECT_THAT(result.err, HasSubstr("no coupling"));
    EXPECT_THAT(result.err, HasSubstr("--design-coupling"));
}

TEST_F(Match, IsNotEstablishedBeyondTheModel) {
    const Result result = run({"match", file, "--frequency", "144MHz", "--json"});
    EXPECT_EQ(result.status, 1);
    EXPECT_THAT(result.err, HasSubstr("144 MHz"));
    const json match = json::parse(result.out);
    EXPECT_TRUE(match["vswr"].is_null());
    EXPECT_TRUE(match["curve"].empty());
}

TEST_F(Match, NeedsAFrequencyOrTheQuestionForSizes) {
    const Result result = run({"match", file});
    EXPECT_EQ(result.status, 2);
    EXPECT_THAT(result.err, HasSubstr("--frequency"));
    EXPECT_EQ(run({"match", bare, "--design-coupling", "--frequency", "oddly"}).status, 2);
}

TEST_F(Match, FindsSizesForThePlannedBands) {
    const Result result = run({"match", file, "--design-coupling", "--json"});
    EXPECT_EQ(result.status, 0) << result.err;
    const json sizes = json::parse(result.out);
    EXPECT_EQ(sizes["schema"], "loopwright-coupling-sizes-1");
    ASSERT_EQ(sizes["rows"].size(), 2U);
    EXPECT_EQ(sizes["rows"][0]["band"], "30m");
    double worst = 1;
    for (const json& row : sizes["rows"]) {
        EXPECT_LT(row["best_vswr"].get<double>(), 1.05);
        EXPECT_LE(row["best_vswr"].get<double>(), row["common_vswr"].get<double>() + 1e-3);
        worst = std::max(worst, row["common_vswr"].get<double>());
    }
    EXPECT_EQ(sizes["common_worst_vswr"].get<double>(), worst);
    // A design without coupling may ask too, also for one frequency.
    const json one =
        json::parse(run({"match", bare, "--design-coupling", "--frequency", "10.1MHz", "--json"}).out);
    ASSERT_EQ(one["rows"].size(), 1U);
    EXPECT_EQ(one["rows"][0]["band"], "30m"); // 10.1 to 10.15 MHz, Radio Regulations, article 5
    EXPECT_LT(one["rows"][0]["best_vswr"].get<double>(), 1.05);
    const json between =
        json::parse(run({"match", bare, "--design-coupling", "--frequency", "9MHz", "--json"}).out);
    EXPECT_TRUE(between["rows"][0]["band"].is_null());
}

// What is not modelled stands with the sizes too, not with the match alone.
TEST_F(Match, SizesCarryTheNoticesOfLoopAndSite) {
    const std::string text = run({"match", file, "--design-coupling"}).out;
    EXPECT_THAT(text, HasSubstr("a choke belongs at the loop"));
    EXPECT_THAT(text, HasSubstr("Railings, reinforced concrete"));
    EXPECT_THAT(text, HasSubstr("its body belongs to the stray capacitance"));
    EXPECT_THAT(text, HasSubstr("The coupling loop is taken as a round copper wire"));
}

// What the size table says is what a design of that size gives.
TEST_F(Match, TheBestSizeBuiltIsTheMatchPromised) {
    const json sizes = json::parse(
        run({"match", bare, "--design-coupling", "--frequency", "10.1MHz", "--json"}).out)["rows"][0];
    const std::string diameter = std::to_string(sizes["best_diameter_m"].get<double>());
    const std::string built =
        folder.write("built.loop", copper_loop("5 kV", R"(, "coupling": {"kind": "loop", "diameter": ")" +
                                                           diameter + R"( m"})"));
    const json match = json::parse(run({"match", built, "--frequency", "10.1MHz", "--json"}).out);
    EXPECT_NEAR(match["vswr"].get<double>(), sizes["best_vswr"].get<double>(), 1e-3);
}

// The size that --design-coupling finds for a kind, built, is the match it promised.
TEST_F(Match, SizesATapAndATransformerToo) {
    struct Kind {
        const char* name;
        const char* parts;
    };
    const Kind kinds[] = {{"tap", R"("kind": "tap", "tap_spacing": "60 mm", "series_capacitor": "150 pF")"},
                          {"transformer", R"("kind": "transformer", "turn_inductance": "0.4 uH")"}};
    for (const Kind& kind : kinds) {
        const bool tap = std::string(kind.name) == "tap";
        const auto with = [&](const std::string& more) {
            return folder.write("kind.loop",
                                copper_loop("5 kV", R"(, "coupling": {)" + std::string(kind.parts) + more +
                                                        R"(}, "station": {"bands": ["30m", "20m"]})"));
        };
        const Result result = run({"match", with(tap ? R"(, "tap_length": "0.25 m")" : R"(, "turns": 5)"),
                                   "--design-coupling", "--json"});
        ASSERT_EQ(result.status, 0) << result.err;
        const json sizes = json::parse(result.out);
        EXPECT_EQ(not_finite(result.out), "");
        EXPECT_EQ(sizes["coupling"], kind.name);
        EXPECT_EQ(sizes["line_impedance_ohm"], 50.0);
        EXPECT_TRUE(sizes["common_diameter_m"].is_null());
        EXPECT_TRUE(sizes["axis_offset_m"].is_null());
        EXPECT_EQ(sizes["tap_spacing_m"].is_null(), !tap);
        EXPECT_EQ(sizes["turn_inductance_H"].is_null(), tap);
        EXPECT_EQ(sizes["conductor_diameter_m"].is_null(), !tap);
        EXPECT_EQ(sizes["common_turns"].is_null(), tap);
        EXPECT_EQ(sizes["common_tap_length_m"].is_null(), !tap);
        EXPECT_THAT(result.out, HasSubstr("circuit model"));
        ASSERT_EQ(sizes["rows"].size(), 2U);
        double worst = 1;
        for (const json& row : sizes["rows"]) {
            EXPECT_LE(row["best_vswr"].get<double>(), row["common_vswr"].get<double>() * 1.01);
            worst = std::max(worst, row["common_vswr"].get<double>());
        }
        EXPECT_EQ(sizes["common_worst_vswr"].get<double>(), worst);
        const json& first = sizes["rows"][0];
        const std::string size = first[tap ? "best_tap_length_m" : "best_turns"].dump();
        const std::string built =
            with(tap ? R"(, "tap_length": ")" + size + R"( m")" : R"(, "turns": )" + size);
        const std::string frequency = std::to_string(first["frequency_Hz"].get<double>()) + "Hz";
        const json match = json::parse(run({"match", built, "--frequency", frequency, "--json"}).out);
        EXPECT_NEAR(match["vswr"].get<double>(), first["best_vswr"].get<double>(), 1e-3) << kind.name;
    }
}

TEST_F(Match, SizesForTheDesignsOwnLine) {
    const std::string line =
        folder.write("line.loop", copper_loop("5 kV", R"(, "coupling": {"kind": "loop", "diameter": "0.18 m"},
        "feed_line": {"length": "5 m", "impedance": "75 ohm"}, "station": {"bands": ["30m"]})"));
    const json sizes = json::parse(run({"match", line, "--design-coupling", "--json"}).out);
    EXPECT_EQ(sizes["line_impedance_ohm"], 75.0);
    EXPECT_TRUE(sizes["tap_spacing_m"].is_null());
    const json& z = sizes["rows"][0]["best_input_impedance_ohm"];
    EXPECT_NEAR(z[0].get<double>(), 75, 4);
}

TEST_F(Match, TextNamesTheSizeOfTheKind) {
    const std::string tap = folder.write(
        "tap.loop",
        copper_loop(
            "5 kV",
            R"(, "coupling": {"kind": "tap", "tap_length": "0.2 m"}, "station": {"bands": ["30m"]})"));
    const std::string text = run({"match", tap, "--design-coupling"}).out;
    EXPECT_THAT(text, HasSubstr("Length of the tap"));
    EXPECT_THAT(text, HasSubstr("along the conductor"));
    EXPECT_THAT(text, HasSubstr("circuit model"));
    const std::string csv = run({"match", tap, "--design-coupling", "--csv"}).out;
    EXPECT_EQ(csv.find("band,frequency_Hz,in_capacitor_range,best_diameter_m,best_vswr,common_diameter_m,"
                       "common_vswr,best_tap_length_m,common_tap_length_m,best_turns,common_turns"),
              0U);
}

} // namespace
} // namespace loopwright::cli_test
