// Places that a search may pass by: fields that rise with the distance, lobes between two shells, loops
// without symmetry; and the weights of the mean over a body. Against fine grids and sums over the same
// fields.
#include "exposure/detail/shells.hpp"
#include "exposure/limits.hpp"
#include "exposure/surroundings.hpp"
#include "units/constants.hpp"

#include <cmath>
#include <gtest/gtest.h>

namespace loopwright::exposure {
namespace {

using units::metres;
using units::constants::pi;

constexpr double ten_metre_band_Hz = 28.5e6;

design::Design stood(design::Plane plane, double lowest_m, double tilt_deg = 0) {
    design::Design d;
    d.capacitor.loss.q = 1000.0;
    d.site.ground.kind = design::GroundKind::soil;
    d.site.plane = plane;
    d.site.lowest_point = metres(lowest_m);
    d.site.tilt = units::degrees(tilt_deg);
    return d;
}

Surroundings around_of(const design::Design& d, double frequency_Hz, double level_m = 0) {
    return {loop::FullWave(d).solved(units::hertz(frequency_Hz)).value(), metres(level_m)};
}

/// That only the electric field can reach.
Threshold electric(double square) {
    return {std::sqrt(square), 1e9};
}

/// Largest squared electric field at a distance, all round and at all heights of a person.
double largest_square(const Surroundings& around, double distance_m, double azimuth_step_deg = 5) {
    double most = 0;
    for (double azimuth = -180; azimuth < 180; azimuth += azimuth_step_deg) {
        for (int i = 0; i <= 20; ++i) {
            most = std::max(most, around.squares(distance_m, {azimuth * pi / 180, i / 20.0}).electric);
        }
    }
    return most;
}

// Under a level loop above people's heads the electric field is least on the axis (by symmetry only the
// capacitor's part is there) and rises to about 1.4 m out.
struct LevelLoop {
    Surroundings around = around_of(stood(design::Plane::horizontal, 4.0), ten_metre_band_Hz);
    double peak_m = 0, peak_square = 0, near_m = 0.3, near_square = 0;

