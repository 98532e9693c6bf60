// Working frequencies against the edges of the bands, and the rules of sidebands.
#include "band/working_frequencies.hpp"

#include "band/kilohertz.hpp"
#include "base/error.hpp"

#include <cstdio>
#include <fstream>
#include <gtest/gtest.h>
#include <map>
#include <sstream>

namespace loopwright::band {
namespace {

struct Edges {
    const char* band;
    double low_kHz[3], high_kHz[3]; // regions 1, 2, 3
};

// ITU Radio Regulations, article 5, table of allocations (read in secondary copies; region 2 also 47 CFR
// 97.301; 60 m: WRC-15; 6 m in region 1: WRC-19).
const Edges radio_regulations[] = {
    {"160m", {1810, 1800, 1800}, {1850, 2000, 2000}},
    {"80m", {3500, 3500, 3500}, {3800, 4000, 3900}},
    {"60m", {5351.5, 5351.5, 5351.5}, {5366.5, 5366.5, 5366.5}},
    {"40m", {7000, 7000, 7000}, {7200, 7300, 7200}},
    {"30m", {10100, 10100, 10100}, {10150, 10150, 10150}},
    {"20m", {14000, 14000, 14000}, {14350, 14350, 14350}},
    {"17m", {18068, 18068, 18068}, {18168, 18168, 18168}},
    {"15m", {21000, 21000, 21000}, {21450, 21450, 21450}},
    {"12m", {24890, 24890, 24890}, {24990, 24990, 24990}},
    {"10m", {28000, 28000, 28000}, {29700, 29700, 29700}},
    {"6m", {50000, 50000, 50000}, {52000, 54000, 54000}},
};

TEST(WorkingFrequencies, EdgesOfEveryRegionAreThoseOfTheRadioRegulations) {
    for (const int region : {1, 2, 3}) {
        ASSERT_EQ(bands_of(region).size(), std::size(radio_regulations));
        for (const Edges& edges : radio_regulations) {
            const auto band = find_band(region, edges.band);
            ASSERT_TRUE(band) << edges.band;
            EXPECT_EQ(kHz(band->low), edges.low_kHz[region - 1]) << edges.band << " region " << region;
            EXPECT_EQ(kHz(band->high), edges.high_kHz[region - 1]) << edges.band << " region " << region;
        }
    }
}

TEST(WorkingFrequencies, EveryWindowLiesInsideTheRadioRegulations) {
    for (const int region : {1, 2, 3}) {
        for (const Edges& edges : radio_regulations) {
            const auto rows = working_frequencies(region, edges.band);
            EXPECT_GE(rows.size(), 4U) << edges.band;
            units::Frequency last{};
            for (const WorkingFrequency& row : rows) {
                const double half = kHz(find_emission(row.emission)->working_width) / 2;
                EXPECT_GE(kHz(row.tuned) - half, edges.low_kHz[region - 1])
                    << edges.band << ' ' << row.emission << " region " << region;
                EXPECT_LE(kHz(row.tuned) + half, edges.high_kHz[region - 1])
                    << edges.band << ' ' << row.emission << " region " << region;
                EXPECT_GE(row.tuned, last) << "not ascending";
                last = row.tuned;
                EXPECT_EQ(row.band, edges.band);
                EXPECT_FALSE(row.source.empty());
                EXPECT_NE(row.status, Status::computed);
            }
        }
    }
}

// Common practice, no source: voice in the lower sideband below 10 MHz but for 60 m, digital always in the
// upper one. The middle of the audio passband lies 1.5 kHz from the dial.
TEST(WorkingFrequencies, TheLoopIsTunedToTheMiddleOfTheWindow) {
    int seen = 0;
    for (const WorkingFrequency& row : working_frequencies(1, "40m")) {
        if (row.emission == "ft8") {
            EXPECT_DOUBLE_EQ(kHz(row.tuned), 7075.5);
            EXPECT_EQ(row.sideband, Sideband::upper);
        } else if (row.emission == "ssb") {
            EXPECT_DOUBLE_EQ(kHz(row.tuned), 7088.5);
            EXPECT_EQ(row.sideband, Sideband::lower);
        } else if (row.emission == "cw") {
            EXPECT_DOUBLE_EQ(kHz(row.tuned), 7030);
            EXPECT_EQ(row.sideband, Sideband::none);
        } else {
            continue;
        }
        ++seen;
    }
    EXPECT_EQ(seen, 3);
    const Emission voice = *find_emission("ssb");
    EXPECT_EQ(sideband_of(voice, units::kilohertz(5363)), Sideband::upper);
    EXPECT_EQ(sideband_of(voice, units::kilohertz(14285)), Sideband::upper);
    EXPECT_EQ(sideband_of(*find_emission("wspr"), units::kilohertz(3568.6)), Sideband::upper);
}

TEST(WorkingFrequencies, EveryBandHasDigitalAndTelegraphyAndAllButThirtyMetresVoice) {
    for (const int region : {1, 2, 3}) {
        for (const Band& band : bands_of(region)) {
            std::map<UseKind, int> kinds;
            for (const WorkingFrequency& row : working_frequencies(region, band.name)) {
                ++kinds[row.kind];
            }
            EXPECT_GE(kinds[UseKind::digital], 2) << band.name;
            EXPECT_EQ(kinds[UseKind::telegraphy], 1) << band.name;
            EXPECT_EQ(kinds[UseKind::voice], band.name == "30m" ? 0 : 1) << band.name;
        }
    }
    EXPECT_TRUE(working_frequencies(1, "41m").empty());
    EXPECT_THROW((void)working_frequencies(0, "40m"), base::InputError);
}

// The table "Customary telegraphy and voice frequencies" of the reference page: region by region, with state.
TEST(WorkingFrequencies, TheReferencePageSaysTheSame) {
    std::ifstream file(LOOPWRIGHT_SOURCE_DIR "/docs/reference/bands.md");
    std::stringstream text;
    text << file.rdbuf();
    const auto known = [&](const std::string& line) { return text.str().find(line) != std::string::npos; };
    for (const Band& band : bands_of(1)) {
        for (const char* id : {"cw", "ssb"}) {
            std::string line = "| " + band.name + " " + id + " |";
            bool found = false; // 30 m has no voice
            for (const int region : {1, 2, 3}) {
                for (const WorkingFrequency& row : working_frequencies(region, band.name)) {
                    if (row.emission == id) {
                        char cell[64];
                        std::snprintf(cell, sizeof cell, " %.10g, %s |", kHz(row.dial), name_of(row.status));
                        line += cell;
                        found = true;
                    }
                }
            }
            EXPECT_TRUE(!found || known(line)) << line;
        }
    }
}

} // namespace
} // namespace loopwright::band
