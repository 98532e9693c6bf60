#include "base/error.hpp"
#include "document/design_file.hpp"
#include "document/file_text.hpp"
#include "sample_text.hpp"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <random>

namespace loopwright::document {
namespace {

using testing::AllOf;
using testing::HasSubstr;
using testing::StartsWith;

std::string whole_refusal(const std::string& part, const std::string& other) {
    return refusal_of(with(whole_text, part, other));
}

} // namespace

TEST(ReadDesign, TakesEveryFieldAndKeepsWhatWasTyped) {
    const design::Design d = read_design(whole_text);
    EXPECT_EQ(d.title, "Test loop");
    EXPECT_EQ(d.note, "invented example");
    EXPECT_EQ(d.loop.outline, design::Outline::circle);
    EXPECT_EQ(d.loop.size.value.value(), 0.9144); // 36 in, 25.4 mm to the inch
    EXPECT_EQ(d.loop.size.text, "36 in");
    EXPECT_EQ(d.loop.turns, 2);
    EXPECT_EQ(d.loop.turn_spacing.value.value(), 0.06);
    EXPECT_EQ(d.loop.turn_spacing.text, "2*30 mm");
    EXPECT_EQ(d.conductor.form, design::ConductorForm::tube);
    EXPECT_EQ(d.conductor.metal.name, "");
    EXPECT_EQ(d.conductor.metal.conductivity.value.value(), 58e6);
    EXPECT_EQ(d.conductor.temperature.value.value(), 293.15);
    ASSERT_EQ(d.joints.size(), 1U);
    EXPECT_EQ(d.joints[0].count, 2);
    EXPECT_EQ(d.joints[0].resistance.value.value(), 1e-3);
    EXPECT_EQ(d.capacitor.stray.value.value(), 3e-12);
    EXPECT_EQ(d.capacitor.loss.q, 1000);
    EXPECT_EQ(d.capacitor.rating.peak_voltage->value.value(), 2000);
    ASSERT_TRUE(d.coupling);
    EXPECT_EQ(d.coupling->diameter.value.value(), 0.18);
    EXPECT_EQ(d.site.ground.kind, design::GroundKind::soil);
    EXPECT_EQ(d.site.ground.relative_permittivity, 13);
    EXPECT_EQ(d.station.bands, (std::vector<std::string>{"40m", "30m", "20m"}));
}

TEST(ReadDesign, DefaultsAreThoseOfTheReferencePage) {
    const design::Design d = read_design(least_text);
    EXPECT_EQ(d.loop.turns, 1);
    EXPECT_EQ(d.loop.gap.value.value(), 0.02);
    EXPECT_EQ(d.loop.lead.value.value(), 0.05);
    EXPECT_EQ(d.loop.size_is, design::SizeMeaning::diameter);
    EXPECT_TRUE(d.joints.empty());
    EXPECT_EQ(d.capacitor.stray.value.value(), 0);
    EXPECT_FALSE(d.capacitor.loss.q);
    EXPECT_FALSE(d.capacitor.loss.series_resistance);
    EXPECT_FALSE(d.capacitor.rating.peak_voltage);
    EXPECT_FALSE(d.coupling);
    EXPECT_EQ(d.site.plane, design::Plane::vertical);
    EXPECT_EQ(d.site.ground.kind, design::GroundKind::free_space);
    EXPECT_EQ(d.station.power.value.value(), 5);
    EXPECT_EQ(d.station.region, 1);
    EXPECT_TRUE(d.station.bands.empty());
    EXPECT_EQ(d.conductor.temperature.value.value(), 293.15);
}

TEST(ReadDesign, OtherOutlinesFormsGroundsAndLosses) {
    const auto polygon = [](const std::string& more) {
        return read_design(with(least_text, R"("outline": "circle")", R"("outline": "polygon", )" + more))
            .loop;
    };
    EXPECT_EQ(polygon(R"("sides": 8)").size_is, design::SizeMeaning::across_flats);
    EXPECT_EQ(polygon(R"("sides": 5)").size_is, design::SizeMeaning::across_corners);
    EXPECT_EQ(polygon(R"("sides": 5.0, "size_is": "side")").size_is, design::SizeMeaning::side);
    EXPECT_TRUE(polygon(R"("sides": 4, "corner_down": true)").corner_down);
    const auto d = read_design(with(with(least_text, R"("outline": "circle", "size": "1 m")",
                                         R"("outline": "rectangle", "width": "1 m", "height": "60 cm")"),
                                    R"("form": "tube", "diameter": "22 mm", "wall": "1 mm")",
                                    R"("form": "strip", "width": "1 in", "thickness": "1/16 in")"));
    EXPECT_DOUBLE_EQ(d.conductor.thickness.value.value(), 0.0254 / 16);
    EXPECT_EQ(d.loop.height.value.value(), 0.6);
    const auto wire = read_design(with(least_text, R"("tube", "diameter": "22 mm", "wall": "1 mm")",
                                       R"("wire", "diameter": "10 AWG")"));
    EXPECT_NEAR(wire.conductor.diameter.value.value(), 2.588e-3, 0.0005e-3); // ASTM B258
    const auto with_ground = [](const std::string& ground) {
        return read_design(with(whole_text, R"({
      "relative_permittivity": 13,
      "conductivity": "5 mS/m"
    })",
                                ground))
            .site.ground;
    };
    EXPECT_EQ(with_ground(R"("perfect")").kind, design::GroundKind::perfect);
    EXPECT_EQ(with_ground(R"("free space")").kind, design::GroundKind::free_space);
    EXPECT_EQ(with_ground(R"("Sea Water")").class_name, "sea water");
    EXPECT_EQ(with_ground(R"("wet ground")").relative_permittivity, 30); // ITU-R P.527
    const auto loss = read_design(with(whole_text, R"("q": 1000)",
                                       R"("series_resistance": "20 mohm", "at": "10 MHz", "exponent": 0.5)"))
                          .capacitor.loss;
    EXPECT_FALSE(loss.q);
    EXPECT_EQ(loss.series_resistance->value.value(), 0.02);
    EXPECT_EQ(read_design(with(whole_text, R"("q": 1000)", R"("q": 1e12)")).capacitor.loss.q, 1e12);
    EXPECT_EQ(read_design(with(whole_text, "\"ft8\"", "\"FT8\"")).station.emission, "ft8");
}

