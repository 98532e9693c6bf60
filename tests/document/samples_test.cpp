#include "base/error.hpp"
#include "document/capacitor_catalog.hpp"
#include "document/design_file.hpp"
#include "document/file_text.hpp"
#include "sample_text.hpp"
#include "support/samples.hpp"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <algorithm>
#include <fstream>
#include <nlohmann/json.hpp>
#include <set>
#include <sstream>

namespace loopwright::document {
namespace {

namespace fs = std::filesystem;
using support::samples;
using testing::HasSubstr;
using Json = nlohmann::json;

const fs::path root = LOOPWRIGHT_SOURCE_DIR;

std::string message(const std::string& text, bool catalog = false) {
    try {
        if (catalog) {
            (void)read_capacitor_catalog(text, "c.json");
        } else {
            (void)read_design(text, "my.loop");
        }
        return "accepted";
    } catch (const base::InputError& error) {
        return error.what();
    }
}

// "known: a, b, c" or "a, b or c" at the end of a message, as a set.
std::set<std::string> known_keys(const std::string& text) {
    std::string list = text.substr(text.find("known: ") + 7);
    for (auto at = list.find(" or "); at != std::string::npos; at = list.find(" or ")) {
        list.replace(at, 4, ", ");
    }
    std::set<std::string> keys;
    std::istringstream stream(list);
    for (std::string key; std::getline(stream, key, ',');) {
        keys.insert(key.substr(key.find_first_not_of(' ')));
    }
    return keys;
}

std::set<std::string> schema_keys(const Json& object) {
    std::set<std::string> keys;
    for (const auto& [key, value] : object.at("properties").items()) {
        keys.insert(key);
    }
    return keys;
}

// Keys that the reader knows in the object that starts behind a part of the whole sample.
std::set<std::string> reader_keys(const std::string& part) {
    return known_keys(message(with(full_text(), part, part + "\"qqqqqqqqqqqqqqqqqq\": 0, ")));
}

const Json& schema() {
    static const Json read = Json::parse(content_of(root / "docs/reference/design-file.schema.json"));
    return read;
}

} // namespace

TEST(Samples, AreReadCanonicalAndSayThatTheyAreInvented) {
    std::set<std::string> titles;
    ASSERT_GE(samples().size(), 7U);
    for (const fs::path file : samples()) {
        const design::Design design = load_design(file);
        EXPECT_EQ(write_design(design), content_of(file)) << file << " is not in canonical form";
        EXPECT_EQ(design.note.rfind("Invented example. ", 0), 0U) << file;
        EXPECT_GT(design.note.size(), 100U) << file << " does not say what it is for";
        EXPECT_TRUE(titles.insert(design.title).second) << design.title;
        EXPECT_TRUE(design.capacitor.rating.peak_voltage) << file;
        EXPECT_FALSE(design.station.bands.empty()) << file;
    }
}

TEST(Samples, CoverTheRangeOfTheTrade) {
    std::set<design::ConductorForm> forms;
    std::set<design::Outline> outlines;
    std::set<design::Arrangement> arrangements;
    for (const fs::path file : samples()) {
        const design::Design design = load_design(file);
        forms.insert(design.conductor.form);
        outlines.insert(design.loop.outline);
        if (design.loop.turns > 1) {
            arrangements.insert(design.loop.arrangement);
        }
    }
    EXPECT_EQ(outlines.size(), 3U);
    EXPECT_EQ(arrangements.size(), 2U);
    for (const auto form :
         {design::ConductorForm::tube, design::ConductorForm::strip, design::ConductorForm::braid}) {
        EXPECT_TRUE(forms.count(form));
    }
}

TEST(Samples, DamagedSamplesAreRefusedOrRead) {
    for (const fs::path file : samples()) {
        const std::string text = content_of(file);
        for (std::size_t at = 0; at < text.size(); at += 3) {
            std::string damaged = text;
            damaged[at] = static_cast<char>(damaged[at] ^ (1 << (at % 8)));
            EXPECT_FALSE(message(damaged).empty()); // any other exception ends the test
            if (at + 1 < text.size()) {             // without its last line break it is whole
                EXPECT_NE(message(text.substr(0, at)), "accepted");
            }
        }
    }
}

TEST(Catalog, OfTheProjectIsRead) {
    const auto all = load_capacitor_catalog(root / "designs/capacitors.json");
    ASSERT_GE(all.size(), 8U);
    std::set<std::string> kinds;
    for (const CatalogCapacitor& entry : all) {
        kinds.insert(entry.kind);
        EXPECT_TRUE(entry.capacitor.rating.peak_voltage) << entry.name;
        EXPECT_FALSE(entry.note.empty()) << entry.name;
    }
    for (const char* kind : {"air variable", "butterfly", "vacuum", "trombone", "split stator"}) {
        EXPECT_TRUE(kinds.count(kind)) << kind;
    }
    EXPECT_THAT(content_of(root / "designs/capacitors.json"), HasSubstr("Invented examples"));
}

TEST(Catalog, IsReadStrictly) {
    const std::string sound = R"({"format": "loopwright-capacitors", "version": 1, "capacitors": [
 {"name": "a", "kind": "vacuum", "capacitor": {"minimum": "5 pF", "maximum": "50 pF"}},
 {"name": "b", "kind": "butterfly", "capacitor": {"minimum": "6 pF", "maximum": "60 pF"}}]})";
    EXPECT_EQ(message(sound, true), "accepted");
    EXPECT_THAT(message(sound),
                HasSubstr("format: 'loopwright-capacitors' is not accepted; 'loopwright-design'"));
    EXPECT_THAT(message(whole_text, true), HasSubstr("'loopwright-capacitors' is needed"));
    EXPECT_THAT(
        message(with(sound, "\"60 pF\"", "\"5 pF\""), true),
        HasSubstr(
            "c.json:3: capacitors[1].capacitor.maximum: '5 pF' is not accepted; a capacitance not below"));
    EXPECT_THAT(message(with(sound, "\"60 pF\"", "\"60 ohm\""), true),
                HasSubstr("c.json:3: capacitors[1].capacitor.maximum: '60 ohm'"));
    EXPECT_THAT(message(with(sound, "\"b\"", "\"a\""), true), HasSubstr("a name that no other entry has"));
    EXPECT_THAT(message(with(sound, "\"vacuum\"", "\"jar\""), true), HasSubstr("capacitors[0].kind: 'jar'"));
    EXPECT_THAT(message(with(sound, "\"kind\": \"vacuum\", ", ""), true),
                HasSubstr("capacitors[0].kind: this part"));
}

