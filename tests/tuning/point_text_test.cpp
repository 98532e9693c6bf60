// Calibration points from text: what is taken, and that a refusal names line, value and what is accepted.
#include "tuning/point_text.hpp"

#include "base/error.hpp"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

namespace loopwright::tuning {
namespace {

using testing::HasSubstr;

void expect_points(const std::string& text, double reading, double frequency_Hz) {
    const auto points = read_points(text);
    ASSERT_EQ(points.size(), 1U) << text;
    EXPECT_DOUBLE_EQ(points[0].reading, reading) << text;
    EXPECT_NEAR(points[0].frequency.value.value(), frequency_Hz, 1e-6 * frequency_Hz / 1e3) << text;
}

std::string refusal(const std::string& text) {
    try {
        static_cast<void>(read_points(text, "my.csv"));
    } catch (const base::InputError& error) {
        return error.what();
    }
    return "taken";
}

TEST(PointText, TakesEverySeparatorAndDecimalSign) {
    expect_points("45.5, 14.074 MHz", 45.5, 14.074e6);
    expect_points("45.5;14.074MHz\n", 45.5, 14.074e6);
    expect_points("45,5;14,074 MHz\r\n", 45.5, 14.074e6);
    expect_points("45,5\t14074 kHz\r", 45.5, 14.074e6);
    expect_points("45.5 14.074 MHz", 45.5, 14.074e6);
    expect_points("-3;14.074 MHz", -3, 14.074e6);
    expect_points("\"45,5\";\"14,074 MHz\"", 45.5, 14.074e6);
    expect_points("14.074 MHz; 45.5", 45.5, 14.074e6);
}

TEST(PointText, AHeaderNamesColumnsAndUnit) {
    expect_points("reading,frequency_MHz\n45.5,14.074\n", 45.5, 14.074e6);
    expect_points("Frequency (kHz);Dial\n14074;45,5", 45.5, 14.074e6);
    expect_points("\xEF\xBB\xBFreading\tfrequency_Hz\tremark\n45.5\t14074000\tin the garden", 45.5, 14.074e6);
    expect_points("reading;frequency_kHz\n45.5;14.074 MHz", 45.5, 14.074e6); // its own unit goes first
    expect_points("# measured at dusk\n\nturns;f\n45.5;14.074 MHz\n", 45.5, 14.074e6);
}

TEST(PointText, KeepsWhatWasTyped) {
    EXPECT_EQ(read_points("45.5; 14,074 MHz")[0].frequency.text, "14,074 MHz");
    EXPECT_EQ(read_points("reading;frequency_MHz\n1;7")[0].frequency.text, "");
}

TEST(PointText, RefusalsNameLineValueAndWhatIsAccepted) {
    const std::string bare = refusal("reading;frequency\n1; 7 MHz\n45.5;14.074\n");
    EXPECT_THAT(bare, HasSubstr("line 3 of my.csv"));
    EXPECT_THAT(bare, HasSubstr("14.074"));
    EXPECT_THAT(bare, HasSubstr("frequency_MHz"));
    EXPECT_THAT(refusal("45,5,14,074 MHz"), HasSubstr("decimal commas with a semicolon"));
    EXPECT_THAT(refusal("1; 7 MHz\nleft; 14 MHz"), HasSubstr("line 2 of my.csv: 'left'"));
    EXPECT_THAT(refusal("1; 7 W"), HasSubstr("'7 W'"));
    EXPECT_THAT(refusal("1; 7 MHz; 3"), HasSubstr("line 1"));
    EXPECT_THAT(refusal("1; 7 Hz"), HasSubstr("10 kHz to 1 GHz"));
    EXPECT_THAT(refusal("apples;pears\n1;2"), HasSubstr("header"));
    EXPECT_THAT(refusal(" \n# nothing\n"), HasSubstr("no point"));
    EXPECT_THAT(refusal("1; \xFF MHz"), HasSubstr("UTF-8"));
    EXPECT_THAT(refusal("1/0; 7 MHz"), HasSubstr("line 1"));
    std::string many;
    for (int i = 0; i < 1001; ++i) {
        many += "1; 7 MHz\n";
    }
    EXPECT_THAT(refusal(many), HasSubstr("line 1001"));
}

TEST(PointText, WrittenPointsReadBack) {
    const auto points = read_points("45.5; 14.074 MHz\n0.1; 7.0001 MHz");
    const auto again = read_points(write_points(points));
    ASSERT_EQ(again.size(), 2U);
    for (std::size_t i = 0; i < 2; ++i) {
        EXPECT_EQ(again[i].reading, points[i].reading);
        EXPECT_EQ(again[i].frequency.value, points[i].frequency.value);
    }
}

} // namespace
} // namespace loopwright::tuning
