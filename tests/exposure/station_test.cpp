// A station's use and limits in the terms of exposure.
#include "base/error.hpp"
#include "design/limit_ids.hpp"
#include "exposure/station.hpp"

#include <gtest/gtest.h>

namespace loopwright::exposure {

TEST(Station, TheIdsThatDesignsKnowAreThoseOfTheTables) {
    std::vector<std::string> ids;
    for (const Limit& limit : limits()) {
        ids.push_back(limit.id);
    }
    EXPECT_EQ(ids, design::limit_ids());
    for (const int region : {1, 2, 3}) {
        EXPECT_FALSE(design::default_limits(region).empty());
        for (const std::string& id : design::default_limits(region)) {
            EXPECT_NE(find_limit(id), nullptr) << id;
        }
    }
}

TEST(Station, UseIsTheUsualOneUnlessGiven) {
    design::Station station;
    EXPECT_EQ(use_of(station).habit, Habit::alternate_slots);
    station.emission = "wspr";
    EXPECT_EQ(use_of(station).habit, Habit::share_of_slots);
    station.use = design::Use{design::Habit::listening_turns, 0.2, units::seconds(90)};
    EXPECT_EQ(use_of(station).habit, Habit::listening_turns);
    EXPECT_EQ(schedule_of(station).period.value(), 180);
    station.use->habit = design::Habit::every_slot;
    EXPECT_EQ(schedule_of(station).period.value(), 120);
}

TEST(Station, LimitsFollowTheRegionAndOwnOnesStandBesides) {
    design::Station station;
    station.region = 2;
    EXPECT_EQ(limits_of(station).front().id, "fcc_1_1310");
    station.limits = {"eu_1999_519"};
    design::OwnLimit own;
    own.name = "Local rule";
    own.electric = units::ElectricField::from_value(10);
    own.magnetic = units::MagneticField::from_value(0.02);
    own.tier = design::LimitTier::occupational;
    station.own_limits = {own};
    const auto all = limits_of(station);
    ASSERT_EQ(all.size(), 2U);
    EXPECT_EQ(all[1].id, "own_1");
    EXPECT_EQ(all[1].standard, "Local rule");
    EXPECT_FALSE(all[1].averaging(Tier::occupational).has_value()) << "at every instant";
    for (const double f_MHz : {0.2, 7.0, 50.0}) {
        EXPECT_FALSE(at(all[1], Tier::general_public, units::megahertz(f_MHz)).has_value());
        const auto level = at(all[1], Tier::occupational, units::megahertz(f_MHz));
        ASSERT_TRUE(level);
        EXPECT_EQ(level->electric.value(), 10);
        EXPECT_EQ(level->magnetic.value(), 0.02);
    }
    station.own_limits[0].averaging = units::seconds(360);
    EXPECT_EQ(limits_of(station)[1].averaging(Tier::occupational)->value(), 360);
    station.limits = {"no_such"};
    EXPECT_THROW((void)limits_of(station), base::InputError);
}

} // namespace loopwright::exposure
