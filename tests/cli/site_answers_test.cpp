// Pattern, height and near field: promised keys, and figures held against theory and against `point`.
#include "process.hpp"
#include "support/promised.hpp"

#include <gmock/gmock.h>
#include <gtest/gtest.h>
#include <nlohmann/json.hpp>

#include <algorithm>
#include <cmath>

namespace loopwright::cli_test {
namespace {

using nlohmann::json;
using testing::HasSubstr;

class SiteAnswers : public testing::Test {
protected:
    Folder folder;
    std::string free = folder.write("free.loop", copper_loop());
    std::string soil = folder.write(
        "soil.loop", copper_loop("5 kV", R"(, "site": {"ground": "average ground", "lowest_point": "1 m"})"));
};

double gain_at(const json& cut, double angle_deg) {
    for (const json& row : cut["rows"]) {
        if (std::abs(row["angle_deg"].get<double>() - angle_deg) < 1e-6) {
            return row["gain_dBi"].get<double>();
        }
    }
    ADD_FAILURE() << "no row at " << angle_deg;
    return NAN;
}

// A small loop in free space: directivity 1.5, 1.76 dBi (Kraus, Antennas, ex. 7-8.1), the same all round in
// its plane (x-z), cos^2 out of it. At 1.85 MHz the circle is 0.02 wavelengths round; nearer to a tenth of
// one the charge at the gap fills the null on the axis.
TEST_F(SiteAnswers, PatternOfASmallLoopIsThatOfTheTextbook) {
    const Result result = run({"pattern", free, "--frequency", "1.85MHz", "--elevation", "0deg", "--step",
                               "15deg", "--compare-dipole", "--json"});
    EXPECT_EQ(result.status, 0) << result.err;
    const json pattern = json::parse(result.out);
    EXPECT_EQ(pattern["schema"], "loopwright-pattern-1");
    EXPECT_EQ(pattern["model"], "full-wave");
    const double best = 10 * std::log10(1.5 * pattern["efficiency"].get<double>());
    EXPECT_NEAR(pattern["gain_max_dBi"].get<double>(), best, 0.05);
    for (const double elevation : {0.0, 30.0, 60.0, 90.0, 150.0}) {
        EXPECT_NEAR(gain_at(pattern["elevation_cut"], elevation), best, 0.1) << elevation;
    }
    for (const double azimuth : {30.0, 45.0, 60.0, 135.0, 240.0}) {
        const double cosine = std::cos(azimuth * std::acos(-1.0) / 180);
        EXPECT_NEAR(gain_at(pattern["azimuth_cut"], azimuth), best + 10 * std::log10(cosine * cosine), 0.1)
            << azimuth;
    }
    EXPECT_LT(gain_at(pattern["azimuth_cut"], 90), best - 20);
    // 2.15 dBi: Balanis, Antenna Theory, 4.6.
    EXPECT_NEAR(pattern["gain_over_dipole_dB"].get<double>(),
                pattern["gain_low_angle_dBi"].get<double>() - 2.15, 0.005);
}

TEST_F(SiteAnswers, PatternOverGroundEndsAtTheHorizonAndIsThatOfThePoint) {
    const json pattern = json::parse(
        run({"pattern", soil, "--frequency", "14.1MHz", "--step", "15deg", "--dipole-height", "8m", "--json"})
            .out);
    const json point =
        json::parse(run({"point", soil, "--frequency", "14.1MHz", "--dipole-height", "8m", "--json"}).out);
    for (const char* key : {"efficiency", "gain_max_dBi", "gain_low_angle_dBi", "gain_over_dipole_dB"}) {
        EXPECT_NEAR(pattern[key].get<double>(), point[key].get<double>(), 1e-6) << key;
    }
    const json& rows = pattern["elevation_cut"]["rows"];
    EXPECT_EQ(rows.size(), 13U);                            // 0 to 180 degrees
    EXPECT_LT(rows.front()["gain_dBi"].get<double>(), -60); // over soil nothing leaves along the horizon
    EXPECT_LT(rows.back()["gain_dBi"].get<double>(), -60);
    EXPECT_EQ(pattern["azimuth_cut"]["rows"].size(), 25U);
    EXPECT_NEAR(pattern["azimuth_cut"]["elevation_deg"].get<double>(), 15, 1e-9);
    double highest = -99; // the best azimuth at 15 degrees is what gain_low_angle_dBi names
    for (const json& row : pattern["azimuth_cut"]["rows"]) {
        highest = std::max(highest, row["gain_dBi"].get<double>());
    }
    EXPECT_NEAR(highest, pattern["gain_low_angle_dBi"].get<double>(), 1e-3);
    EXPECT_EQ(pattern["dipole"]["height_m"], 8.0);
}

TEST_F(SiteAnswers, PatternOnAPageHasBothCuts) {
    const std::string text = run({"pattern", soil, "--frequency", "14.1MHz"}).out;
    EXPECT_THAT(text, HasSubstr("which is what counts for distance"));
    EXPECT_THAT(text, HasSubstr("\nElevation, azimuth 0 degrees\n"));
    EXPECT_THAT(text, HasSubstr("\nAzimuth, elevation 15 degrees\n"));
    EXPECT_THAT(text, HasSubstr("a choke belongs at the loop"));
    const std::string csv = run({"pattern", soil, "--frequency", "14.1MHz", "--step", "30deg", "--csv"}).out;
    EXPECT_EQ(csv.find("cut,angle_deg,gain_dBi,dipole_gain_dBi\r\n"), 0U) << csv;
    EXPECT_EQ(std::count(csv.begin(), csv.end(), '\n'), 1 + 7 + 13);
}

TEST_F(SiteAnswers, HeightHasTheRowsAskedForAndEachIsThePoint) {
    const Result result = run({"height", soil, "--frequency", "14.1MHz", "--from", "0.5m", "--to", "2m",
                               "--points", "3", "--power", "20W", "--json"});
    EXPECT_EQ(result.status, 0) << result.err;
    const json height = json::parse(result.out);
    EXPECT_EQ(height["schema"], "loopwright-height-1");
    EXPECT_EQ(height["model"], "full-wave");
    ASSERT_EQ(height["rows"].size(), 3U);
    for (const json& row : height["rows"]) {
        support::expect_promised(row);
    }
    EXPECT_EQ(height["rows"][0]["lowest_point_m"], 0.5);
    EXPECT_NEAR(height["rows"][1]["lowest_point_m"].get<double>(), 1, 1e-12); // even in ratio
    EXPECT_EQ(height["rows"][2]["lowest_point_m"], 2.0);
    const json point =
        json::parse(run({"point", soil, "--frequency", "14.1MHz", "--power", "20W", "--json"}).out);
    const json& same = height["rows"][1];
    for (const char* part : {"radiation", "ground", "conductor", "capacitor", "total"}) {
        EXPECT_NEAR(same["resistance_ohm"][part].get<double>() / point["resistance_ohm"][part].get<double>(),
                    1, 1e-4)
            << part;
        EXPECT_GT(same["dissipation_W"][part].get<double>(), 0);
    }
    EXPECT_NEAR(same["capacitor_voltage_peak_V"].get<double>() /
                    point["capacitor_voltage_peak_V"].get<double>(),
                1, 1e-4);
    EXPECT_GT(height["rows"][0]["resistance_ohm"]["ground"].get<double>(),
              2 * height["rows"][2]["resistance_ohm"]["ground"].get<double>());
}

TEST_F(SiteAnswers, HeightNeedsAGroundAndARangeThatAscends) {
    const Result none = run({"height", free, "--frequency", "14.1MHz", "--json"});
    EXPECT_EQ(none.status, 1);
    EXPECT_THAT(none.err, HasSubstr("ground"));
    EXPECT_EQ(run({"height", soil, "--frequency", "14.1MHz", "--from", "3m", "--to", "1m"}).status, 2);
    EXPECT_EQ(run({"height", soil, "--frequency", "14.1MHz", "--from", "1cm"}).status, 2);
    EXPECT_EQ(run({"height", soil}).status, 2);
}

// On the axis of a ring of uniform current I: H = I a^2/(2 R^3) |1 + jkR|, R^2 = a^2 + y^2 (exact; the field
// of a current element, J. D. Kraus, Antennas, ch. 5, from memory, summed round the ring). The current of a
// small loop falls toward the capacitor by a per cent or less at 3.65 MHz.
TEST_F(SiteAnswers, FieldOnTheAxisIsThatOfARing) {
    const json field = json::parse(run({"field", free, "--frequency", "3.65MHz", "--power", "5W", "--at",
                                        "0m,1m,0m", "--at", "0m,3m,0m", "--json"})
                                       .out);
    const json point =
        json::parse(run({"point", free, "--frequency", "3.65MHz", "--power", "5W", "--json"}).out);
    const double current = point["loop_current_rms_A"].get<double>();
    const double k = 2 * std::acos(-1.0) * 3.65e6 / 299792458.0;
    ASSERT_EQ(field["points"].size(), 2U);
    for (const json& row : field["points"]) {
        const double distance = std::hypot(0.5, row["position_m"][1].get<double>());
        const double wanted = current * 0.25 / (2 * std::pow(distance, 3)) * std::hypot(1, k * distance);
        EXPECT_NEAR(row["magnetic_field_rms_A_per_m"].get<double>() / wanted, 1, 0.01) << distance;
        EXPECT_GT(row["electric_field_rms_V_per_m"].get<double>(), 0);
    }
}

} // namespace
} // namespace loopwright::cli_test
