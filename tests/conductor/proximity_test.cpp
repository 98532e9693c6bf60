#include "conductor/proximity.hpp"

#include "base/error.hpp"
#include "infinite_row.hpp"
#include "support/spaced.hpp"

#include <cmath>
#include <gtest/gtest.h>
#include <numbers>
#include <numeric>

namespace loopwright::conductor {

// Smith 1972, the table of Rp/R0 for N parallel wires: values of a 2-D harmonic expansion made apart from
// this program and converged to 1e-6, printed to three places; they agree with Smith's table as remembered
// (from memory: N = 2, 8 at 1.10: 0.299, 2.340).
TEST(ProximityLoss, AgreesWithTheTableOfParallelWires) {
    struct Row {
        double spacing;
        double added[7]; // N = 2..8
    };
    const Row rows[] = {
        {1.10, {.299, .643, .997, 1.347, 1.689, 2.021, 2.341}},
        {1.20, {.268, .531, .777, 1.002, 1.210, 1.401, 1.577}},
        {1.30, {.240, .455, .643, .809, .955, 1.086, 1.203}},
        {1.40, {.214, .395, .546, .674, .784, .880, .965}},
        {1.50, {.192, .345, .469, .572, .658, .732, .796}},
        {1.60, {.172, .304, .408, .492, .561, .620, .670}},
        {1.80, {.141, .241, .316, .375, .423, .462, .495}},
        {2.00, {.116, .195, .252, .295, .330, .358, .382}},
        {2.50, {.077, .124, .156, .180, .198, .213, .225}},
        {3.00, {.054, .085, .106, .121, .133, .142, .149}},
        {4.00, {.031, .048, .058, .066, .072, .076, .080}},
    };
    for (const Row& row : rows) {
        for (int turns = 2; turns <= 8; ++turns) {
            EXPECT_NEAR(ProximityLoss(turns, row.spacing).thin_skin(), row.added[turns - 2], 0.00051)
                << turns << " at " << row.spacing;
        }
    }
}

// Balanis, Antenna Theory, example 5.2 (read in a companion notebook): 8 turns, spacing 2 diameters: 0.38,
// read by him from Smith's curve. R_ohmic = N (a/b) Rs (1 + Rp/R0) with R_r 50.43 ohm gives 81.27 %
// efficiency.
TEST(ProximityLoss, AgreesWithBalanisExample) {
    const double added = ProximityLoss(8, 2.0).thin_skin();
    EXPECT_NEAR(added, 0.38, 0.005);
    const double surface_ohm =
        std::sqrt(2.0 * std::numbers::pi * 100e6 * 4e-7 * std::numbers::pi / (2.0 * 5.7e7));
    const double ohmic = 8.0 * (1.0 / 25.0 / 1e-4) * surface_ohm * (1.0 + added);
    EXPECT_NEAR(50.43 / (50.43 + ohmic), 0.8127, 0.0005);
}

// The middle turn of a long row tends to a wire of the infinite row, which another method solves
// (infinite_row.hpp).
TEST(ProximityLoss, MiddleOfALongRowTendsToTheInfiniteRow) {
    for (const double spacing : {1.25, 1.6, 2.5, 5.0}) {
        const double infinite = infinite_row(1.0 / spacing).row;
        const double row_31 = ProximityLoss(31, spacing).turn_factors()[15];
        const double row_63 = ProximityLoss(63, spacing).turn_factors()[31];
        EXPECT_LT(row_31, row_63);
        EXPECT_LT(row_63, infinite);
        const double extrapolated = (63.0 * row_63 - 31.0 * row_31) / 32.0; // what is missing falls as 1/N
        EXPECT_NEAR(extrapolated, infinite, 0.02 * (infinite - 1.0)) << spacing;
    }
}

// Enhancement factor of a long single-layer coil, column "length/diameter infinite" of the table as re-typed
// in codes that cite Minard and Wind, Concepts Magn. Reson. 13 (2001) 128 (that it is Medhurst's of 1947:
// from memory).
TEST(InfiniteRow, AgreesWithTheTableOfLongCoils) {
    const double rows[][2] = {{0.1, 1.05}, {0.2, 1.19}, {0.3, 1.40}, {0.4, 1.65}, {0.5, 1.93},
                              {0.6, 2.22}, {0.7, 2.51}, {0.8, 2.81}, {0.9, 3.11}, {1.0, 3.41}};
    for (const auto& row : rows) {
        EXPECT_NEAR(infinite_row(row[0]).coil, row[1], 0.0055) << row[0];
    }
}

// A wire in a slowly varying uniform transverse field B (rms) loses pi a^4 sigma omega^2 B^2 / 4 a metre
// (textbook eddy-current loss; from memory). Two wires at distance D, B = mu0 I / (2 pi D): Rp/R0 = q^4/(16
// s^2), s = D/2a.
TEST(ProximityLoss, HasTheEddyCurrentLimitAtLowFrequency) {
    const double q = 0.1;
    for (const double spacing : {1.5, 3.0, 6.0}) {
        const double expected = std::pow(q, 4) / (16.0 * spacing * spacing);
        const double exact = proximity_added_exact(2, spacing, q);
        // the neighbour's field is not uniform over the wire: (1/2)(a/D)^2 of it is the next order
        EXPECT_NEAR(exact, expected, expected * 0.2 / (spacing * spacing)) << spacing;
        EXPECT_NEAR(ProximityLoss(2, spacing).added(q), expected, 0.01 * expected) << spacing;
    }
}

TEST(ProximityLoss, ExactSolutionTendsToTheThinSkin) {
    for (const int turns : {2, 3, 7}) {
        for (const double spacing : {1.1, 1.5, 3.0}) {
            const ProximityLoss loss(turns, spacing);
            EXPECT_NEAR(proximity_added_exact(turns, spacing, 1e5), loss.thin_skin(),
                        1e-4 * loss.thin_skin());
            EXPECT_NEAR(loss.added(1e5), loss.thin_skin(), 1e-4 * loss.thin_skin());
        }
    }
}

// The stated accuracy of the bridge between the limits.
TEST(ProximityLoss, BridgeKeepsItsStatedAccuracy) {
    for (const int turns : {2, 3, 4, 6, 9, 12}) {
        for (const double spacing : {1.05, 1.15, 1.3, 1.5, 2.0, 3.5, 8.0}) {
            const ProximityLoss loss(turns, spacing);
            for (const double q : {0.4, 1.0, 1.7, 3.0, 5.0, 9.0, 20.0, 70.0, 500.0}) {
                const double exact = proximity_added_exact(turns, spacing, q);
                const double error = (loss.added(q) - exact) / loss.thin_skin();
                EXPECT_LT(std::fabs(error), spacing < 1.5 ? 0.032 : (q < 5.0 ? 0.02 : 0.01))
                    << turns << " turns at " << spacing << ", radius over skin depth " << q;
            }
        }
    }
}

TEST(ProximityLoss, FallsWithSpacingAndRisesWithTurnsAndFrequency) {
    for (int turns = 2; turns <= 12; ++turns) {
        double before = 1e9;
        for (const double spacing : {1.05, 1.2, 1.5, 2.0, 3.0, 6.0, 20.0}) {
            const ProximityLoss loss(turns, spacing);
            EXPECT_LT(loss.thin_skin(), before);
            EXPECT_GT(loss.thin_skin(), ProximityLoss(turns - 1, spacing).thin_skin());
            before = loss.thin_skin();
            double lower = 0.0;
            for (const double q : support::geometric(0.1, 1e4, 1.3)) {
                EXPECT_GT(loss.added(q), lower);
                lower = loss.added(q);
            }
        }
    }
}

TEST(ProximityLoss, TurnsMirrorAndTheirMeanIsTheWhole) {
    const ProximityLoss loss(7, 1.3);
    const auto& factors = loss.turn_factors();
    for (std::size_t i = 0; i < factors.size(); ++i) {
        EXPECT_DOUBLE_EQ(factors[i], factors[factors.size() - 1 - i]);
        EXPECT_GE(factors[i], 1.0);
    }
    const double mean = std::accumulate(factors.begin(), factors.end(), 0.0) / 7.0;
    EXPECT_NEAR(mean - 1.0, loss.thin_skin(), 1e-12);
}

TEST(ProximityLoss, OneTurnHasNoneAndBadLinesAreRefused) {
    EXPECT_EQ(ProximityLoss(1, 2.0).thin_skin(), 0.0);
    EXPECT_EQ(ProximityLoss(1, 2.0).added(100.0), 0.0);
    EXPECT_EQ(ProximityLoss(3, 2.0).added(0.0), 0.0);
    EXPECT_THROW(ProximityLoss(0, 2.0), base::ProgramError);
    EXPECT_THROW(ProximityLoss(2, 1.0), base::ProgramError);
    EXPECT_THROW((void)ProximityLoss(2, 2.0).added(-1.0), base::ProgramError);
}

} // namespace loopwright::conductor
