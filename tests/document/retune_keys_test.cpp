// The keys that setting the loop stands on: dial, hand-made capacitor, bands of a fixed capacitor, working
// frequencies, calibration.
#include "base/error.hpp"
#include "design/made.hpp"
#include "document/design_file.hpp"
#include "document/file_text.hpp"
#include "sample_text.hpp"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

namespace loopwright::document {
namespace {

using testing::HasSubstr;

std::string retune_refusal(const std::string& part, const std::string& other) {
    return refusal_of(with(full_text(), part, other));
}

std::string with_capacitor(const std::string& capacitor) {
    return with(least_text, R"({"minimum": "12 pF", "maximum": "150 pF"})", capacitor);
}

const std::string trombone = R"("made": {"kind": "trombone", "least_overlap": "10 mm",
 "most_overlap": "300 mm", "inner_diameter": "15 mm", "outer_diameter": "20 mm"})";

} // namespace

TEST(RetuneKeys, AreReadWithWhatWasTyped) {
    const design::Design d = read_design(full_text());
    ASSERT_TRUE(d.capacitor.dial);
    const design::Dial& dial = *d.capacitor.dial;
    EXPECT_EQ(dial.law, design::DialLaw::table);
    EXPECT_EQ(dial.scale, design::DialScale::turns);
    EXPECT_EQ(dial.at_minimum, 12);
    EXPECT_EQ(dial.at_maximum, 0.5);
    ASSERT_EQ(dial.table.size(), 3U);
    EXPECT_EQ(dial.table[1].reading, 4.5);
    EXPECT_EQ(dial.table[2].capacitance.value, units::picofarads(150));
    EXPECT_EQ(dial.hand_step, 0.02);
    EXPECT_EQ(dial.reduction, 6);
    EXPECT_EQ(dial.backlash, 0.05);
    ASSERT_TRUE(d.capacitor.made);
    const design::MadeCapacitor& made = *d.capacitor.made;
    EXPECT_EQ(made.kind, design::MadeKind::plates);
    EXPECT_EQ(made.least_overlap.value, units::millimetres(5));
    EXPECT_EQ(made.most_overlap.value, units::millimetres(115));
    EXPECT_EQ(made.plates, 5);
    EXPECT_EQ(made.pairs, 3);
    EXPECT_EQ(made.outer_diameter.value, units::millimetres(21));
    EXPECT_NEAR(d.capacitor.temperature_coefficient->value.value(), 50e-6, 1e-18);
    EXPECT_EQ(d.capacitor.added[0].bands, (std::vector<std::string>{"80m", "160m"}));
    EXPECT_TRUE(d.capacitor.added[1].bands.empty());
    ASSERT_EQ(d.station.working_frequencies.size(), 2U);
    EXPECT_EQ(d.station.working_frequencies[0].use, "local net");
    EXPECT_EQ(d.station.working_frequencies[1].frequency.value, units::megahertz(14.2));
    ASSERT_TRUE(d.calibration);
    EXPECT_EQ(d.calibration->date, "2026-05-01");
    ASSERT_EQ(d.calibration->points.size(), 2U);
    EXPECT_EQ(d.calibration->points[0].reading, 3.25);
    EXPECT_EQ(d.calibration->points[1].frequency.value, units::megahertz(14.1));
    EXPECT_EQ(write_design(d), full_text());
}

TEST(RetuneKeys, AreNoneOrTheirDefaultsWhereLeftOut) {
    const design::Design d = read_design(least_text);
    EXPECT_FALSE(d.capacitor.dial || d.capacitor.made || d.capacitor.temperature_coefficient ||
                 d.calibration);
    EXPECT_TRUE(d.station.working_frequencies.empty());
    const design::Design plain =
        read_design(with_capacitor(R"({"minimum": "12 pF", "maximum": "150 pF", "dial": {}})"));
    EXPECT_EQ(*plain.capacitor.dial, design::Dial());
    EXPECT_EQ(read_design(write_design(plain)).capacitor.dial, plain.capacitor.dial);
}

