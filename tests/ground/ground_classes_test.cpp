#include "ground/ground_classes.hpp"

#include <gtest/gtest.h>

namespace loopwright::ground {

// ITU-R P.527-3 (read in secondary copies; conductivity of fresh water from memory). "Average ground" is
// common practice without a source.
TEST(GroundClasses, HaveTheValuesOfTheRecommendation) {
    const struct {
        const char* name;
        double permittivity, siemens_per_metre;
    } rows[] = {{"sea water", 70, 5},           {"fresh water", 80, 0.003},
                {"wet ground", 30, 0.01},       {"medium dry ground", 15, 0.001},
                {"very dry ground", 3, 0.0001}, {"average ground", 13, 0.005}};
    ASSERT_EQ(ground_classes().size(), std::size(rows));
    for (const auto& row : rows) {
        const auto found = find_ground_class(row.name);
        ASSERT_TRUE(found) << row.name;
        EXPECT_EQ(found->soil.relative_permittivity, row.permittivity);
        EXPECT_EQ(found->soil.conductivity.value(), row.siemens_per_metre);
        EXPECT_FALSE(found->source.empty());
    }
}

// P.527-3 eq. (1): sigma = 0.18 C^0.93 [1 + 0.02 (T - 20)] S/m, C salinity in g/kg: 35 g/kg at 20 degC.
TEST(GroundClasses, SeaWaterFollowsFromItsSalinity) {
    EXPECT_NEAR(0.18 * std::pow(35.0, 0.93), find_ground_class("sea water")->soil.conductivity.value(), 0.1);
}

TEST(GroundClasses, NamesForgiveCaseOnly) {
    EXPECT_TRUE(find_ground_class(" Sea Water "));
    EXPECT_FALSE(find_ground_class("sea"));
    EXPECT_FALSE(find_ground_class(""));
    EXPECT_EQ(ground_class_names().back(), "average ground");
}

} // namespace loopwright::ground
