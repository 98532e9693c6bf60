// The keys that decide before keying: ratings, added capacitors, use of the emission, limits, reach.
#include "base/error.hpp"
#include "document/design_file.hpp"
#include "document/file_text.hpp"
#include "sample_text.hpp"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

namespace loopwright::document {
namespace {

using testing::HasSubstr;

std::string hazard_refusal(const std::string& part, const std::string& other) {
    return refusal_of(with(full_text(), part, other));
}

} // namespace

TEST(HazardKeys, AreReadWithWhatWasTyped) {
    const design::Design d = read_design(full_text());
    const design::CapacitorRating& rating = d.capacitor.rating;
    EXPECT_EQ(rating.peak_voltage->value.value(), 2000);
    EXPECT_EQ(rating.gap->value.value(), 1e-3);
    EXPECT_EQ(rating.plate_edges, design::PlateEdges::rounded);
    EXPECT_EQ(rating.safety_factor, 2);
    EXPECT_EQ(rating.current->value.value(), 12);
    EXPECT_EQ(d.capacitor.arrangement, design::SectionArrangement::butterfly);
    ASSERT_EQ(d.capacitor.added.size(), 2U);
    EXPECT_EQ(d.capacitor.added[0].connection, design::AddedConnection::parallel);
    EXPECT_EQ(d.capacitor.added[0].peak_voltage->value.value(), 3000);
    EXPECT_EQ(d.capacitor.added[0].current->value.value(), 5);
    EXPECT_EQ(d.capacitor.added[0].q, 2000);
    EXPECT_EQ(d.capacitor.added[0].note, "silver mica");
    EXPECT_EQ(d.capacitor.added[1].capacitance.value.value(), 1e-9);
    EXPECT_FALSE(d.capacitor.added[1].q || d.capacitor.added[1].peak_voltage);
    EXPECT_EQ(d.site.altitude.value.value(), 1800);
    EXPECT_EQ(d.site.air_temperature.value.value(), 308.15);
    EXPECT_EQ(d.site.people_distance->value.value(), 2);
    ASSERT_TRUE(d.station.use);
    EXPECT_EQ(d.station.use->habit, design::Habit::share_of_slots);
    EXPECT_EQ(d.station.use->share, 0.3);
    EXPECT_EQ(d.station.limits, (std::vector<std::string>{"icnirp_1998", "fcc_1_1310"}));
    ASSERT_EQ(d.station.own_limits.size(), 1U);
    EXPECT_EQ(d.station.own_limits[0].electric.value.value(), 28);
    // 0.092 microtesla stands beside 0.073 A/m in the EU recommendation, annex III, table 2.
    EXPECT_NEAR(d.station.own_limits[0].magnetic.value.value(), 0.073, 5e-4);
    EXPECT_EQ(d.station.own_limits[0].averaging->value.value(), 360);
    EXPECT_EQ(d.station.own_limits[0].tier, design::LimitTier::occupational);
    EXPECT_EQ(d.station.reach->value.value(), 0.6);
}

TEST(HazardKeys, AreNoneOrTheirDefaultsWhereLeftOut) {
    const design::Design d = read_design(least_text);
    EXPECT_FALSE(d.capacitor.rating.gap || d.capacitor.rating.current);
    EXPECT_EQ(d.capacitor.rating.safety_factor, 1.5);
    EXPECT_EQ(d.capacitor.rating.plate_edges, design::PlateEdges::plain);
    EXPECT_EQ(d.capacitor.arrangement, design::SectionArrangement::single);
    EXPECT_TRUE(d.capacitor.added.empty());
    EXPECT_EQ(d.site.altitude.value.value(), 0);
    EXPECT_EQ(d.site.air_temperature.value.value(), 293.15);
    EXPECT_FALSE(d.station.use || d.station.reach || d.site.people_distance);
    EXPECT_TRUE(d.station.limits.empty() && d.station.own_limits.empty());
    EXPECT_EQ(read_design(with(whole_text, "\"bands\": [",
                               "\"use\": {\"habit\": \"every_slot\"}, "
                               "\"bands\": ["))
                  .station.use->share,
              0.2);
}

TEST(HazardKeys, ComeBackAsTheyWere) {
    EXPECT_EQ(write_design(read_design(full_text())), full_text());
    design::Design d = read_design(whole_text);
    d.capacitor.rating = {};
    d.capacitor.rating.current = units::amperes(3);
    d.station.use = design::Use{design::Habit::listening_turns, 0.2, units::seconds(90)};
    const design::Design back = read_design(write_design(d));
    EXPECT_EQ(back.capacitor.rating.current->value, d.capacitor.rating.current->value);
    EXPECT_EQ(back.station.use->over.value, d.station.use->over.value);
}

TEST(HazardKeys, RefusalsNamePathValueAndWhatIsAccepted) {
    EXPECT_THAT(hazard_refusal("\"1 mm\",\n      \"plate", "\"1 V\",\n      \"plate"),
                HasSubstr("capacitor.rating.gap: '1 V' is not accepted; a length with its unit"));
    EXPECT_THAT(hazard_refusal("\"rounded\"", "\"blunt\""),
                HasSubstr("capacitor.rating.plate_edges: 'blunt' is not accepted; rounded, plain or sharp"));
    EXPECT_THAT(hazard_refusal("\"safety_factor\": 2", "\"safety_factor\": 0.5"),
                HasSubstr("capacitor.rating.safety_factor: '0.5' is not accepted; a number from 1 to 10"));
    EXPECT_THAT(
        hazard_refusal("\"butterfly\"", "\"double\""),
        HasSubstr("capacitor.arrangement: 'double' is not accepted; single, split_stator or butterfly"));
    EXPECT_THAT(hazard_refusal("\"parallel\"", "\"beside\""),
                HasSubstr("capacitor.added[0].connection: 'beside' is not accepted; parallel or series"));
    EXPECT_THAT(hazard_refusal(",\n        \"connection\": \"series\"", ""),
                HasSubstr("capacitor.added[1].connection: this part is missing"));
    EXPECT_THAT(hazard_refusal("\"1 nF\"", "\"1 F\""), HasSubstr("capacitor.added[1].capacitance: '1 F'"));
    EXPECT_THAT(hazard_refusal("\"q\": 2000", "\"q\": 2"), HasSubstr("capacitor.added[0].q: '2'"));
    EXPECT_THAT(hazard_refusal("\"1800 m\"", "\"18 km\""),
                HasSubstr("site.altitude: '18 km' is not accepted; a length from -500 m to 9000 m"));
    EXPECT_THAT(hazard_refusal("\"35 °C\"", "\"95 °C\""), HasSubstr("site.air_temperature: '95 °C'"));
    EXPECT_THAT(hazard_refusal("\"2 m\"", "\"2 cm\""), HasSubstr("site.people_distance: '2 cm'"));
    EXPECT_THAT(hazard_refusal("\"share_of_slots\"", "\"sometimes\""),
                HasSubstr("station.use.habit: 'sometimes' is not accepted; alternate_slots, every_slot"));
    EXPECT_THAT(hazard_refusal("\"ft8\"", "\"cw\""),
                HasSubstr("station.use.habit: 'share_of_slots' is not accepted; continuous or "
                          "listening_turns: cw has no time slots"));
    EXPECT_THAT(hazard_refusal("\"share\": 0.3", "\"share\": 1.3"), HasSubstr("station.use.share: '1.3'"));
    EXPECT_THAT(hazard_refusal("\"fcc_1_1310\"", "\"fcc\""),
                HasSubstr("station.limits[1]: 'fcc' is not accepted; fcc_1_1310, icnirp_2020"));
    EXPECT_THAT(hazard_refusal("\"fcc_1_1310\"", "\"icnirp_1998\""),
                HasSubstr("station.limits[1]: 'icnirp_1998' is not accepted; each limit once"));
    EXPECT_THAT(hazard_refusal("\"28 V/m\"", "\"28 V\""),
                HasSubstr("station.own_limits[0].electric: '28 V' is not accepted; an electric field"));
    EXPECT_THAT(hazard_refusal("\"local rule\"", "\"\""), HasSubstr("station.own_limits[0].name: ''"));
    EXPECT_THAT(hazard_refusal("\"6 min\"", "\"0 s\""), HasSubstr("station.own_limits[0].averaging: '0 s'"));
    EXPECT_THAT(hazard_refusal("\"occupational\"", "\"workers\""),
                HasSubstr("station.own_limits[0].tier: 'workers' is not accepted; public or occupational"));
    EXPECT_THAT(hazard_refusal("\"0.6 m\"", "\"-1 m\""), HasSubstr("station.reach: '-1 m'"));
}

} // namespace loopwright::document
