#include "numeric/monotone.hpp"

#include "base/error.hpp"

// clang-format off
#include <math.h> // NOLINT(modernize-deprecated-headers): the library below asks for ::isnan
#include <boost/math/interpolators/pchip.hpp>
// clang-format on
#include <gtest/gtest.h>

#include <cmath>

namespace loopwright::numeric {

// The same curve as a general reference library's: Boost.Math, interpolators/pchip.hpp. That takes the end
// secants for the slopes at the ends, so ours are handed to it.
TEST(MonotoneCurve, IsThatOfTheReferenceLibrary) {
    const std::vector<double> x{0, 10, 25, 60, 90, 140, 180}, y{12, 14, 21, 50, 80, 129, 150};
    const MonotoneCurve curve(x, y);
    auto boost_x = x, boost_y = y;
    const boost::math::interpolators::pchip<std::vector<double>> reference(
        std::move(boost_x), std::move(boost_y), curve.slope(0), curve.slope(180));
    for (double at = 0.5; at < 180; at += 0.5) {
        EXPECT_NEAR(curve(at), reference(at), 1e-12 * 150) << at;
        EXPECT_NEAR(curve.slope(at), reference.prime(at), 1e-12) << at;
    }
}

// Three points give a parabola's slope at its ends exactly: x^2 has 2x.
TEST(MonotoneCurve, EndSlopesAreThoseOfAParabola) {
    const MonotoneCurve curve({1, 2, 4, 7}, {1, 4, 16, 49});
    EXPECT_NEAR(curve.slope(1), 2, 1e-12);
    EXPECT_NEAR(curve.slope(7), 14, 1e-12);
}

TEST(MonotoneCurve, NeverTurnsBackAndIsInverted) {
    for (const double sign : {1.0, -1.0}) {
        const std::vector<double> x{-3, 0, 0.5, 4, 100}, rising{1, 1.001, 50, 51, 51.5};
        std::vector<double> y;
        for (const double each : rising) {
            y.push_back(sign * each);
        }
        const MonotoneCurve curve(x, y);
        double last = curve(-3);
        for (int i = 1; i <= 4000; ++i) {
            const double at = -3 + 103.0 * i / 4000;
            const double value = curve(at);
            EXPECT_GT(sign * value, sign * last) << at;
            EXPECT_GT(sign * curve.slope(at), 0) << at;
            EXPECT_NEAR(curve(curve.inverse(value)), value, 1e-11) << at;
            last = value;
        }
        for (std::size_t i = 0; i < x.size(); ++i) {
            EXPECT_NEAR(curve(x[i]), y[i], 1e-12);
            EXPECT_NEAR(curve.inverse(y[i]), x[i], 1e-9);
        }
    }
}

TEST(MonotoneCurve, TwoPointsAreALineAndTheEndsHold) {
    const MonotoneCurve line({2, 4}, {10, 0});
    EXPECT_EQ(line(3), 5);
    EXPECT_EQ(line.slope(3.5), -5);
    EXPECT_EQ(line.inverse(7.5), 2.5);
    EXPECT_EQ(line(0), 10);
    EXPECT_EQ(line(9), 0);
    EXPECT_EQ(line.slope(9), -5);
    EXPECT_EQ(line.inverse(11), 2);
    EXPECT_EQ(line.inverse(-1), 4);
}

TEST(MonotoneCurve, RefusesOtherTables) {
    EXPECT_THROW(MonotoneCurve({1}, {1}), base::ProgramError);
    EXPECT_THROW(MonotoneCurve({1, 2}, {1}), base::ProgramError);
    EXPECT_THROW(MonotoneCurve({1, 1}, {1, 2}), base::ProgramError);
    EXPECT_THROW(MonotoneCurve({1, 2, 3}, {1, 2, 2}), base::ProgramError);
    EXPECT_THROW(MonotoneCurve({1, 2, 3}, {1, 2, 1.5}), base::ProgramError);
    EXPECT_THROW(MonotoneCurve({1, 2}, {1, NAN}), base::ProgramError);
}

} // namespace loopwright::numeric