TEST(RetuneKeys, RangeFollowsFromTheDimensionsAndStaysOutOfTheFile) {
    const design::Design d = read_design(with_capacitor("{" + trombone + "}"));
    const auto range = design::made_range(*d.capacitor.made);
    // 2 pi eps0 l / ln(b/a), two in series, 300 mm and ln(20/15): 29.0 pF before the ends are counted.
    EXPECT_GT(range.high.value(), 29.0e-12);
    EXPECT_EQ(d.capacitor.minimum.value, range.low);
    EXPECT_EQ(d.capacitor.maximum.value, range.high);
    const std::string text = write_design(d);
    EXPECT_EQ(text.find("\"minimum\""), std::string::npos);
    EXPECT_EQ(text.find("\"maximum\""), std::string::npos);
    EXPECT_EQ(read_design(text).capacitor.minimum, d.capacitor.minimum);
    EXPECT_EQ(write_design(read_design(text)), text);
    // One bound as measured, the other by the dimensions.
    const design::Design half = read_design(with_capacitor("{\"maximum\": \"31 pF\", " + trombone + "}"));
    EXPECT_EQ(half.capacitor.maximum.text, "31 pF");
    EXPECT_EQ(half.capacitor.minimum.value, range.low);
    const design::Design back = read_design(write_design(half));
    EXPECT_EQ(back.capacitor.minimum, half.capacitor.minimum);
    EXPECT_EQ(back.capacitor.maximum, half.capacitor.maximum);
}

TEST(RetuneKeys, BoundsFarFromTheDimensionsAreRefused) {
    EXPECT_EQ(refusal_of(with_capacitor("{\"maximum\": \"33 pF\", " + trombone + "}")), "accepted");
    EXPECT_THAT(refusal_of(with_capacitor("{\"maximum\": \"40 pF\", " + trombone + "}")),
                HasSubstr("capacitor.maximum: '40 pF' is not accepted; from 2"));
    EXPECT_THAT(refusal_of(with_capacitor("{\"minimum\": \"8 pF\", " + trombone + "}")),
                HasSubstr("within 20 % of what the dimensions in capacitor.made give; or leave it out"));
}

TEST(RetuneKeys, RefusalsOfTheDial) {
    EXPECT_THAT(
        retune_refusal("\"law\": \"table\"", "\"law\": \"cosine\""),
        HasSubstr("capacitor.dial.law: 'cosine' is not accepted; capacitance, frequency, wavelength or "
                  "table"));
    EXPECT_THAT(retune_refusal("\"turns\",", "\"hours\","), HasSubstr("capacitor.dial.scale: 'hours'"));
    EXPECT_THAT(retune_refusal("\"reading\": 4.5", "\"reading\": 12"),
                HasSubstr("capacitor.dial.table[1].reading: '12' is not accepted; readings that go one way"));
    EXPECT_THAT(retune_refusal("\"reading\": 0.5", "\"reading\": 5"),
                HasSubstr("capacitor.dial.table[2].reading: '5' is not accepted; readings that go one way"));
    EXPECT_THAT(retune_refusal("\"70 pF\"", "\"13 pF\""),
                HasSubstr("capacitor.dial.table[1].capacitance: '13 pF'"));
    EXPECT_THAT(retune_refusal("\"70 pF\"", "\"155 pF\""),
                HasSubstr("capacitor.dial.table[1].capacitance: '155 pF' is not accepted; a capacitance from "
                          "12 pF to 150 pF"));
    EXPECT_THAT(retune_refusal("\"hand_step\": 0.02", "\"hand_step\": 0"),
                HasSubstr("capacitor.dial.hand_step: '0'"));
    EXPECT_THAT(retune_refusal("\"reduction\": 6", "\"reduction\": 0"),
                HasSubstr("capacitor.dial.reduction: '0'"));
    EXPECT_THAT(retune_refusal("\"backlash\": 0.05", "\"backlash\": -1"),
                HasSubstr("capacitor.dial.backlash: '-1'"));
    const auto dial = [](const std::string& keys) {
        return refusal_of(
            with_capacitor(R"({"minimum": "12 pF", "maximum": "150 pF", "dial": {)" + keys + "}}"));
    };
    EXPECT_THAT(dial(R"("scale": "turns")"), HasSubstr("capacitor.dial.at_minimum: this part is missing"));
    EXPECT_THAT(dial(R"("law": "table")"), HasSubstr("capacitor.dial.table: this part is missing"));
    EXPECT_THAT(dial(R"("law": "table", "table": [])"),
                HasSubstr("capacitor.dial.table: '0 entries' is not accepted; 2 entries or more"));
    EXPECT_THAT(dial(R"("at_maximum": 0)"), HasSubstr("capacitor.dial.at_maximum: '0' is not accepted; "
                                                      "another reading than at_minimum (0)"));
    EXPECT_THAT(refusal_of(with_capacitor(R"({"minimum": "12 pF", "maximum": "12 pF", "dial": {}})")),
                HasSubstr("capacitor.dial: 'a dial' is not accepted; no dial"));
}

