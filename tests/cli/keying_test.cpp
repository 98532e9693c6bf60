// Before keying and fields of a plane, as an operator types them: keys, exit statuses, refusals.
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

/// Over average ground, one band; people: the design's distance, empty for none.
std::string loop_file(const Folder& folder, const std::string& rating, const std::string& people = {}) {
    const std::string site = std::string(R"(, "site": { "ground": "average ground", "lowest_point": "1 m")") +
                             (people.empty() ? "" : R"(, "people_distance": ")" + people + '"') + " }";
    return folder.write("before.loop",
                        copper_loop(rating, site + R"(, "station": { "power": "5 W", "emission": "ft8",)"
                                                   R"( "bands": ["30m", "20m"] })"));
}

std::vector<std::string> lines_of(const std::string& text) {
    std::vector<std::string> lines;
    std::istringstream stream(text);
    for (std::string line; std::getline(stream, line);) {
        if (!line.empty() && line.back() == '\r') { // RFC 4180 ends lines with both
            line.pop_back();
        }
        lines.push_back(line);
    }
    return lines;
}

std::vector<std::string> cells_of(const std::string& line) {
    std::vector<std::string> cells;
    std::istringstream stream(line + ',');
    for (std::string cell; std::getline(stream, cell, ',');) {
        cells.push_back(cell);
    }
    return cells;
}

/// 100 pF in parallel on one band, without a rating; people at 20 m.
std::string partly_rated(const Folder& folder) {
    std::string text = copper_loop("9 kV", R"(, "site": { "people_distance": "20 m" }, "station": { )"
                                           R"("power": "5 W", "bands": ["40m", "30m"] })");
    const std::string stray = "\"stray\": \"3 pF\",";
    return folder.write("partly.loop",
                        text.insert(text.find(stray),
                                    R"("added": [ { "capacitance": "100 pF", "connection": "parallel",)"
                                    R"( "q": 1000, "bands": ["40m"] } ], )"));
}

// The reference promises status 1 for figures that are not established; no page may say within.
TEST(BeforeKeying, AMemberWithoutARatingIsSaidByEveryCommand) {
    const Folder folder;
    const std::string file = partly_rated(folder);
    for (const char* command : {"bands", "report", "card", "keying"}) {
        const Result result = run({command, file});
        EXPECT_EQ(result.status, 1) << command;
        EXPECT_THAT(result.err, HasSubstr("40m: A member of the capacitor carries volts and has no rating"));
        EXPECT_THAT(result.out, HasSubstr("not within a rating on 40m:")) << command;
    }
    const json card = json::parse(run({"card", file, "--json"}).out);
    EXPECT_EQ(card["voltage_verdict"], "not_established");
    EXPECT_EQ(card["unrated_at"], json::array({"40m"}));
    EXPECT_EQ(card["people_too_near"], false);
    EXPECT_EQ(run({"bands",
                   folder.write("plain.loop", copper_loop("9 kV", R"(, "station": { "bands": ["30m"] })"))})
                  .status,
              0);
}