TEST(ReadDesign, RefusesWithFileLinePathValueAndWhatIsAccepted) {
    EXPECT_EQ(
        whole_refusal("\"36 in\"", "\"36 V\""),
        "my.loop:8: loop.size: '36 V' is not accepted; a length with its unit, such as '0.9 m' or '36 in' "
        "(a voltage is given)");
    EXPECT_EQ(
        whole_refusal("\"36 in\"", "0.9"),
        "my.loop:8: loop.size: '0.9' is not accepted; a length in quotes, with its unit, such as '0.9 m' or "
        "'36 in'");
    EXPECT_EQ(whole_refusal("\"size\"", "\"siez\""),
              "my.loop:8: loop.siez: this key is not known in loop; the nearest known key is 'size'");
    // A key that another part has is told where it belongs.
    EXPECT_EQ(whole_refusal("\"gap\": \"20 mm\"", "\"peak_voltage\": \"2 kV\""),
              "my.loop:14: loop.peak_voltage: this key is not known in loop; it belongs in capacitor.rating");
    EXPECT_THAT(
        whole_refusal("\"gap\": \"20 mm\"", "\"diameter\": \"20 mm\""),
        HasSubstr("loop.diameter: this key is not known in loop; it belongs in conductor or coupling"));
    EXPECT_THAT(whole_refusal("\"gap\": \"20 mm\"", "\"site\": {}"),
                HasSubstr("it belongs in the document itself"));
    EXPECT_THAT(
        whole_refusal("\"title\"", "\"colour\""),
        AllOf(StartsWith("my.loop:4: colour: this key is not known here; known: format, version, title")));
    EXPECT_THAT(whole_refusal("\"gap\": \"20 mm\"", "\"gap\": \"20 mm\", \"gap\": \"30 mm\""),
                HasSubstr("my.loop:14: loop.gap: the key is there twice, first in line 14"));
    EXPECT_THAT(whole_refusal("    \"wall\": \"1 mm\",\n", ""),
                HasSubstr("conductor.wall: this part is missing; the wall thickness of the tube is needed"));
    EXPECT_THAT(whole_refusal("\"circle\"", "\"oval\""),
                HasSubstr("my.loop:7: loop.outline: 'oval' is not accepted; circle, polygon or rectangle"));
    EXPECT_THAT(whole_refusal("\"turns\": 2", "\"turns\": 2.5"),
                HasSubstr("loop.turns: '2.5' is not accepted; a whole number"));
    EXPECT_THAT(whole_refusal("\"turns\": 2", "\"turns\": \"2\""),
                HasSubstr("loop.turns: '2' is not accepted; a whole number without quotes"));
    EXPECT_THAT(whole_refusal("\"turns\": 2", "\"turns\": 1e300"), HasSubstr("a whole number"));
    EXPECT_THAT(whole_refusal("\"turns\": 2", "\"turns\": 13"), HasSubstr("my.loop:10: loop.turns: '13'"));
    EXPECT_THAT(whole_refusal("\"q\": 1000", "\"q\": \"1000\""),
                HasSubstr("capacitor.loss.q: '1000' is not accepted; a plain number"));
    EXPECT_THAT(whole_refusal("\"1 mm\"", "\"12 mm\""),
                HasSubstr("my.loop:19: conductor.wall: '12 mm' is not accepted; at most half"));
    EXPECT_THAT(whole_refusal("\"1 mΩ\"", "\"-1 mΩ\""),
                HasSubstr("my.loop:29: joints[0].resistance: '-1 mΩ'"));
    EXPECT_THAT(whole_refusal("\"30m\"", "\"31m\""),
                HasSubstr("my.loop:66: station.bands[1]: '31m' is not accepted; a band: 160m"));
    EXPECT_THAT(whole_refusal("\"30m\"", "30"),
                HasSubstr("station.bands[1]: '30' is not accepted; a text in quotes"));
    EXPECT_THAT(whole_refusal("\"kind\": \"loop\"", "\"kind\": \"wand\""),
                HasSubstr("coupling.kind: 'wand' is not accepted; loop, tap or transformer"));
    EXPECT_THAT(whole_refusal("\"kind\": \"loop\"", "\"kind\": \"tap\""),
                HasSubstr("coupling.tap_length: this part is missing"));
    EXPECT_THAT(whole_refusal("\"kind\": \"loop\"", "\"kind\": \"transformer\", \"turns\": 5"),
                HasSubstr("coupling.turn_inductance: this part is missing"));
    EXPECT_THAT(whole_refusal("\"site\": {", "\"feed_line\": {\"length\": \"5 V\"}, \"site\": {"),
                HasSubstr("feed_line.length: '5 V' is not accepted; a length"));
    EXPECT_THAT(whole_refusal("\"site\": {",
                              "\"feed_line\": {\"length\": \"5 m\", \"loss\": [{\"frequency\": "
                              "\"7 MHz\"}]}, \"site\": {"),
                HasSubstr("loss: this part is missing"));
    EXPECT_THAT(whole_refusal("\"Test loop\"", "null"),
                HasSubstr("title: 'null' is not accepted; a text in quotes"));
    EXPECT_THAT(whole_refusal("\"Test loop\"", "\"a\\u0007b\""), HasSubstr("without control characters"));
    EXPECT_THAT(whole_refusal("\"58 MS/m\"", "\"58 S/m\""),
                HasSubstr("my.loop:21: conductor.metal.conductivity: '58 S/m'"));
    EXPECT_THAT(refusal_of(with(least_text, "\"copper\"", "\"coper\"")),
                HasSubstr("my.loop:3: conductor.metal: 'coper' is not accepted; perhaps 'copper' is meant"));
    EXPECT_THAT(refusal_of(with(least_text, "\"copper\"", "12")), HasSubstr("conductor.metal: '12'"));
    EXPECT_THAT(refusal_of(with(least_text, "\"copper\"", "\"\"")), HasSubstr("conductor.metal: ''"));
    EXPECT_THAT(refusal_of(with(least_text, "\"22 mm\"", "\"1.2 m\"")),
                HasSubstr("conductor.diameter: '1.2 m' is not accepted"));
    EXPECT_THAT(refusal_of(with(least_text, R"({"minimum": "12 pF", "maximum": "150 pF"})", "[]")),
                HasSubstr("capacitor: 'a list' is not accepted; an object"));
    // A part that takes its default is refused at the line of what contains it.
    EXPECT_THAT(refusal_of(with(least_text, "\"1 m\"", "\"24 mm\"")), HasSubstr("my.loop:2: loop.gap"));
}

