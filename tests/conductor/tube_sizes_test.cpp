#include "conductor/tube_sizes.hpp"
#include "units/text.hpp"

#include <gtest/gtest.h>

#include <set>

namespace loopwright::conductor {
namespace {

constexpr double inch_m = 0.0254;
constexpr double pi = 3.14159265358979;

double area_m2(const TubeSize& size) {
    const double outer_m = size.diameter.value();
    const double inner_m = outer_m - 2 * size.wall.value();
    return pi / 4 * (outer_m * outer_m - inner_m * inner_m);
}

} // namespace

// ASTM B88, dimensions of types K, L and M [in] (read in secondary copies).
TEST(TubeSizes, AgreeWithAstmB88) {
    const struct {
        const char* name;
        double diameter_in, wall_in;
    } rows[] = {
        {"1/4 in type K", .375, .035}, {"3/8 in type M", .500, .025},    {"1/2 in type K", .625, .049},
        {"1/2 in type L", .625, .040}, {"1/2 in type M", .625, .028},    {"5/8 in type L", .750, .042},
        {"3/4 in type K", .875, .065}, {"3/4 in type L", .875, .045},    {"3/4 in type M", .875, .032},
        {"1 in type L", 1.125, .050},  {"1 1/4 in type K", 1.375, .065}, {"1 1/2 in type M", 1.625, .049},
        {"2 in type K", 2.125, .083},  {"2 1/2 in type L", 2.625, .080}, {"3 in type K", 3.125, .109}};
    for (const auto& row : rows) {
        const auto size = find_tube_size(row.name);
        ASSERT_TRUE(size) << row.name;
        EXPECT_NEAR(size->diameter.value(), row.diameter_in * inch_m, 1e-12) << row.name;
        EXPECT_NEAR(size->wall.value(), row.wall_in * inch_m, 1e-12) << row.name;
        EXPECT_TRUE(size->confirmed);
    }
    EXPECT_FALSE(find_tube_size("1/4 in type M")) << "not made";
    EXPECT_FALSE(find_tube_size("5/8 in type M")) << "not made";
    EXPECT_FALSE(find_tube_size("4 in type L")->confirmed) << "copies disagree";
}

// Theoretical weights of ASTM B88 [lb/ft], from memory; copper of 0.323 lb/in^3. They check the walls row by
// row: a column shifted by one row, as one copy has it, is 15 to 50 % off.
TEST(TubeSizes, WeighWhatTheStandardSays) {
    const struct {
        const char* name;
        double pounds_per_foot;
    } rows[] = {{"3/8 in type K", .269},   {"1/2 in type K", .344},   {"3/4 in type K", .641},
                {"1 in type K", .839},     {"1 1/4 in type K", 1.04}, {"1 1/2 in type K", 1.36},
                {"2 in type K", 2.06},     {"3/8 in type L", .198},   {"1/2 in type L", .285},
                {"5/8 in type L", .362},   {"3/4 in type L", .455},   {"1 in type L", .655},
                {"1 1/4 in type L", .884}, {"1 1/2 in type L", 1.14}, {"2 in type L", 1.75},
                {"3/8 in type M", .145},   {"1/2 in type M", .204},   {"3/4 in type M", .328},
                {"1 in type M", .465},     {"1 1/4 in type M", .682}, {"1 1/2 in type M", .940},
                {"2 in type M", 1.46}};
    for (const auto& row : rows) {
        const double area_in2 = area_m2(find_tube_size(row.name).value()) / (inch_m * inch_m);
        EXPECT_NEAR(area_in2 * 12 * 0.323, row.pounds_per_foot, 0.006 * row.pounds_per_foot) << row.name;
    }
}

// EN 1057, common pairs of outer diameter and wall [mm] (read in a secondary copy).
TEST(TubeSizes, AgreeWithEn1057) {
    for (const char* name : {"12 x 0.6 mm", "15 x 0.7 mm", "15 x 1 mm", "18 x 1 mm", "22 x 0.9 mm",
                             "22 x 1 mm", "22 x 1.2 mm", "28 x 1.2 mm", "35 x 1.5 mm", "42 x 1.2 mm",
                             "54 x 2 mm", "66.7 x 1.2 mm", "76.1 x 2 mm", "108 x 2.5 mm"}) {
        const auto size = find_tube_size(name);
        ASSERT_TRUE(size) << name;
        double diameter_mm = 0;
        double wall_mm = 0;
        ASSERT_EQ(std::sscanf(name, "%lf x %lf", &diameter_mm, &wall_mm), 2);
        EXPECT_NEAR(size->diameter.value(), diameter_mm / 1e3, 1e-12);
        EXPECT_NEAR(size->wall.value(), wall_mm / 1e3, 1e-12);
        EXPECT_EQ(size->standard, "EN 1057");
    }
}

TEST(TubeSizes, TextsSayTheValuesAndNamesAreUnique) {
    std::set<std::string> names;
    for (const TubeSize& size : tube_sizes()) {
        EXPECT_TRUE(names.insert(size.name).second) << size.name;
        EXPECT_EQ(units::parse<units::Length>(size.diameter_text, "x"), size.diameter) << size.name;
        EXPECT_EQ(units::parse<units::Length>(size.wall_text, "x"), size.wall) << size.name;
        EXPECT_LT(size.wall.value(), size.diameter.value() / 4) << size.name;
    }
}

} // namespace loopwright::conductor
