// Coupling and feed line of a design file: every kind written and read back, and again.
#include "document/design_file.hpp"
#include "sample_text.hpp"

#include <gtest/gtest.h>

#include <random>

namespace loopwright::document {
namespace {

design::Design made(std::mt19937& dice) {
    std::uniform_real_distribution<double> share(0.01, 1.0);
    design::Design d;
    d.coupling.emplace();
    design::Coupling& c = *d.coupling;
    c.kind = static_cast<design::CouplingKind>(dice() % 3);
    c.diameter = units::metres(0.2 + 0.2 * share(dice));
    c.conductor_diameter = units::metres(0.001 + 0.003 * share(dice));
    c.axis_offset = units::metres(0.02 + 0.02 * share(dice));
    c.tap_length = units::metres(share(dice));
    c.tap_spacing = units::metres(0.02 + 0.07 * share(dice));
    if (dice() % 2 == 0) {
        c.series_capacitor = units::farads(1e-9 * share(dice));
    }
    c.turns = static_cast<int>(1 + dice() % 20);
    c.turn_inductance = units::henries(1e-6 * share(dice));
    c.core_q = 100 * share(dice);
    c.leakage_share = 0.1 * share(dice);
    if (dice() % 2 == 0) {
        design::FeedLine& line = d.feed_line.emplace();
        line.length = units::metres(20 * share(dice));
        line.impedance = units::ohms(20 + 100 * share(dice));
        for (int i = 0; i < static_cast<int>(dice() % 4); ++i) {
            line.loss.push_back({units::hertz(1e8 * share(dice)), units::DecibelPerMetre{share(dice)}});
        }
    }
    return d;
}

TEST(CouplingFile, WhatIsWrittenReadsBackTheSameForEveryKind) {
    std::mt19937 dice(20); // NOLINT(cert-msc51-cpp): the same cases every time
    for (int i = 0; i < 300; ++i) {
        const design::Design first = made(dice);
        const std::string text = write_design(first);
        const design::Design second = read_design(text);
        EXPECT_EQ(write_design(second), text) << text;
        EXPECT_EQ(second.coupling->kind, first.coupling->kind);
        EXPECT_EQ(second.coupling->tap_length.value, first.coupling->tap_length.value);
        EXPECT_EQ(second.coupling->turn_inductance.value, first.coupling->turn_inductance.value);
        EXPECT_EQ(second.coupling->core_q, first.coupling->core_q);
        ASSERT_EQ(second.feed_line.has_value(), first.feed_line.has_value());
        if (first.feed_line) {
            ASSERT_EQ(second.feed_line->loss.size(), first.feed_line->loss.size());
            for (std::size_t k = 0; k < first.feed_line->loss.size(); ++k) {
                EXPECT_EQ(second.feed_line->loss[k].loss.value, first.feed_line->loss[k].loss.value);
            }
        }
    }
}

TEST(CouplingFile, KeepsWhatWasTyped) {
    std::string text = whole_text;
    const std::string site = "  \"site\": {";
    text.insert(text.find(site), R"(  "feed_line": {
    "length": "30 ft",
    "impedance": "50 Ω",
    "loss": [
      {
        "frequency": "10 MHz",
        "loss": "1.2 dB/100ft"
      }
    ]
  },
)");
    EXPECT_EQ(write_design(read_design(text)), text);
    // 1.2 dB per 100 ft in dB per metre, by the definition of the foot.
    EXPECT_NEAR(read_design(text).feed_line->loss.front().loss.value.value(), 1.2 / 30.48, 1e-12);
}

TEST(CouplingFile, OldFilesHaveACouplingLoopAndNoFeedLine) {
    const design::Design d = read_design(whole_text);
    EXPECT_EQ(d.coupling->kind, design::CouplingKind::loop);
    EXPECT_FALSE(d.feed_line);
}

} // namespace
} // namespace loopwright::document
