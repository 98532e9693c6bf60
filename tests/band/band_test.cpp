#include "band/band.hpp"
#include "band/emission.hpp"
#include "band/kilohertz.hpp"
#include "base/error.hpp"

#include <cstdio>
#include <fstream>
#include <gtest/gtest.h>
#include <map>
#include <sstream>

namespace loopwright::band {
namespace {

std::vector<std::string> cells_of(const std::string& line) {
    std::vector<std::string> cells;
    std::istringstream stream(line);
    std::string cell;
    std::getline(stream, cell, '|');
    while (std::getline(stream, cell, '|')) {
        const auto first = cell.find_first_not_of(' ');
        cells.push_back(
            first == std::string::npos ? "" : cell.substr(first, cell.find_last_not_of(' ') + 1 - first));
    }
    return cells;
}

// The rows of docs/reference/bands.md that start with one of the names.
std::map<std::string, std::vector<std::string>> documented(const std::vector<std::string>& names) {
    std::ifstream file(LOOPWRIGHT_SOURCE_DIR "/docs/reference/bands.md");
    std::map<std::string, std::vector<std::string>> rows;
    for (std::string line; std::getline(file, line);) {
        const auto cells = cells_of(line);
        if (cells.size() > 4 && std::find(names.begin(), names.end(), cells[0]) != names.end()) {
            rows[cells[0]] = cells;
        }
    }
    return rows;
}

} // namespace

// 47 CFR 97.301(b)-(d) and 97.303 (region 2; read in a secondary copy) [kHz].
TEST(Bands, RegionTwoIsThatOfPart97) {
    const std::map<std::string, std::pair<double, double>> rule{
        {"160m", {1800, 2000}},  {"80m", {3500, 4000}},   {"40m", {7000, 7300}},    {"30m", {10100, 10150}},
        {"20m", {14000, 14350}}, {"17m", {18068, 18168}}, {"15m", {21000, 21450}},  {"12m", {24890, 24990}},
        {"10m", {28000, 29700}}, {"6m", {50000, 54000}},  {"60m", {5351.5, 5366.5}}};
    ASSERT_EQ(bands_of(2).size(), rule.size());
    for (const Band& band : bands_of(2)) {
        EXPECT_EQ(kHz(band.low), rule.at(band.name).first) << band.name;
        EXPECT_EQ(kHz(band.high), rule.at(band.name).second) << band.name;
    }
}

// ADIF 3.1.7, band enumeration (limits in MHz): every regional band lies inside.
TEST(Bands, EveryRegionLiesInsideTheAdifLimits) {
    const std::map<std::string, std::pair<double, double>> adif{
        {"160m", {1.8, 2.0}},     {"80m", {3.5, 4.0}},    {"60m", {5.06, 5.45}},     {"40m", {7.0, 7.3}},
        {"30m", {10.1, 10.15}},   {"20m", {14.0, 14.35}}, {"17m", {18.068, 18.168}}, {"15m", {21.0, 21.45}},
        {"12m", {24.890, 24.99}}, {"10m", {28.0, 29.7}},  {"6m", {50, 54}}};
    for (const int region : {1, 2, 3}) {
        double last = 0;
        for (const Band& band : bands_of(region)) {
            EXPECT_GE(kHz(band.low), adif.at(band.name).first * 1e3 - 1e-6) << band.name;
            EXPECT_LE(kHz(band.high), adif.at(band.name).second * 1e3 + 1e-6) << band.name;
            EXPECT_LT(band.low, band.high);
            EXPECT_GT(kHz(band.low), last) << "not from 160 m upward";
            last = kHz(band.high);
            EXPECT_FALSE(band.source.empty());
        }
    }
}

TEST(Bands, CustomaryDialsWithTheirWindowLieInsideTheBand) {
    for (const int region : {1, 2, 3}) {
        for (const Band& band : bands_of(region)) {
            for (const Emission& emission : emissions()) {
                const double dial = kHz(usual_dial(region, band, emission.id));
                EXPECT_GE(dial, kHz(band.low)) << band.name << ' ' << emission.id;
                EXPECT_LE(dial + kHz(emission.centre_above_dial) + kHz(emission.working_width) / 2,
                          kHz(band.high))
                    << band.name << ' ' << emission.id;
            }
        }
    }
}

TEST(Bands, AreFoundByNameAndRegion) {
    EXPECT_EQ(find_band(1, "40m")->name, "40m");
    EXPECT_EQ(find_band(1, "40 M")->name, "40m");
    EXPECT_EQ(kHz(find_band(1, "40m")->high), 7200);
    EXPECT_EQ(kHz(find_band(2, "40m")->high), 7300);
    EXPECT_FALSE(find_band(1, "41m"));
    EXPECT_FALSE(find_band(1, ""));
    EXPECT_THROW((void)bands_of(0), base::InputError);
    EXPECT_THROW((void)find_band(4, "40m"), base::InputError);
    EXPECT_EQ(band_names(3).front(), "160m");
    EXPECT_EQ(kHz(usual_dial(3, *find_band(3, "80m"), "ft4")), 3568);
    EXPECT_EQ(kHz(usual_dial(1, *find_band(1, "80m"), "ft4")), 3575);
    EXPECT_EQ(kHz(usual_dial(1, *find_band(1, "40m"), "wspr")), 7038.6);
    EXPECT_EQ(kHz(usual_dial(1, *find_band(1, "40m"), "cw")), 7074);
}

TEST(Bands, TheReferencePageSaysTheSame) {
    const auto rows = documented(band_names(1));
    ASSERT_EQ(rows.size(), bands_of(1).size());
    for (const int region : {1, 2, 3}) {
        for (const Band& band : bands_of(region)) {
            char edges[64];
            std::snprintf(edges, sizeof edges, "%.10g-%.10g", kHz(band.low), kHz(band.high));
            EXPECT_EQ(rows.at(band.name).at(static_cast<std::size_t>(region)), edges) << band.name;
            std::snprintf(edges, sizeof edges, "%.10g", kHz(band.usual));
            EXPECT_EQ(rows.at(band.name).at(4), edges) << band.name;
        }
    }
}

// FCC OET Bulletin 65, Supplement B (Ed. 97-01), Table 2: telegraphy 40 %, teletype and carrier 100 %, voice
// 20 %, processed voice 50 %. Slot modes: published protocol descriptions (symbols x symbol length over slot
// length).
TEST(Emissions, DutyIsThatOfTheSources) {
    const std::map<std::string, double> duty{{"carrier", 1.0},
                                             {"cw", 0.4},
                                             {"ssb", 0.2},
                                             {"ssb_processed", 0.5},
                                             {"rtty", 1.0},
                                             {"ft8", 79 * 0.160 / 15},
                                             {"ft4", 105 / 20.8333 / 7.5},
                                             {"js8", 79 * 0.160 / 15},
                                             {"wspr", 162 / 1.4648 / 120}};
    for (const auto& [id, share] : duty) {
        const auto emission = find_emission(id);
        ASSERT_TRUE(emission) << id;
        EXPECT_NEAR(emission->keyed_share * emission->average_to_peak, share, 1e-4) << id;
    }
    EXPECT_EQ(find_emission("FT8")->id, "ft8");
    EXPECT_FALSE(find_emission("ft9"));
}

// ITU-R SM.1138 (from memory): A1A B = 20 baud, K = 5; J3E 3000 - 300 Hz; F1B 2M + 2DK, M = 45.45/2, D = 85,
// K = 1.2. FT8: 8 tones of 6.25 Hz; FT4: 4 tones of 20.8333 Hz; WSPR: 4 tones of 1.4648 Hz.
TEST(Emissions, WidthIsThatOfTheSources) {
    const std::map<std::string, double> width_Hz{
        {"cw", 20 * 5},      {"ssb", 3000 - 300},  {"rtty", 45.45 + 2 * 85 * 1.2},
        {"ft8", 8 * 6.25},   {"ft4", 4 * 20.8333}, {"wspr", 4 * 1.4648},
        {"psk31", 2 * 31.25}};
    for (const auto& [id, width] : width_Hz) {
        EXPECT_NEAR(find_emission(id)->occupied_width.value(), width, 0.6) << id;
    }
}

TEST(Emissions, HoldTogetherAndAreDocumented) {
    const auto rows = documented(emission_ids());
    ASSERT_EQ(rows.size(), emissions().size());
    EXPECT_EQ(emissions().front().id, "carrier");
    for (const Emission& emission : emissions()) {
        EXPECT_LE(emission.occupied_width, emission.working_width) << emission.id;
        EXPECT_GT(emission.occupied_width.value(), 0) << emission.id;
        EXPECT_TRUE(emission.keyed_share > 0 && emission.keyed_share <= 1);
        EXPECT_TRUE(emission.average_to_peak > 0 && emission.average_to_peak <= 1);
        EXPECT_FALSE(emission.width_source.empty() || emission.duty_source.empty());
        const auto& row = rows.at(emission.id);
        EXPECT_NEAR(std::stod(row.at(1)), emission.occupied_width.value(), 1e-9) << emission.id;
        EXPECT_NEAR(std::stod(row.at(2)), emission.working_width.value(), 1e-9) << emission.id;
        EXPECT_NEAR(std::stod(row.at(3)), emission.centre_above_dial.value(), 1e-9) << emission.id;
        EXPECT_NEAR(std::stod(row.at(4)), emission.keyed_share, 5e-5) << emission.id;
        EXPECT_NEAR(std::stod(row.at(5)), emission.average_to_peak, 1e-9) << emission.id;
    }
}

// Edges of region 1 by the Radio Regulations: 3500 to 3800 kHz, 7000 to 7200, 10100 to 10150.
TEST(Bands, NearestIsTheOneThatHoldsItOrTheNearestByRatio) {
    const auto nearest = [](int region, double kHz) {
        return bands_of(region)[nearest_band(region, units::kilohertz(kHz))].name;
    };
    for (const int region : {1, 2, 3}) {
        for (const Band& band : bands_of(region)) {
            EXPECT_EQ(bands_of(region)[nearest_band(region, band.low)].name, band.name);
            EXPECT_EQ(bands_of(region)[nearest_band(region, band.high)].name, band.name);
        }
    }
    EXPECT_EQ(nearest(1, 100), "160m");
    EXPECT_EQ(nearest(1, 500e3), "6m");
    EXPECT_EQ(nearest(1, 8520), "40m"); // sqrt(7200 * 10100) = 8527.6
    EXPECT_EQ(nearest(1, 8535), "30m");
    EXPECT_EQ(nearest(2, 8535), "40m"); // sqrt(7300 * 10100) = 8586.6
    EXPECT_THROW((void)nearest_band(4, units::megahertz(7)), base::InputError);
}

} // namespace loopwright::band
