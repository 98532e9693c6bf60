// What the strip, the report's headline and the card's box say of the capacitor's voltage: never more than
// the least favourable band allows. The figures are made up.
#include "models/keying_warning.hpp"

#include <gtest/gtest.h>

namespace loopwright::models {
namespace {

survey::CarriedVoltage carried(const char* where, double peak_V, double usable_V) {
    survey::CarriedVoltage at;
    at.where = where;
    at.peak = units::volts(peak_V);
    at.usable = units::volts(usable_V);
    at.power = units::watts(5);
    return at;
}

TEST(HazardWords, NearestToTheRatingIsNotCalledTheHighest) {
    survey::VoltageStanding standing;
    standing.verdict = survey::RatingVerdict::within;
    standing.any_rating = true;
    standing.nearest = carried("30m", 992, 1000);
    standing.highest = carried("20m", 1160, 3000);
    const VoltageWarning said = standing_warning(standing);
    EXPECT_EQ(said.state, VoltageState::within);
    EXPECT_TRUE(said.text.contains(QStringLiteral("nearest to it: 992")));
    EXPECT_TRUE(said.text.contains(QStringLiteral("highest: 1.16")));
    EXPECT_FALSE(said.text.contains(QStringLiteral("up to")));
}

TEST(HazardWords, ABandWithAnUnratedMemberOrNoFigureIsNotWithin) {
    survey::VoltageStanding standing;
    standing.any_rating = true;
    standing.nearest = standing.highest = carried("10m", 938, 1150);
    standing.unrated = {"12m"};
    VoltageWarning said = standing_warning(standing);
    EXPECT_EQ(said.state, VoltageState::no_rating);
    EXPECT_TRUE(said.text.contains(QStringLiteral("not established on 12m"))) << said.text.toStdString();
    EXPECT_FALSE(said.text.contains(QStringLiteral("within its rating")));
    standing.unrated.clear();
    standing.unknown = {"6m"};
    said = standing_warning(standing);
    EXPECT_EQ(said.state, VoltageState::unknown);
    EXPECT_FALSE(said.text.contains(QStringLiteral("within its rating")));
    standing.unrated = {"12m"};
    standing.nearest = carried("10m", 1151, 1150); // what is over comes before what is not known
    said = standing_warning(standing);
    EXPECT_EQ(said.state, VoltageState::exceeded);
    EXPECT_TRUE(said.text.contains(QStringLiteral("do not key"))) << said.text.toStdString();
}

} // namespace
} // namespace loopwright::models
