// Distances against closed forms, against a plain march through the field, and their order.
#include "exposure/surroundings.hpp"

#include "exposure/limits.hpp"
#include "field/loop_field.hpp"
#include "units/constants.hpp"

#include <cmath>
#include <gtest/gtest.h>

namespace loopwright::exposure {
namespace {

using units::metres;
using units::constants::pi;

design::Design a_loop(design::GroundKind ground, double tilt_deg = 0, double lowest_m = 0.8) {
    design::Design d;
    d.capacitor.loss.q = 1000.0;
    d.site.ground.kind = ground;
    d.site.tilt = units::degrees(tilt_deg);
    d.site.lowest_point = metres(lowest_m);
    return d;
}

loop::SolvedLoop solved(const design::Design& d, double frequency_Hz) {
    return loop::FullWave(d).solved(units::hertz(frequency_Hz)).value();
}

Threshold threshold_of(const char* id, Tier tier, double frequency_Hz, double power_W) {
    const auto fields = at(*find_limit(id), tier, units::hertz(frequency_Hz)).value();
    return {fields.electric.value() / std::sqrt(power_W), fields.magnetic.value() / std::sqrt(power_W)};
}

// On the axis of a circular loop H = I a^2/(2 (a^2 + d^2)^(3/2)) (static closed form; any text of
// electromagnetism, J. D. Jackson, Classical Electrodynamics, sec. 5.5, from memory). At 1.8 MHz in free
// space and beyond the loop the magnetic limit is met farthest out on the axis.
TEST(Surroundings, MagneticDistanceInFreeSpaceIsThatOfTheAxis) {
    const design::Design d = a_loop(design::GroundKind::free_space);
    const double f = 1.84e6, power = 20;
    loop::SolvedLoop loop = solved(d, f);
    const double current = std::sqrt(power / loop.total.value());
    Surroundings around(std::move(loop), metres(0));
    Threshold t = threshold_of("icnirp_1998", Tier::general_public, f, power);
    t.electric_V_m = 1e9; // the magnetic limit alone
    const double limit = t.magnetic_A_m * std::sqrt(power);
    const double a = 0.5;
    const double expected = std::sqrt(std::pow(current * a * a / (2 * limit), 2.0 / 3) - a * a);
    const auto got = around.farthest(t);
    ASSERT_TRUE(got);
    EXPECT_GT(expected, 1.0);
    EXPECT_NEAR(got->distance.value() / expected, 1, 0.01);
    EXPECT_EQ(got->cause, Cause::magnetic);
    EXPECT_NEAR(std::abs(got->azimuth.value() * 180 / pi), 90, 3);
    EXPECT_NEAR(got->height.value(), 0, 0.06);
}

/// Largest distance with a field over the limit, from a fine march through LoopField.
double marched(const design::Design& d, double f, double power, double e_limit, double h_limit, double from_m,
               double step_m) {
    const field::LoopField field(solved(d, f), units::watts(power));
    for (int step = 0; from_m - step * step_m > 0.3; ++step) {
        const double r = from_m - step * step_m;
        for (int azimuth = 0; azimuth < 360; azimuth += 30) {
            const double a = azimuth * pi / 180;
            for (const double z : {0.01, 0.5, 1.0, 1.5, 2.0}) {
                const auto at = field.at(metres(r * std::cos(a)), metres(r * std::sin(a)), metres(z));
                if (at.electric().value() > e_limit || at.magnetic().value() > h_limit) {
                    return r;
                }
            }
        }
    }
    return 0;
}

TEST(Surroundings, DistanceOverSoilMeetsAMarchThroughTheField) {
    const double f = 7.1e6, power = 10;
    for (const double tilt : {0.0, 40.0}) {
        const design::Design d = a_loop(design::GroundKind::soil, tilt);
        Surroundings around(solved(d, f), metres(0));
        const auto fields = at(*find_limit("eu_1999_519"), Tier::general_public, units::hertz(f)).value();
        const auto got = around.farthest(threshold_of("eu_1999_519", Tier::general_public, f, power));
        ASSERT_TRUE(got);
        const double march = marched(d, f, power, fields.electric.value(), fields.magnetic.value(),
                                     got->distance.value() + 0.05, 0.01);
        EXPECT_GE(got->distance.value(), march - 0.001) << tilt; // the march sees fewer places
        EXPECT_NEAR(got->distance.value(), march, 0.03) << tilt;
    }
}

// On a balcony beside the loop, and on a roof above it: the heights of the person are those of the floor. A
// march through the direct integrals at the heights where a person there is, and nowhere else.
TEST(Surroundings, PeopleOnABalconyAreMetWhereTheyStand) {
    const double f = 7.1e6, power = 50;
    const design::Design d = a_loop(design::GroundKind::soil, 0, 6.0); // from 6 to 7 m
    const Threshold t = threshold_of("icnirp_1998", Tier::general_public, f, power);
    const field::LoopField field(solved(d, f), units::watts(1));
    double on_the_ground_m = 0;
    for (const double level_m : {0.0, 5.5, 8.0}) {
        Surroundings around(solved(d, f), metres(level_m));
        const auto got = around.farthest(t);
        ASSERT_TRUE(got);
        const auto worst = [&](double r) {
            double most = 0;
            for (int azimuth = 0; azimuth <= 90; azimuth += 15) { // upright: the rest is its mirror image
                for (int i = 0; i <= 10; ++i) {
                    const double a = azimuth * pi / 180;
                    const auto at = field.at(metres(r * std::cos(a)), metres(r * std::sin(a)),
                                             metres(std::max(0.001, level_m + 0.2 * i)));
                    most = std::max({most, at.electric().value() / t.electric_V_m,
                                     at.magnetic().value() / t.magnetic_A_m});
                }
            }
            return most;
        };
        if (level_m == 0) {
            on_the_ground_m = got->distance.value();
            continue;
        }
        EXPECT_GT(got->distance.value(), on_the_ground_m + 0.5) << level_m;
        EXPECT_GE(got->height.value(), level_m - 1e-6);
        EXPECT_LE(got->height.value(), level_m + 2 + 1e-6);
        EXPECT_GT(worst(got->distance.value() - 0.01), 0.998) << level_m; // the march sees fewer places
        EXPECT_LT(worst(got->distance.value() + 0.01), 1.0) << level_m;
    }
}

TEST(Surroundings, BodyAverageNeverAsksForMore) {
    const double f = 7.1e6;
    Surroundings around(solved(a_loop(design::GroundKind::soil), f), metres(0));
    for (const double power : {5.0, 50.0}) {
        const Threshold t = threshold_of("icnirp_2020", Tier::general_public, f, power);
        const auto peak = around.farthest(t), mean = around.farthest_body_average(t);
        ASSERT_TRUE(peak && mean);
        EXPECT_LE(mean->distance.value(), peak->distance.value() + 1e-3);
        EXPECT_GT(mean->distance.value(), 0.3 * peak->distance.value());
    }
}

TEST(Surroundings, MorePowerAndStricterLimitsNeverShortenADistance) {
    for (const double f : {3.6e6, 14.1e6, 28.5e6}) {
        Surroundings around(solved(a_loop(design::GroundKind::soil, 20), f), metres(0));
        double before = 0;
        for (const double power : {0.5, 1.0, 2.0, 5.0, 10.0, 30.0, 100.0, 400.0}) {
            const auto got = around.farthest(threshold_of("icnirp_1998", Tier::general_public, f, power));
            const auto laxer = around.farthest(threshold_of("icnirp_1998", Tier::occupational, f, power));
            ASSERT_TRUE(got && laxer);
            EXPECT_GE(got->distance.value(), before - 0.002) << f << " Hz, " << power << " W";
            EXPECT_LE(laxer->distance.value(), got->distance.value() + 0.002) << f << " Hz, " << power;
            before = got->distance.value();
        }
    }
}

// The reverse question: the power allowed at the distance found is the power it was found for.
TEST(Surroundings, PowerAtTheDistanceIsThePowerItWasFoundFor) {
    const double f = 10.1e6;
    Surroundings around(solved(a_loop(design::GroundKind::soil), f), metres(0));
    for (const double power : {10.0, 50.0, 400.0}) {
        const auto got = around.farthest(threshold_of("fcc_1_1310", Tier::general_public, f, power));
        ASSERT_TRUE(got);
        if (got->at_model_edge) {
            continue;
        }
        const Threshold per_watt = threshold_of("fcc_1_1310", Tier::general_public, f, 1.0);
        EXPECT_NEAR(1 / around.worst_share(per_watt, got->distance) / power, 1, 0.02);
    }
}

// What is remembered from other powers changes nothing: neither the order of the questions nor small steps.
TEST(Surroundings, DistancesDoNotDependOnWhatWasAskedBefore) {
    const double f = 14.1e6;
    const design::Design d = a_loop(design::GroundKind::soil, 30);
    Surroundings used(solved(d, f), metres(0));
    double before = 0, before_mean = 0;
    for (double power = 2; power < 60; power *= 1.07) {
        const Threshold t = threshold_of("icnirp_1998", Tier::general_public, f, power);
        const double got = used.farthest(t)->distance.value();
        const double mean = used.farthest_body_average(t)->distance.value();
        EXPECT_GE(got, before - 0.002) << power;
        EXPECT_GE(mean, before_mean - 0.002) << power;
        before = got;
        before_mean = mean;
    }
    for (const double power : {50.0, 7.3, 21.0}) {
        Surroundings fresh(solved(d, f), metres(0));
        const Threshold t = threshold_of("icnirp_1998", Tier::general_public, f, power);
        const double expected = fresh.farthest(t)->distance.value();
        EXPECT_NEAR(used.farthest(t)->distance.value(), expected, std::max(0.002, 1e-3 * expected)) << power;
    }
}

// Nowhere at the distance or beyond is more than what the worst share says: a fine grid over a loop up on a
// mast, whose field on the ground rises and falls with the distance.
TEST(Surroundings, WorstShareHoldsEverywhereBeyond) {
    const double f = 28.5e6;
    for (const double lowest_m : {0.8, 7.0}) {
        Surroundings around(solved(a_loop(design::GroundKind::soil, 0, lowest_m), f), metres(0));
        const Threshold per_watt = threshold_of("icnirp_1998", Tier::general_public, f, 1.0);
        for (const double from : {1.3, 4.0}) {
            double most = 0;
            for (double d = from; d < 40; d *= 1.02) {
                for (int azimuth = 0; azimuth <= 90; azimuth += 6) { // upright: the rest is its mirror image
                    for (const double share : {0.0, 0.2, 0.4, 0.5, 0.6, 0.8, 1.0}) {
                        most = std::max(most, around.squares(d, {azimuth * pi / 180, share}).over(per_watt));
                    }
                }
            }
            const double got = around.worst_share(per_watt, metres(from));
            EXPECT_GE(got, 0.995 * most) << lowest_m << " m, from " << from;
            EXPECT_LE(got, 1.05 * most) << lowest_m << " m, from " << from; // the grid sees fewer places
        }
    }
}

TEST(Surroundings, NearTheConductorEveryLimitIsExceeded) {
    const double f = 7.1e6;
    Surroundings around(solved(a_loop(design::GroundKind::soil), f), metres(0));
    const auto got = around.farthest({1e6, 1e6});
    ASSERT_TRUE(got);
    EXPECT_TRUE(got->at_model_edge);
    EXPECT_NEAR(got->distance.value(), 0.5 + 0.011 + 0.2, 0.01); // half the size, half the tube, 0.2 m
    // In the loop's plane, where it is widest: at the height of its middle.
    EXPECT_NEAR(std::abs(std::cos(got->azimuth.value())), 1, 1e-3);
    EXPECT_NEAR(got->height.value(), 1.3, 0.1);
    EXPECT_EQ(around.farthest({1e6, 1e9})->cause, Cause::electric);
    EXPECT_EQ(around.farthest({1e9, 1e6})->cause, Cause::magnetic);
    // On its side it is as wide toward its capacitor, +y, and all round.
    design::Design level = a_loop(design::GroundKind::soil);
    level.site.plane = design::Plane::horizontal;
    EXPECT_NEAR(Surroundings(solved(level, f), metres(0)).farthest({1e6, 1e6})->distance.value(), 0.711,
                0.02);
    // Just inside that 0.2 m nothing is told, just outside it is.
    EXPECT_TRUE(around.squares(0.5 + 0.011 + 0.19, {0, 0.65}).touch); // at 1.3 m
    EXPECT_FALSE(around.squares(0.5 + 0.011 + 0.21, {0, 0.65}).touch);
    // High above the people nothing is near.
    Surroundings above(solved(a_loop(design::GroundKind::soil, 0, 6.0), f), metres(0));
    EXPECT_EQ(above.farthest({1e6, 1e6})->distance.value(), 0);
}

TEST(Surroundings, TheCapacitorIsAtTheTop) {
    Surroundings around(solved(a_loop(design::GroundKind::soil), 7.1e6), metres(0));
    EXPECT_NEAR(around.capacitor_place_m()[2], 1.8, 0.02);
}

} // namespace
} // namespace loopwright::exposure
