#include "base/error.hpp"
#include "numeric/interpolation.hpp"
#include "numeric/roots.hpp"
#include "support/spaced.hpp"

#include <cmath>
#include <gsl/gsl_sf_bessel.h>
#include <gtest/gtest.h>

namespace loopwright::numeric {

// Zeros of J0 by the GNU Scientific Library's own table of zeros.
TEST(BracketedRoot, FindsTheZerosOfJ0) {
    for (unsigned n = 1; n <= 8; ++n) {
        const double zero = gsl_sf_bessel_zero_J0(n);
        const double found =
            bracketed_root([](double x) { return gsl_sf_bessel_J0(x); }, zero - 1.0, zero + 1.3);
        EXPECT_NEAR(found, zero, 1e-13 * zero);
    }
}

TEST(BracketedRoot, TakesARootAtAnEndAndRefusesNone) {
    const auto line = [](double x) { return x - 2.0; };
    EXPECT_EQ(bracketed_root(line, 2.0, 3.0), 2.0);
    EXPECT_EQ(bracketed_root(line, 1.0, 2.0), 2.0);
    EXPECT_THROW((void)bracketed_root(line, 3.0, 4.0), base::ProgramError);
    EXPECT_THROW((void)bracketed_root([](double x) { return std::log(x - 1.5); }, 1.0, 4.0),
                 base::ProgramError);
}

// The slopes come from parabolas: a parabola is reproduced exactly, and the error on sin falls as the third
// power of the spacing at least.
TEST(HermiteCurve, ReproducesParabolasAndConverges) {
    const HermiteCurve parabola({0.0, 1.0, 1.5, 4.0}, {2.0, 3.0, 4.25, 18.0}); // 2 + x^2
    for (const double x : support::even(0.0, 4.0, 0.1)) {
        EXPECT_NEAR(parabola(x), 2.0 + x * x, 1e-13);
    }
    const auto worst = [](int points) {
        std::vector<double> x, y;
        for (int i = 0; i < points; ++i) {
            x.push_back(3.0 * i / (points - 1));
            y.push_back(std::sin(x.back()));
        }
        const HermiteCurve curve(x, y);
        double error = 0.0;
        for (const double at : support::even(0.0, 3.0, 0.013)) {
            error = std::fmax(error, std::fabs(curve(at) - std::sin(at)));
        }
        return error;
    };
    EXPECT_LT(worst(21), 1e-3);
    EXPECT_LT(worst(41), worst(21) / 7.0);
    EXPECT_LT(worst(81), worst(41) / 7.0);
}

TEST(HermiteCurve, StaysAtItsEndsAndRefusesBadTables) {
    const HermiteCurve curve({0.0, 1.0, 2.0}, {5.0, 6.0, 9.0});
    EXPECT_EQ(curve(-1.0), 5.0);
    EXPECT_EQ(curve(7.0), 9.0);
    EXPECT_THROW(HermiteCurve({0.0, 1.0}, {0.0, 1.0}), base::ProgramError);
    EXPECT_THROW(HermiteCurve({0.0, 2.0, 1.0}, {0.0, 1.0, 2.0}), base::ProgramError);
    EXPECT_THROW(HermiteCurve({0.0, 1.0, 2.0}, {0.0, NAN, 2.0}), base::ProgramError);
}

} // namespace loopwright::numeric