TEST(ReadDesign, MissingParts) {
    for (const char* part : {"format", "version", "loop", "conductor", "capacitor", "outline", "size", "form",
                             "diameter", "metal", "minimum", "maximum"}) {
        const std::string quoted = "\"" + std::string(part) + "\"";
        const std::string text = refusal_of(with(least_text, quoted + ":", "\"note\":"));
        EXPECT_NE(text, "accepted") << part;
    }
    const auto least = [](const std::string& part, const std::string& other) {
        return refusal_of(with(least_text, part, other));
    };
    EXPECT_THAT(least(R"(, "maximum": "150 pF")", ""),
                HasSubstr("my.loop:4: capacitor.maximum: this part is missing"));
    EXPECT_THAT(least(R"(, "size": "1 m")", ""), HasSubstr("loop.size: this part is missing"));
    EXPECT_THAT(
        least(R"("form": "tube", )", ""),
        HasSubstr("conductor.form: this part is missing; wire, tube, strip, braid or stranded is needed"));
    EXPECT_THAT(least(R"(, "metal": "copper")", ""), HasSubstr("conductor.metal: this part is missing"));
}

TEST(ReadDesign, FormatAndVersion) {
    EXPECT_THAT(whole_refusal("\"loopwright-design\"", "\"other\""),
                HasSubstr("my.loop:2: format: 'other' is not accepted; 'loopwright-design' is needed"));
    EXPECT_THAT(whole_refusal("\"version\": 1", "\"version\": 2"),
                HasSubstr("my.loop:3: version: the file is of version 2, newer than this program knows (1)"));
    EXPECT_THAT(whole_refusal("\"version\": 1", "\"version\": 2, \"new_key\": 0"),
                HasSubstr("newer than this program"));
    EXPECT_THAT(whole_refusal("\"version\": 1", "\"version\": 0"), HasSubstr("version: '0' is not accepted"));
    EXPECT_THAT(whole_refusal("\"version\": 1", "\"version\": 0.5"),
                HasSubstr("version: '0.5' is not accepted"));
    EXPECT_THAT(whole_refusal("\"version\": 1", "\"version\": \"1\""),
                HasSubstr("the plain number 1 is needed"));
    EXPECT_THAT(refusal_of("[]"), HasSubstr("it has to start with {"));
    EXPECT_THAT(refusal_of("3"), HasSubstr("it has to start with {"));
    EXPECT_THAT(refusal_of("{}"), HasSubstr("format: this part is missing"));
}

