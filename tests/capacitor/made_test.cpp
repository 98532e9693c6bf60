// Hand-made capacitors against textbook values, published limits and moment methods of our own.
#include "capacitor/made.hpp"

#include "base/error.hpp"
#include "moment_methods.hpp"

#include <cmath>
#include <gtest/gtest.h>
#include <limits>

namespace loopwright::capacitor {
namespace {

using units::millimetres;

constexpr double vacuum_F_m = 8.8541878128e-12; // CODATA 2018

PlateStack stack(double width_mm, double length_mm, double spacing_mm, double thickness_mm, int plates = 2) {
    return {millimetres(width_mm),
            millimetres(length_mm),
            millimetres(spacing_mm),
            millimetres(thickness_mm),
            plates,
            1};
}

// Of the formula for very wide plates: per metre of width over eps0, where the sides do not count.
double formula_2d(double length_mm, double overlap_mm, double spacing_mm, double thickness_mm, int plates) {
    const auto whole = [&](double width_mm) {
        return plates_capacitance(stack(width_mm, length_mm, spacing_mm, thickness_mm, plates),
                                  millimetres(overlap_mm))
            .value.value();
    };
    return (whole(2e6) - whole(1e6)) / 1e3 / vacuum_F_m;
}

} // namespace

// Sadiku, Elements of Electromagnetics, ch. 6 (read in a transcription): 30 cm^2, 5 mm, relative permittivity
// 4 and 6, side by side half the area each: 26.53 pF with eps0 = 1e-9/36 pi, no field at the edges.
TEST(MadeCapacitor, TextbookPlatesWithoutEdges) {
    PlateStack half = stack(30, 50, 5, 0);
    double sum_pF = 0;
    for (const double permittivity : {4.0, 6.0}) {
        half.relative_permittivity = permittivity;
        sum_pF += plates_capacitance(half, half.length).ideal.value() * 1e12;
    }
    const double rounded_eps0 = 1e-9 / (36 * 3.141592653589793) / vacuum_F_m;
    EXPECT_NEAR(sum_pF * rounded_eps0, 26.53, 0.005);
    // One plate more, one gap more.
    const auto gaps = [](int plates) {
        return plates_capacitance(stack(30, 50, 5, 0, plates), millimetres(50)).ideal.value();
    };
    EXPECT_NEAR(gaps(4) / gaps(2), 3, 1e-12);
}

// 2 pi eps0 l/ln(b/a), any text on fields: RG-58's 0.81 mm in 2.95 mm of polyethylene (2.25) is about 100 pF
// a metre by every maker (common practice, no source); two in series half of that.
TEST(MadeCapacitor, TextbookTubesWithoutEnds) {
    TubePairs tubes{millimetres(0.81), millimetres(2.95), millimetres(1000), 1, 2.25};
    const double one = tubes_capacitance(tubes, millimetres(1000)).ideal.value();
    EXPECT_NEAR(one, 97e-12, 3e-12);
    tubes.pairs = 2;
    EXPECT_NEAR(tubes_capacitance(tubes, millimetres(1000)).ideal.value(), one / 2, 1e-20);
}

// Published limit where plates lie over each other: Love's strips, lengthened on both sides as by Palmer.
// Worked by hand: 100 mm square, 10 mm apart: 1 + 0.1 (1 + ln(20 pi))/pi = 1.16362, squared 1.35401.
TEST(MadeCapacitor, AlignedSquareIsPalmers) {
    const MadeCapacitance made = plates_capacitance(stack(100, 100, 10, 0), millimetres(100));
    EXPECT_NEAR(made.value / made.ideal, 1.35401, 1e-4);
    EXPECT_TRUE(made.established);
    // The true one by three dimensions lies a few per cent lower, within what is said.
    const double true_F = test::plates_3d_F(0.1, 0.1, 0.1, 0.01, 14);
    EXPECT_GT(true_F, made.range.low.value());
    EXPECT_LT(true_F, made.range.high.value());
    EXPECT_NEAR(made.value.value() / true_F, 1, 0.06);
}

// Two plates in cross-section: at every overlap within 0.12 (in units of eps0 a metre) of the moment method,
// which for thin plates has an error of about 0.02 itself (0.004 with 160 pieces).
TEST(MadeCapacitor, TwoPlatesInCrossSection) {
    for (const double length : {20.0, 60.0, 200.0}) {
        for (const double share : {0.1, 0.5, 0.9, 0.98, 1.0}) {
            for (const double thickness : {0.0, 1.0}) {
                const double overlap = length * share;
                const double true_value = test::stack_2d(length, overlap, 3, thickness, 2, 60);
                EXPECT_NEAR(formula_2d(length, overlap, 3, thickness, 2), true_value, 0.12)
                    << length << ' ' << share << ' ' << thickness;
            }
        }
    }
}

// Stacks: what the edges add within 35 %.
TEST(MadeCapacitor, StacksInCrossSection) {
    for (const int plates : {3, 4, 5}) {
        for (const double share : {0.1, 0.5, 0.9, 1.0}) {
            const double ideal = (plates - 1) * 60 * share / 3;
            const double edges = test::stack_2d(60, 60 * share, 3, 1, plates, 24) - ideal;
            EXPECT_NEAR(formula_2d(60, 60 * share, 3, 1, plates) - ideal, edges, 0.35 * edges)
                << plates << ' ' << share;
        }
    }
}

// Plates that slide apart, in three dimensions, thin: the interval holds the truth.
TEST(MadeCapacitor, SlidingPlatesInThreeDimensions) {
    for (const double width : {20.0, 60.0, 200.0}) {
        for (const double overlap : {6.0, 30.0, 54.0}) {
            const MadeCapacitance made = plates_capacitance(stack(width, 60, 3, 0), millimetres(overlap));
            const double true_F = test::plates_3d_F(width / 1e3, 0.06, overlap / 1e3, 0.003, 12);
            EXPECT_GT(true_F, made.range.low.value()) << width << ' ' << overlap;
            EXPECT_LT(true_F, made.range.high.value()) << width << ' ' << overlap;
            if (overlap >= 30) {
                EXPECT_NEAR(made.value.value() / true_F, 1, 0.06) << width << ' ' << overlap;
            }
        }
    }
}

// Tubes by a moment method of bodies of revolution.
TEST(MadeCapacitor, TubesThatSlide) {
    for (const double inner : {0.006, 0.0075, 0.009}) {
        for (const double length : {0.1, 0.3}) {
            for (const double share : {0.05, 0.3, 0.9, 1.0}) {
                const TubePairs tubes{units::metres(2 * inner), units::metres(0.02), units::metres(length), 1,
                                      1};
                const MadeCapacitance made = tubes_capacitance(tubes, units::metres(length * share));
                const double true_F = test::tubes_F(inner, 0.01, length, length * share, 60);
                EXPECT_GT(true_F, made.range.low.value()) << inner << ' ' << length << ' ' << share;
                EXPECT_LT(true_F, made.range.high.value()) << inner << ' ' << length << ' ' << share;
                if (share >= 0.3) {
                    EXPECT_NEAR(made.value.value() / true_F, 1, 0.03)
                        << inner << ' ' << length << ' ' << share;
                }
            }
        }
    }
}

TEST(MadeCapacitor, RisesAllTheWayNearlyInALine) {
    const auto plates = [](double x) {
        return plates_capacitance(stack(100, 100, 3, 1, 5), millimetres(x)).value.value();
    };
    const TubePairs tubes{millimetres(15), millimetres(20), millimetres(300), 2, 1};
    const auto tube = [&](double x) { return tubes_capacitance(tubes, millimetres(x)).value.value(); };
    for (double x = 1; x < 100; x += 1) {
        EXPECT_GT(plates(x), plates(x - 1)) << x;
        EXPECT_GT(tube(3 * x), tube(3 * x - 3)) << x;
    }
    EXPECT_NEAR(plates(52.5), (plates(5) + plates(100)) / 2, 0.02 * plates(100));
    EXPECT_NEAR(tube(155), (tube(10) + tube(300)) / 2, 0.04 * tube(300));
}

TEST(MadeCapacitor, SaysWhereItIsNotEstablished) {
    EXPECT_TRUE(plates_capacitance(stack(100, 100, 3, 1), millimetres(5)).established);
    EXPECT_FALSE(plates_capacitance(stack(100, 100, 3, 1), millimetres(2)).established);
    EXPECT_FALSE(plates_capacitance(stack(10, 100, 3, 1), millimetres(50)).established);
    EXPECT_FALSE(plates_capacitance(stack(100, 10, 3, 1), millimetres(10)).established);
    const TubePairs wide{millimetres(5), millimetres(20), millimetres(300), 2, 1};
    EXPECT_FALSE(tubes_capacitance(wide, millimetres(100)).established);
}

TEST(MadeCapacitor, RefusesWhatCannotBe) {
    const auto refused = [](const PlateStack& each, double overlap_mm) {
        EXPECT_THROW((void)plates_capacitance(each, millimetres(overlap_mm)), base::InputError);
    };
    refused(stack(0, 100, 3, 1), 5);
    refused(stack(100, 100, -1, 1), 5);
    refused(stack(100, 100, 3, 1), 101);
    refused(stack(100, 100, 3, 1, 1), 5);
    refused(stack(std::numeric_limits<double>::quiet_NaN(), 100, 3, 1), 5);
    const TubePairs none{millimetres(20), millimetres(20), millimetres(300), 2, 1};
    EXPECT_THROW((void)tubes_capacitance(none, millimetres(100)), base::InputError);
}

} // namespace loopwright::capacitor