TEST(RetuneKeys, RefusalsOfDimensionsBandsFrequenciesAndPoints) {
    EXPECT_THAT(
        retune_refusal("\"11.5 cm\"", "\"4 mm\""),
        HasSubstr("capacitor.made.most_overlap: '4 mm' is not accepted; more than the least overlap"));
    EXPECT_THAT(retune_refusal("\"plates\": 5", "\"plates\": 1"), HasSubstr("capacitor.made.plates: '1'"));
    EXPECT_THAT(retune_refusal("\"kind\": \"plates\"", "\"kind\": \"book\""),
                HasSubstr("capacitor.made.kind: 'book' is not accepted; plates or trombone"));
    EXPECT_THAT(retune_refusal("\"relative_permittivity\": 1\n", "\"relative_permittivity\": 0.5\n"),
                HasSubstr("capacitor.made.relative_permittivity: '0.5'"));
    EXPECT_THAT(refusal_of(with(with_capacitor("{" + trombone + "}"), "\"20 mm\"", "\"15 mm\"")),
                HasSubstr("capacitor.made.outer_diameter: '15 mm' is not accepted; more than the inner"));
    EXPECT_THAT(refusal_of(with(with_capacitor("{" + trombone + "}"), "\"inner_diameter\": \"15 mm\", ", "")),
                HasSubstr("capacitor.made.inner_diameter: this part is missing"));
    EXPECT_THAT(retune_refusal("\"50 ppm/K\"", "\"0.05 /K\""),
                HasSubstr("capacitor.temperature_coefficient: '0.05 /K'"));
    EXPECT_THAT(retune_refusal("\"160m\"", "\"81m\""),
                HasSubstr("capacitor.added[0].bands[1]: '81m' is not accepted; a band: 160m"));
    EXPECT_THAT(retune_refusal("\"160m\"", "\"80M\""),
                HasSubstr("capacitor.added[0].bands[1]: '80m' is not accepted; each band once"));
    EXPECT_THAT(retune_refusal("\"14,2 MHz\"", "\"1 kHz\""),
                HasSubstr("station.working_frequencies[1].frequency: '1 kHz'"));
    EXPECT_THAT(retune_refusal("\"7.05 MHz\"", "\"0 MHz\""),
                HasSubstr("calibration.points[0].frequency: '0 MHz'"));
    EXPECT_THAT(retune_refusal("\"reading\": 11,", "\"reading\": 1e7,"),
                HasSubstr("calibration.points[1].reading: '1"));
    EXPECT_THAT(retune_refusal("\"reading\": 11,", ""),
                HasSubstr("calibration.points[1].reading: this part"));
}

} // namespace loopwright::document