TEST(ReadDesign, WhatIsNoJson) {
    EXPECT_THAT(refusal_of(""), HasSubstr("the file is empty"));
    EXPECT_THAT(refusal_of(" \n\t"), HasSubstr("the file is empty"));
    EXPECT_THAT(whole_refusal("\"q\": 1000", "\"q\": NaN"),
                HasSubstr("my.loop:37: this is not JSON: NaN, Infinity"));
    EXPECT_THAT(whole_refusal("\"q\": 1000", "\"q\": -Infinity"),
                HasSubstr("my.loop:37: this is not JSON: NaN, Infinity"));
    EXPECT_THAT(whole_refusal("\"q\": 1000", "\"q\": 1e999"),
                HasSubstr("my.loop:37: the number 1e999 is too large"));
    EXPECT_THAT(whole_refusal("\"q\": 1000", "\"q\": 1000 // good"), HasSubstr("it has no comments"));
    EXPECT_THAT(whole_refusal("\"q\": 1000", "\"q\": 1000,"), HasSubstr("my.loop:38: this is not JSON: "));
    EXPECT_THAT(refusal_of(whole_text + "\n  x"), HasSubstr("text follows after the end"));
    EXPECT_THAT(refusal_of(whole_text + "{}"), HasSubstr("text follows after the end"));
    EXPECT_THAT(refusal_of(whole_text.substr(0, 200)), HasSubstr("this is not JSON"));
    EXPECT_THAT(refusal_of("hello"), HasSubstr("my.loop:1: this is not JSON"));
}