TEST(BeforeKeying, HasThePromisedKeysForEveryBandAndTier) {
    const Folder folder;
    const Result result = run({"keying", loop_file(folder, "5 kV"), "--power", "10W", "--emission", "carrier",
                               "--limits", "fcc_1_1310,icnirp_2010", "--json"});
    EXPECT_EQ(result.status, 0) << result.err;
    EXPECT_EQ(not_finite(result.out), "");
    const json all = json::parse(result.out);
    ASSERT_EQ(all["bands"].size(), 2U);
    EXPECT_EQ(all["emission"], "carrier");
    for (const json& band : all["bands"]) {
        for (const char* key : {"band", "frequency_Hz", "capacitor_voltage_peak_V", "usable_voltage_V",
                                "distances", "verdict", "on_condition"}) {
            EXPECT_TRUE(band.contains(key)) << key;
        }
        EXPECT_TRUE(band["on_condition"].get<bool>()) << "no distance of people was entered";
        // icnirp_2010 ends at 10 MHz
        ASSERT_EQ(band["distances"].size(), 2U) << band["band"];
        for (const json& distance : band["distances"]) {
            EXPECT_EQ(distance["limit"], "fcc_1_1310");
            EXPECT_EQ(distance["duty"].get<double>(), 1) << "a carrier is on all the time";
            for (const char* key : {"distance_m", "distance_body_average_m", "azimuth_deg", "height_m"}) {
                EXPECT_TRUE(distance[key].is_number()) << key;
            }
            EXPECT_LE(distance["distance_m_low"], distance["distance_m"]);
            EXPECT_LE(distance["distance_m"], distance["distance_m_high"]);
        }
        EXPECT_EQ(band["distances"][0]["tier"], "public");
        EXPECT_EQ(band["distances"][1]["tier"], "occupational");
        EXPECT_LT(band["distances"][1]["distance_m"], band["distances"][0]["distance_m"]);
    }
}

TEST(BeforeKeying, ExitStatusSaysWhatStandsAgainstTheKey) {
    const Folder folder;
    const std::string file = loop_file(folder, "5 kV");
    EXPECT_EQ(run({"keying", file, "--people", "8m"}).status, 0);
    const Result near = run({"keying", file, "--people", "0.9m", "--power", "20W"});
    EXPECT_EQ(near.status, 1);
    EXPECT_THAT(near.err, HasSubstr("People at 0.9 m are nearer"));
    EXPECT_THAT(near.out, HasSubstr("Keep everybody beyond"));
    const Result arcs = run({"keying", file, "--power", "400W", "--json", "--nominal"});
    EXPECT_EQ(arcs.status, 1);
    EXPECT_THAT(arcs.err, HasSubstr("more than the usable 5.00 kV"));
    EXPECT_EQ(json::parse(arcs.out)["bands"][0]["verdict"], "exceeded");
    const Result out = run({"keying", file, "--frequency", "1.9MHz", "--nominal"});
    EXPECT_EQ(out.status, 1);
    EXPECT_THAT(out.err, HasSubstr("Needs"));
}

TEST(BeforeKeying, WithoutARatingNothingIsEstablished) {
    const Folder folder;
    const std::string file = folder.write("unrated.loop", R"({ "format": "loopwright-design", "version": 1,
  "loop": { "outline": "circle", "size": "1 m", "size_is": "diameter" },
  "conductor": { "form": "tube", "diameter": "22 mm", "wall": "1 mm", "metal": "copper" },
  "capacitor": { "minimum": "12 pF", "maximum": "150 pF", "loss": { "q": 1000 } },
  "site": { "ground": "average ground" }, "station": { "bands": ["20m"] } })");
    const Result result = run({"keying", file, "--people", "20m", "--json"});
    EXPECT_EQ(result.status, 1);
    EXPECT_THAT(result.err, HasSubstr("No rating"));
    EXPECT_EQ(json::parse(result.out)["bands"][0]["verdict"], "not_established");
    EXPECT_TRUE(json::parse(result.out)["bands"][0]["usable_voltage_V"].is_null());
}

TEST(BeforeKeying, RefusesWhatItDoesNotKnow) {
    const Folder folder;
    const std::string file = loop_file(folder, "5 kV");
    for (const auto& [option, value] :
         std::vector<std::pair<std::string, std::string>>{{"--limits", "fcc_1_1310,none_such"},
                                                          {"--emission", "morse"},
                                                          {"--people", "1"},
                                                          {"--power", "-3W"},
                                                          {"--reach", "500m"},
                                                          {"--frequency", "7.1"}}) {
        const Result result = run({"keying", file, option, value});
        EXPECT_EQ(result.status, 2) << option;
        EXPECT_THAT(result.err, HasSubstr(option)) << result.err;
    }
}

