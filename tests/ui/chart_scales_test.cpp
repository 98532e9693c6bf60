// Ticks, ranges and places of words: arithmetic that can be done by hand.
#include "charts/label_placer.hpp"
#include "charts/scales.hpp"

#include <gtest/gtest.h>

#include <algorithm>

namespace loopwright::charts {
namespace {

std::vector<std::string> texts(const std::vector<Tick>& ticks) {
    std::vector<std::string> all;
    all.reserve(ticks.size());
    for (const Tick& tick : ticks) {
        all.push_back(tick.text.toStdString());
    }
    return all;
}

TEST(ChartScales, LinearTicksAreRound) {
    EXPECT_EQ(texts(linear_ticks({0, 100}, 5)),
              (std::vector<std::string>{"0", "20", "40", "60", "80", "100"}));
    EXPECT_EQ(texts(linear_ticks({-25, 2}, 6)),
              (std::vector<std::string>{"−25", "−20", "−15", "−10", "−5", "0"}));
    EXPECT_EQ(texts(linear_ticks({14.0, 14.35}, 4)),
              (std::vector<std::string>{"14.0", "14.1", "14.2", "14.3"}));
}

TEST(ChartScales, LogarithmicTicksThinOutAsTheyMust) {
    EXPECT_EQ(texts(logarithmic_ticks({1.8, 54}, 9)),
              (std::vector<std::string>{"2", "3", "5", "7", "10", "20", "30", "50"}));
    EXPECT_EQ(texts(logarithmic_ticks({1.8, 54}, 5)), (std::vector<std::string>{"2", "5", "10", "20", "50"}));
    // Even the narrowest figure has two numbers and more: with one nobody can read the scale.
    EXPECT_EQ(texts(logarithmic_ticks({1.8, 54}, 2)), (std::vector<std::string>{"3", "10", "30"}));
    EXPECT_EQ(texts(logarithmic_ticks({0.001, 100}, 6)),
              (std::vector<std::string>{"0.001", "0.01", "0.1", "1", "10", "100"}));
    // Of thirteen decades every second gives seven numbers, every third five, every fourth three.
    EXPECT_EQ(logarithmic_ticks({1e-6, 1e6}, 7).size(), 7U);
    EXPECT_EQ(logarithmic_ticks({1e-6, 1e6}, 5).size(), 5U);
    EXPECT_EQ(logarithmic_ticks({1e-6, 1e6}, 4).size(), 3U);
    // A narrow range is divided evenly, so that a zoomed chart still has numbers.
    EXPECT_GE(logarithmic_ticks({14.0, 14.35}, 6).size(), 3U);
}

TEST(ChartScales, RoundSpanHoldsTheDataAndStaysThroughSmallEdits) {
    const Span data{0.013, 0.82};
    const Span span = round_span(data, true, {0, 0});
    EXPECT_DOUBLE_EQ(span.low, 0.01);
    EXPECT_DOUBLE_EQ(span.high, 1.0);
    EXPECT_EQ(round_span({0.021, 0.79}, true, span), span);
    EXPECT_NE(round_span({0.021, 1.2}, true, span), span); // data left it
    EXPECT_NE(round_span({0.3, 0.5}, true, span), span);   // data fill too little of it
    const Span flat = round_span({5, 5}, false, {0, 0});
    EXPECT_LT(flat.low, flat.high);
    EXPECT_LE(flat.low, 5);
    EXPECT_GE(flat.high, 5);
}

TEST(ChartScales, ClampedSpanStaysInsideAndKeepsAWidth) {
    const Span whole{1.8e6, 54e6};
    EXPECT_EQ(clamped_span({1e5, 1e9}, whole), whole);
    EXPECT_EQ(clamped_span({20e6, 10e6}, whole), (Span{10e6, 20e6})); // reversed
    const Span narrow = clamped_span({14e6, 14e6}, whole);
    EXPECT_NEAR(narrow.high - narrow.low, 0.01 * 14e6, 1);
    for (const Span wanted : {Span{60e6, 70e6}, Span{1, 2}, Span{1.8e6, 1.8e6}, Span{54e6, 54e6}}) {
        const Span span = clamped_span(wanted, whole);
        EXPECT_GE(span.low, whole.low);
        EXPECT_LE(span.high, whole.high);
        EXPECT_GT(span.high, span.low * 1.005);
    }
}

TEST(ChartLabels, PlacerPrefersWhatCoversNothing) {
    LabelPlacer placer(QRectF(0, 0, 200, 100));
    placer.avoid(QPolygonF{QPointF(0, 50), QPointF(200, 50)});
    const QRectF on_line(10, 45, 60, 10), free_room(10, 70, 60, 10);
    EXPECT_EQ(placer.place({on_line, free_room}), free_room);
    // Now taken: the line is the lesser evil than other words.
    EXPECT_EQ(placer.place({free_room, on_line}), on_line);
    EXPECT_TRUE(placer.last_is_free());
    // Outside candidates are moved inside.
    EXPECT_TRUE(QRectF(0, 0, 200, 100).contains(placer.place({QRectF(190, -20, 60, 10)})));
}

} // namespace
} // namespace loopwright::charts