// The schema and the reader know the same keys, and the reference page describes them all.
TEST(Reference, SchemaReaderAndPageKnowTheSameKeys) {
    const Json& defs = schema().at("definitions");
    EXPECT_EQ(reader_keys("{\n  \"format\": \"loopwright-design\",\n  \"version\": 1,"),
              schema_keys(schema()));
    EXPECT_EQ(reader_keys("\"loop\": {"), schema_keys(defs.at("loop")));
    EXPECT_EQ(reader_keys("\"conductor\": {"), schema_keys(defs.at("conductor")));
    EXPECT_EQ(reader_keys("\"metal\": {"),
              schema_keys(defs.at("conductor").at("properties").at("metal").at("oneOf").at(1)));
    EXPECT_EQ(reader_keys("\"joints\": [\n    {"), schema_keys(defs.at("joint")));
    EXPECT_EQ(reader_keys("\"capacitor\": {"), schema_keys(defs.at("capacitor")));
    EXPECT_EQ(reader_keys("\"loss\": {"), schema_keys(defs.at("capacitor").at("properties").at("loss")));
    EXPECT_EQ(reader_keys("\"rating\": {"), schema_keys(defs.at("capacitor").at("properties").at("rating")));
    EXPECT_EQ(reader_keys("\"added\": [\n      {"), schema_keys(defs.at("added_capacitor")));
    EXPECT_EQ(reader_keys("\"dial\": {"), schema_keys(defs.at("dial")));
    EXPECT_EQ(reader_keys("\"table\": [\n        {"), schema_keys(defs.at("dial_entry")));
    EXPECT_EQ(reader_keys("\"made\": {"), schema_keys(defs.at("made_capacitor")));
    EXPECT_EQ(reader_keys("\"working_frequencies\": [\n      {"), schema_keys(defs.at("working_frequency")));
    EXPECT_EQ(reader_keys("\"calibration\": {"), schema_keys(defs.at("calibration")));
    EXPECT_EQ(reader_keys("\"points\": [\n      {"), schema_keys(defs.at("calibration_point")));
    EXPECT_EQ(reader_keys("\"use\": {"), schema_keys(defs.at("use")));
    EXPECT_EQ(reader_keys("\"own_limits\": [\n      {"), schema_keys(defs.at("own_limit")));
    EXPECT_EQ(reader_keys("\"coupling\": {"), schema_keys(defs.at("coupling")));
    EXPECT_EQ(reader_keys("\"site\": {"), schema_keys(defs.at("site")));
    EXPECT_EQ(reader_keys("\"ground\": {"),
              schema_keys(defs.at("site").at("properties").at("ground").at("oneOf").at(1)));
    EXPECT_EQ(reader_keys("\"station\": {"), schema_keys(defs.at("station")));
    const std::string page = content_of(root / "docs/reference/design-file.md");
    for (const char* part :
         {"loop", "conductor", "joint", "capacitor", "added_capacitor", "coupling", "feed_line", "site",
          "station", "use", "own_limit", "dial", "dial_entry", "made_capacitor", "working_frequency",
          "calibration", "calibration_point", "catalog"}) {
        for (const std::string& key : schema_keys(defs.at(part))) {
            EXPECT_THAT(page, HasSubstr("`" + key + "`")) << part;
        }
    }
}

// Defaults of the schema are those of the program: a document with all of them written out reads the same.
TEST(Reference, DefaultsOfTheSchemaAreThoseOfTheProgram) {
    Json document = Json::parse(least_text);
    const Json& defs = schema().at("definitions");
    for (const char* part : {"loop", "conductor", "capacitor", "site", "station"}) {
        for (const auto& [key, value] : defs.at(part).at("properties").items()) {
            if (value.contains("default")) {
                document[part][key] = value.at("default");
            }
        }
    }
    const design::Design all = read_design(document.dump());
    const design::Design least = read_design(least_text);
    EXPECT_EQ(all.loop.turn_spacing.value, least.loop.turn_spacing.value);
    EXPECT_EQ(all.loop.sides, least.loop.sides);
    EXPECT_EQ(all.site.lowest_point.value, least.site.lowest_point.value);
    EXPECT_EQ(all.site.ground, least.site.ground);
    EXPECT_EQ(all.conductor.braid_factor, least.conductor.braid_factor);
    const Json written = Json::parse(write_design(all));
    const Json expected = Json::parse(write_design(least));
    for (const auto& [part, object] : expected.items()) {
        if (!object.is_object()) {
            continue;
        }
        for (const auto& [key, value] : object.items()) {
            EXPECT_EQ(written.at(part).at(key), value) << part << '.' << key;
        }
    }
}

} // namespace loopwright::document