TEST(FieldPlane, IsOneRowAPointWithDecimalPlaces) {
    const Folder folder;
    const std::string file = loop_file(folder, "5 kV");
    const Result result = run({"field", file, "--frequency", "14.1MHz", "--plane", "xz", "--half-width", "3m",
                               "--points", "61", "--csv"});
    EXPECT_EQ(result.status, 0) << result.err;
    const auto lines = lines_of(result.out);
    ASSERT_EQ(lines.size(), 1U + 61 * 61);
    EXPECT_EQ(lines[0], "x_m,y_m,z_m,electric_field_rms_V_per_m,magnetic_field_rms_A_per_m");
    EXPECT_THAT(lines[7], testing::StartsWith("-2.4,0,0,"));
    int empty = 0;
    for (std::size_t i = 1; i < lines.size(); ++i) {
        const auto cells = cells_of(lines[i]);
        ASSERT_EQ(cells.size(), 5U) << lines[i];
        // A ring of 1 m, its lowest point at 1 m, 22 mm thick: nothing is said nearer than 0.2 m to it.
        const double from_ring = std::abs(std::hypot(std::stod(cells[0]), std::stod(cells[2]) - 1.5) - 0.5);
        EXPECT_EQ(cells[3].empty(), from_ring < 0.2 + 0.011 - 1e-3) << lines[i];
        empty += cells[3].empty() ? 1 : 0;
    }
    EXPECT_GT(empty, 50);
}

// The same place asked for by itself and in a plane.
TEST(FieldPlane, AgreesWithThePointsAskedForOneByOne) {
    const Folder folder;
    const std::string file = loop_file(folder, "5 kV");
    for (const std::string plane : {"xy", "xz", "yz"}) {
        const Result map = run({"field", file, "--frequency", "7.1MHz", "--power", "20W", "--plane", plane,
                                "--offset", "1.25m", "--half-width", "2m", "--points", "3", "--json"});
        EXPECT_EQ(map.status, 0) << map.err;
        const json points = json::parse(map.out)["points"];
        ASSERT_EQ(points.size(), 9U) << plane;
        const json& point = points[8];
        const auto& p = point["position_m"];
        std::string place;
        for (std::size_t i = 0; i < 3; ++i) {
            place += (i == 0 ? "" : ",") + p[i].dump() + "m";
        }
        EXPECT_EQ(p[plane == "xy" ? 2 : plane == "xz" ? 1 : 0].get<double>(), 1.25) << place;
        const Result alone =
            run({"field", file, "--frequency", "7.1MHz", "--power", "20W", "--at", place, "--json"});
        EXPECT_EQ(alone.status, 0) << alone.err;
        const json one = json::parse(alone.out)["points"][0];
        for (const char* key : {"electric_field_rms_V_per_m", "magnetic_field_rms_A_per_m"}) {
            EXPECT_NEAR(point[key].get<double>() / one[key].get<double>(), 1, 5e-3) << plane << ", " << key;
        }
    }
}

TEST(FieldPlane, SaysWhatItWants) {
    const Folder folder;
    const std::string file = loop_file(folder, "5 kV");
    const auto refused = [&](const std::vector<std::string>& more, const char* word) {
        std::vector<std::string> all{"field", file, "--frequency", "14.1MHz"};
        all.insert(all.end(), more.begin(), more.end());
        const Result result = run(all);
        EXPECT_EQ(result.status, 2) << result.err;
        EXPECT_THAT(result.err, HasSubstr(word));
    };
    refused({}, "--at");
    refused({"--plane", "zx", "--csv"}, "--plane");
    refused({"--plane", "xz"}, "--csv"); // a table of thousands of rows is for programs
    refused({"--plane", "xz", "--at", "1m,1m,1m", "--csv"}, "--at");
    refused({"--plane", "xz", "--points", "1", "--csv"}, "--points");
    refused({"--plane", "xz", "--half-width", "90m", "--csv"}, "--half-width");
}

} // namespace
} // namespace loopwright::cli_test