    LevelLoop() {
        for (double d = 0.8; d < 2.4; d *= 1.01) {
            const double square = largest_square(around, d, 15);
            peak_m = square > peak_square ? d : peak_m;
            peak_square = std::max(square, peak_square);
        }
        near_square = largest_square(around, near_m, 15);
    }
};

TEST(FarLobes, TheWorstShareLooksBeyondTheDistance) {
    LevelLoop loop;
    ASSERT_LT(loop.near_square, 0.7 * loop.peak_square);
    EXPECT_NEAR(loop.around.worst_share(electric(1), metres(loop.near_m)) / loop.peak_square, 1, 0.01);
    EXPECT_NEAR(loop.around.worst_share(electric(1), metres(0.9 * loop.peak_m)) / loop.peak_square, 1, 0.01);
    const double beyond_m = 1.5 * loop.peak_m; // from there on the field only falls
    EXPECT_NEAR(loop.around.worst_share(electric(1), metres(beyond_m)) /
                    largest_square(loop.around, beyond_m),
                1, 0.01);
}

TEST(FarLobes, ADistanceIsTheOuterCrossing) {
    LevelLoop loop;
    const double square = std::sqrt(loop.near_square * loop.peak_square); // met twice: coming and going
    const auto got = loop.around.farthest(electric(square));
    ASSERT_TRUE(got);
    EXPECT_EQ(got->cause, Cause::electric);
    ASSERT_GT(got->distance.value(), loop.peak_m);
    EXPECT_GT(largest_square(loop.around, got->distance.value() - 0.005), 0.998 * square);
    EXPECT_LT(largest_square(loop.around, got->distance.value() + 0.005), square);
}

// The limit is met between two shells and on neither: found by the look half way.
TEST(FarLobes, ALobeBetweenTwoShellsIsFound) {
    bool tried = false;
    for (double lowest_m = 3.5; lowest_m < 4.2; lowest_m += 0.05) {
        Surroundings around = around_of(stood(design::Plane::horizontal, lowest_m), ten_metre_band_Hz);
        for (int shell = 17; shell < 20; ++shell) {
            const double inner_m = detail::shell_distance_m(shell),
                         outer_m = detail::shell_distance_m(shell + 1),
                         middle_m = std::sqrt(inner_m * outer_m);
            const double on_shells =
                std::max(largest_square(around, inner_m), largest_square(around, outer_m));
            const double middle = largest_square(around, middle_m);
            if (!(middle > 1.0015 * on_shells)) {
                continue;
            }
            tried = true;
            const double square = 0.3 * on_shells + 0.7 * middle;
            const auto got = around.farthest(electric(square));
            ASSERT_TRUE(got);
            EXPECT_GE(got->distance.value(), middle_m) << lowest_m << " m";
            EXPECT_LT(got->distance.value(), outer_m) << lowest_m << " m";
        }
        if (tried) {
            break;
        }
    }
    EXPECT_TRUE(tried) << "no height puts the lobe between two shells";
}

/// Exceeded just inside the distance and nowhere outside it, all round.
void expect_distance_all_round(const design::Design& d, double frequency_Hz, const char* what) {
    Surroundings around = around_of(d, frequency_Hz);
    const auto fields =
        at(*find_limit("icnirp_1998"), Tier::general_public, units::hertz(frequency_Hz)).value();
    for (const bool of_electric : {true, false}) {
        const Threshold t{of_electric ? fields.electric.value() / 4.0 : 1e9,
                          of_electric ? 1e9 : fields.magnetic.value() / 4.0}; // for 16 W
        const auto got = around.farthest(t);
        ASSERT_TRUE(got && !got->at_model_edge) << what;
        double outside = 0;
        for (int azimuth = -180; azimuth < 180; azimuth += 3) {
            for (int i = 0; i <= 20; ++i) {
                outside = std::max(
                    outside,
                    around.squares(got->distance.value() + 0.004, {azimuth * pi / 180, i / 20.0}).over(t));
            }
        }
        EXPECT_LT(outside, 1.0) << what << (of_electric ? ", electric" : ", magnetic");
        EXPECT_GT(outside, 0.97) << what << (of_electric ? ", electric" : ", magnetic");
    }
}

// One plane of symmetry, or none: a loop tilted either way, one on its side with its capacitor off the
// middle, and turns in a stack with their ends led out.
TEST(FarLobes, LoopsWithoutBothSymmetriesAreSearchedAllRound) {
    expect_distance_all_round(stood(design::Plane::vertical, 0.5), 14.1e6, "upright");
    expect_distance_all_round(stood(design::Plane::vertical, 0.5, 50), 14.1e6, "tilted");
    expect_distance_all_round(stood(design::Plane::vertical, 0.5, -50), 14.1e6, "tilted back");
    expect_distance_all_round(stood(design::Plane::horizontal, 1.2), 14.1e6, "level");
    design::Design turns = stood(design::Plane::horizontal, 1.2);
    turns.loop.turns = 2;
    turns.loop.turn_spacing = metres(0.1);
    expect_distance_all_round(turns, 7.1e6, "two turns");
}

/// Largest share of a threshold at a distance: all round on a grid, then finely about the largest place.
double searched_share(const Surroundings& around, const Threshold& t, double distance_m) {
    Surroundings::Place best;
    double most = 0;
    const auto look = [&](double from_rad, double to_rad, double low, double high, int steps) {
        for (int i = 0; i <= steps; ++i) {
            for (int k = 0; k <= 40; ++k) {
                const Surroundings::Place at{from_rad + (to_rad - from_rad) * i / steps,
                                             low + (high - low) * k / 40};
                const double share = around.squares(distance_m, at).over(t);
                if (share > most) {
                    most = share;
                    best = at;
                }
            }
        }
    };
    look(-pi, pi, 0, 1, 120);
    const Surroundings::Place coarse = best;
    look(coarse.azimuth_rad - 0.06, coarse.azimuth_rad + 0.06, std::max(0.0, coarse.share - 0.03),
         std::min(1.0, coarse.share + 0.03), 40);
    return most;
}

// The search for the worst place of a distance is as good as that fine grid: 0.2 % of the square, so 0.03 %
// of the distance or so.
TEST(FarLobes, TheWorstPlaceIsThatOfAFineGrid) {
    for (const double tilt_deg : {0.0, 25.0, 50.0}) {
        for (const double lowest_m : {0.3, 0.6, 1.1}) {
            Surroundings around = around_of(stood(design::Plane::vertical, lowest_m, tilt_deg), 14.1e6);
            for (const bool of_electric : {true, false}) {
                const Threshold t{of_electric ? 12.0 : 1e9, of_electric ? 1e9 : 0.03};
                const auto got = around.farthest(t);
                ASSERT_TRUE(got && !got->at_model_edge);
                EXPECT_NEAR(searched_share(around, t, got->distance.value()), 1, 0.002)
                    << tilt_deg << " degrees, " << lowest_m << " m" << (of_electric ? ", electric" : "")
                    << ", at " << got->distance.value() << " m, height " << got->height.value();
            }
        }
    }
}

TEST(FarLobes, TiltedBackIsTheMirrorImageOfTilted) {
    const auto distance = [](double tilt_deg) {
        Surroundings around = around_of(stood(design::Plane::vertical, 0.5, tilt_deg), 14.1e6);
        return around.farthest(electric(30)).value();
    };
    const Farthest fore = distance(50), back = distance(-50);
    EXPECT_NEAR(fore.distance.value(), back.distance.value(), 0.003);
    EXPECT_NEAR(std::sin(fore.azimuth.value()), -std::sin(back.azimuth.value()), 0.05);
    EXPECT_GT(std::abs(std::sin(fore.azimuth.value())), 0.3);
}

// The mean of the squares from feet to head, against a sum of 400 even slices.
TEST(FarLobes, TheBodyMeanIsThatOfASumOverSlices) {
    for (const double lowest_m : {0.8, 2.4}) {
        Surroundings around = around_of(stood(design::Plane::vertical, lowest_m), 7.1e6, 0);
        for (const double distance_m : {1.0, 1.6, 3.0}) {
            for (const double azimuth : {0.0, 1.2}) {
                constexpr int slices = 400;
                double e = 0, m = 0;
                for (int i = 0; i < slices; ++i) {
                    const auto at = around.squares(distance_m, {azimuth, (i + 0.5) / slices});
                    e += at.electric / slices;
                    m += at.magnetic / slices;
                }
                const auto got = around.body_mean(distance_m, azimuth);
                EXPECT_NEAR(got.electric / e, 1, 0.02) << lowest_m << ", " << distance_m << ", " << azimuth;
                EXPECT_NEAR(got.magnetic / m, 1, 0.02) << lowest_m << ", " << distance_m << ", " << azimuth;
            }
        }
    }
}

// The distance that the mean asks for, from the sum over slices all round.
TEST(FarLobes, TheBodyAverageDistanceMeetsTheSumOverSlices) {
    Surroundings around = around_of(stood(design::Plane::vertical, 2.4), 7.1e6);
    const Threshold t{1e9, 0.02};
    const auto got = around.farthest_body_average(t);
    ASSERT_TRUE(got && !got->at_model_edge);
    const auto largest_mean = [&](double distance_m) {
        double most = 0;
        for (int azimuth = -180; azimuth < 180; azimuth += 10) {
            double m = 0;
            for (int i = 0; i < 100; ++i) {
                m += around.squares(distance_m, {azimuth * pi / 180, (i + 0.5) / 100}).magnetic / 100;
            }
            most = std::max(most, m);
        }
        return most;
    };
    EXPECT_GT(largest_mean(0.99 * got->distance.value()), 0.02 * 0.02);
    EXPECT_LT(largest_mean(1.01 * got->distance.value()), 0.02 * 0.02);
}

} // namespace
} // namespace loopwright::exposure