TEST(ReadDesign, WrongEncoding) {
    EXPECT_THAT(refusal_of("\xEF\xBB\xBF" + whole_text), HasSubstr("byte order mark"));
    EXPECT_THAT(refusal_of(std::string("\xFF\xFE{\0}\0", 6)), HasSubstr("UTF-16"));
    EXPECT_THAT(refusal_of(std::string("{\0\"\0", 4)), HasSubstr("UTF-16"));
    EXPECT_THAT(refusal_of(std::string("\0{\0\"", 4)), HasSubstr("UTF-16"));
    EXPECT_THAT(whole_refusal("20 °C", "20 \xB0"
                                       "C"),
                HasSubstr("my.loop:24: the file is not UTF-8"));
    EXPECT_THAT(whole_refusal("\"Test loop\"", "\"T\xFCr\""), HasSubstr("my.loop:4: the file is not UTF-8"));
    EXPECT_THAT(whole_refusal("\"Test loop\"", "\"\xC0\x80\""), HasSubstr("not UTF-8"));     // overlong
    EXPECT_THAT(whole_refusal("\"Test loop\"", "\"\xED\xA0\x80\""), HasSubstr("not UTF-8")); // surrogate
    EXPECT_THAT(whole_refusal("\"Test loop\"", "\"\\ud800\""), HasSubstr("this is not JSON"));
}

TEST(ReadDesign, SizesThatNoDesignHas) {
    EXPECT_THAT(refusal_of(whole_text + std::string(8'000'000, ' ')), HasSubstr("larger than 1 MiB"));
    EXPECT_THAT(whole_refusal("\"Test loop\"", std::string(100'000, '[')),
                HasSubstr("my.loop:4: nested deeper than 16 levels"));
    EXPECT_THAT(refusal_of(std::string(1'000'000, '[')), HasSubstr("nested deeper than 16 levels"));
    std::string keys;
    for (int i = 0; i < 60000; ++i) {
        keys += "\"k" + std::to_string(i) + "\":0,";
    }
    EXPECT_THAT(refusal_of("{" + keys + "\"format\":0}"), HasSubstr("more than 200 keys in one object"));
    std::string items = "0";
    for (int i = 0; i < 100000; ++i) {
        items += ",0";
    }
    EXPECT_THAT(refusal_of("{\"joints\":[" + items + "]}"), HasSubstr("more than 1000 items in one list"));
    EXPECT_THAT(whole_refusal("\"Test loop\"", "\"" + std::string(300, 'x') + "\""),
                HasSubstr("at most 200 bytes"));
    EXPECT_LT(whole_refusal("\"36 in\"", "\"" + std::string(100'000, '9') + "\"").size(), 400U);
}

// Truncated or with bytes changed at random: a valid design or an InputError that names the file, nothing
// else.
TEST(ReadDesign, DamagedFilesNeverFailInAnotherWay) {
    std::mt19937 engine(20);
    const auto any = [&](std::size_t count) {
        return std::uniform_int_distribution<std::size_t>(0, count - 1)(engine);
    };
    int accepted = 0;
    const auto feed = [&](const std::string& text) {
        try {
            accepted += read_design(text, "my.loop").loop.turns > 0 ? 1 : 0;
        } catch (const base::InputError& error) {
            ASSERT_EQ(std::string(error.what()).rfind("my.loop:", 0), 0U) << error.what();
        }
    };
    for (std::size_t length = 0; length <= whole_text.size(); ++length) {
        feed(whole_text.substr(0, length));
    }
    EXPECT_LE(accepted, 2); // whole, with and without its last line break
    for (int i = 0; i < 12000; ++i) {
        std::string text = whole_text;
        for (std::size_t n = 1 + any(3); n > 0; --n) {
            text[any(text.size())] = static_cast<char>(any(4) == 0 ? any(256) : ' ' + any(95));
        }
        feed(text);
    }
    EXPECT_GT(accepted, 100); // a blank or a letter of the title
    for (int i = 0; i < 5000; ++i) {
        std::string text = whole_text;
        const std::size_t from = any(text.size());
        text.insert(any(text.size()), text.substr(from, any(40)));
        feed(text);
    }
}

} // namespace loopwright::document
