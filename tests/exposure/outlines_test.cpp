// Outlines for maps against the distances, and against a plain march through the field in small steps.
#include "exposure/outlines.hpp"

#include "exposure/limits.hpp"
#include "field/loop_field.hpp"
#include "units/constants.hpp"

#include <algorithm>
#include <cmath>
#include <gtest/gtest.h>

namespace loopwright::exposure {
namespace {

using units::metres;
using units::constants::pi;

design::Design over_soil(double lowest_m, double tilt_deg = 0) {
    design::Design d;
    d.capacitor.loss.q = 1000.0;
    d.site.ground.kind = design::GroundKind::soil;
    d.site.lowest_point = metres(lowest_m);
    d.site.tilt = units::degrees(tilt_deg);
    return d;
}

loop::SolvedLoop solved_at(const design::Design& d, double frequency_Hz) {
    return loop::FullWave(d).solved(units::hertz(frequency_Hz)).value();
}

Threshold icnirp_1998(double frequency_Hz, double power_W) {
    const auto fields =
        at(*find_limit("icnirp_1998"), Tier::general_public, units::hertz(frequency_Hz)).value();
    return {fields.electric.value() / std::sqrt(power_W), fields.magnetic.value() / std::sqrt(power_W)};
}

/// Distance from (0, centre) to the outline's piece that holds it, along a ray `from_zenith` to the right.
double along_ray(const SideOutline& outline, double centre_m, double from_zenith) {
    const double dx = std::sin(from_zenith), dz = std::cos(from_zenith);
    double most = 0;
    for (const auto& piece : outline.pieces) {
        std::vector<std::array<double, 2>> corners;
        for (const SideRow& row : piece) {
            corners.push_back({row.right.value(), row.height.value() - centre_m});
        }
        for (auto row = piece.rbegin(); row != piece.rend(); ++row) {
            corners.push_back({row->left.value(), row->height.value() - centre_m});
        }
        for (std::size_t i = 0; i < corners.size(); ++i) {
            const auto& [ax, az] = corners[i];
            const auto& [bx, bz] = corners[(i + 1) % corners.size()];
            const double cross = (bx - ax) * dz - (bz - az) * dx;
            const double share = (az * dx - ax * dz) / cross;
            const double x = ax + share * (bx - ax), z = az + share * (bz - az);
            if (cross != 0 && share >= 0 && share <= 1) {
                most = std::max(most, x * dx + z * dz);
            }
        }
    }
    return most;
}

/// The same from the fields themselves (direct integrals), inward in steps of 5 mm, from where they are
/// below.
double marched_ray(const field::LoopField& field, const Threshold& limit, double azimuth, double centre_m,
                   double from_zenith, double from_m) {
    for (double r = from_m; r > 0.3; r -= 0.005) {
        const double along = r * std::sin(from_zenith);
        const auto at = field.at(metres(along * std::cos(azimuth)), metres(along * std::sin(azimuth)),
                                 metres(centre_m + r * std::cos(from_zenith)));
        if (at.electric().value() > limit.electric_V_m || at.magnetic().value() > limit.magnetic_A_m) {
            return r;
        }
    }
    return 0;
}

// Straight above and around it the outline once ended in a tip, one row too high: rows were 10 cm apart where
// the outline runs level. The field has no null there: the march finds a flat end. Over a static dipole on
// its side |H| goes with sqrt(1 + 3 sin^2 t)/r^3, t from the zenith (any text of electromagnetism, from
// memory), so the outline's height r cos t is level there to the third order.
TEST(Outlines, FromTheSideRoundTheZenithAsAMarchThroughTheField) {
    const double f = 7.1e6, power = 10;
    for (const double tilt : {0.0, 40.0}) {
        const design::Design d = over_soil(0.8, tilt);
        const double centre_m = 0.8 + 0.5 * std::cos(tilt * pi / 180);
        Surroundings around(solved_at(d, f), metres(0));
        const field::LoopField field(solved_at(d, f), units::watts(power));
        const auto outline = outline_from_the_side({{&around, icnirp_1998(f, power)}}, units::degrees(90));
        ASSERT_TRUE(outline);
        EXPECT_FALSE(outline->cut_above);
        for (const double degrees : {-60.0, -20.0, -8.0, -4.0, -2.0, 0.0, 2.0, 4.0, 8.0, 20.0, 60.0}) {
            const double ray = degrees * pi / 180;
            const double got = along_ray(*outline, centre_m, ray);
            const double march = marched_ray(field, icnirp_1998(f, 1.0), pi / 2, centre_m, ray, got + 0.06);
            EXPECT_NEAR(got, march, 0.015) << degrees << " degrees from the zenith, tilt " << tilt;
        }
    }
}

// On a mast the outline stands clear of the ground: round below as well as above.
TEST(Outlines, FromTheSideRoundTheNadirOfALoopOnAMast) {
    const double f = 7.1e6, power = 100, centre_m = 5.5;
    const design::Design d = over_soil(5);
    Surroundings around(solved_at(d, f), metres(0));
    const field::LoopField field(solved_at(d, f), units::watts(power));
    const auto outline = outline_from_the_side({{&around, icnirp_1998(f, power)}}, units::degrees(90));
    ASSERT_TRUE(outline);
    ASSERT_EQ(outline->pieces.size(), 1U);
    for (const double degrees : {172.0, 176.0, 180.0, 184.0}) {
        const double ray = degrees * pi / 180, got = along_ray(*outline, centre_m, ray);
        const double march = marched_ray(field, icnirp_1998(f, 1.0), pi / 2, centre_m, ray, got + 0.06);
        EXPECT_NEAR(got, march, 0.015) << degrees << " degrees from the zenith";
    }
}

TEST(Outlines, HoldTheFarthestPlace) {
    const double f = 7.1e6;
    Surroundings around(solved_at(over_soil(0.8), f), metres(0));
    const Threshold t = icnirp_1998(f, 20);
    const auto most = around.farthest(t);
    const auto above = outline_from_above({{&around, t}}, 24);
    ASSERT_TRUE(most && above);
    const double distance_m = most->distance.value();
    EXPECT_NEAR(std::max_element(above->begin(), above->end())->value(), distance_m, 0.03 * distance_m);
    const auto side = outline_from_the_side({{&around, t}}, most->azimuth);
    ASSERT_TRUE(side);
    double at_worst_height = 0;
    for (const SideRow& row : side->pieces.at(0)) {
        if (std::abs(row.height.value() - most->height.value()) < 0.06) {
            at_worst_height = std::max(at_worst_height, row.right.value());
        }
    }
    EXPECT_NEAR(at_worst_height, distance_m, 0.02 * distance_m);
    EXPECT_EQ(side->pieces[0].front().height.value(), 0); // down to the ground
}

// Drawn whole where much power reaches far above the loop, and for a loop above what people reach.
TEST(Outlines, FromTheSideAreNotCutAboveTheLoop) {
    const double f = 7.1e6;
    for (const double lowest_m : {0.8, 14.0, 60.0}) {
        Surroundings around(solved_at(over_soil(lowest_m), f), metres(0));
        const auto side = outline_from_the_side({{&around, icnirp_1998(f, 400)}}, units::degrees(90));
        ASSERT_TRUE(side && !side->pieces.empty()) << lowest_m;
        EXPECT_FALSE(side->cut_above) << lowest_m;
        const SideRow& top = side->pieces.back().back();
        EXPECT_GT(top.height.value(), lowest_m + 1 + 1.5) << lowest_m;
        const auto anywhere = [&](double height_m) {
            bool found = false;
            for (double x = -5; x <= 5; x += 0.02) {
                found = found || around.exceeds(icnirp_1998(f, 400), {0, x, height_m});
            }
            return found;
        };
        EXPECT_TRUE(anywhere(top.height.value() - 0.01)) << lowest_m;
        EXPECT_FALSE(anywhere(top.height.value() + 0.02)) << lowest_m;
    }
    Surroundings strong(solved_at(over_soil(0.8), f), metres(0));
    const auto side = outline_from_the_side({{&strong, icnirp_1998(f, 4e6)}}, units::degrees(90));
    ASSERT_TRUE(side);
    EXPECT_TRUE(side->cut_above); // 12 m above people
}

// The union of two frequencies: the larger of both from above, and no row narrower than either.
TEST(Outlines, OfTwoFrequenciesTogetherHoldBoth) {
    const design::Design d = over_soil(0.8);
    Surroundings low(solved_at(d, 7.1e6), metres(0)), high(solved_at(d, 28.5e6), metres(0));
    const Held first{&low, icnirp_1998(7.1e6, 10)}, second{&high, icnirp_1998(28.5e6, 10)};
    const auto both = outline_from_above({first, second}, 16), one = outline_from_above({first}, 16),
               other = outline_from_above({second}, 16);
    ASSERT_TRUE(both && one && other);
    bool first_rules = false, second_rules = false;
    for (std::size_t i = 0; i < both->size(); ++i) {
        EXPECT_NEAR((*both)[i].value(), std::max((*one)[i].value(), (*other)[i].value()), 1e-9) << i;
        first_rules = first_rules || (*one)[i] > (*other)[i];
        second_rules = second_rules || (*other)[i] > (*one)[i];
    }
    EXPECT_TRUE(first_rules || second_rules);
    const auto side = outline_from_the_side({first, second}, units::degrees(0));
    ASSERT_TRUE(side);
    for (const Held& held : {first, second}) {
        const auto alone = outline_from_the_side({held}, units::degrees(0));
        ASSERT_TRUE(alone);
        for (const double degrees : {-80.0, -40.0, 0.0, 30.0, 70.0, 89.0}) {
            const double ray = degrees * pi / 180;
            EXPECT_GE(along_ray(*side, 1.3, ray), along_ray(*alone, 1.3, ray) - 0.01) << degrees;
        }
    }
}

TEST(Outlines, NothingExceededIsNoPiece) {
    Surroundings around(solved_at(over_soil(60), 7.1e6), metres(0));
    const auto above = outline_from_above({{&around, icnirp_1998(7.1e6, 1)}}, 8);
    ASSERT_TRUE(above);
    EXPECT_EQ(above->front().value(), 0);
    const auto none = outline_from_the_side({}, units::degrees(0));
    ASSERT_TRUE(none);
    EXPECT_TRUE(none->pieces.empty());
}

} // namespace
} // namespace loopwright::exposure
