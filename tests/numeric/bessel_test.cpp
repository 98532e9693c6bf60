#include "numeric/bessel.hpp"

#include "base/error.hpp"
#include "numeric/annulus.hpp"
#include "reference/bessel_table.hpp"

#include <algorithm>
#include <cmath>
#include <gsl/gsl_sf_bessel.h>
#include <gtest/gtest.h>
#include <numbers>
#include <vector>

namespace loopwright::numeric {
namespace {

using Complex = std::complex<double>;

// w = z^2 on the ray of 45 degrees: purely imaginary.
Complex w_of(double modulus) {
    return {0.0, modulus * modulus};
}

void expect_parts(Complex value, double real, double imag, double tolerance) {
    EXPECT_NEAR(value.real(), real, tolerance * std::fabs(real));
    EXPECT_NEAR(value.imag(), imag, tolerance * std::fabs(imag));
}

} // namespace

// mpmath 1.2.1 at 40 digits; 1e-14 in each part, over the seams of the methods.
TEST(WireRatio, AgreesWithMpmath) {
    for (const auto& row : reference::wire_rows) {
        SCOPED_TRACE(row.modulus);
        expect_parts(half_z_i0_over_i1(w_of(row.modulus)), row.real, row.imag, 1e-14);
    }
}

TEST(TubeRatio, AgreesWithMpmath) {
    for (const auto& row : reference::tube_rows) {
        SCOPED_TRACE(testing::Message() << row.modulus << " wall " << row.wall);
        expect_parts(tube_ratio(w_of(row.modulus), row.wall), row.real, row.imag, 1e-13);
    }
}

TEST(ScaledBessel, AgreesWithMpmath) {
    for (const auto& row : reference::four_rows) {
        SCOPED_TRACE(testing::Message() << row.modulus << " at " << row.degrees << " degrees");
        const Complex z = std::polar(row.modulus, row.degrees * std::numbers::pi / 180.0);
        const ScaledBessel all = scaled_bessel(z);
        const Complex values[] = {all.i0, all.i1, all.k0, all.k1};
        for (std::size_t i = 0; i < 4; ++i) {
            const Complex expected(row.values[2 * i], row.values[2 * i + 1]);
            // rounding of z itself turns the phase of exp(z) by |z| epsilon, which scaling takes out again
            EXPECT_LT(std::abs(values[i] - expected), 1e-13 * std::abs(expected)) << i;
        }
    }
}

// GNU Scientific Library 2.7.1, real argument.
TEST(ScaledBessel, AgreesWithGslOnTheRealAxis) {
    for (const double x : {1e-6, 0.03, 0.7, 1.99, 2.01, 5.5, 13.0, 25.0, 27.0, 90.0, 4000.0}) {
        SCOPED_TRACE(x);
        const ScaledBessel all = scaled_bessel(x);
        EXPECT_NEAR(all.i0.real(), gsl_sf_bessel_I0_scaled(x), 1e-13 * all.i0.real());
        EXPECT_NEAR(all.i1.real(), gsl_sf_bessel_I1_scaled(x), 1e-13 * all.i1.real());
        EXPECT_NEAR(all.k0.real(), gsl_sf_bessel_K0_scaled(x), 1e-13 * all.k0.real());
        EXPECT_NEAR(all.k1.real(), gsl_sf_bessel_K1_scaled(x), 1e-13 * all.k1.real());
        EXPECT_EQ(all.i0.imag(), 0.0);
    }
}

// Kelvin functions of order 0, Abramowitz and Stegun, as listed in the TEST_VALUES library (ber0_values and
// so on, which name A&S): ber + j bei = I0(x e^{j pi/4}), ker + j kei = K0(x e^{j pi/4}).
TEST(ScaledBessel, GivesTheKelvinFunctionsOfAbramowitzAndStegun) {
    struct Row {
        double x, ber, bei, ker, kei;
    };
    const Row rows[] = {
        {0.5, 0.9990234639908383, 0.06249321838219946, 0.8559058721186342, -0.6715816950943676},
        {1, 0.9843817812130869, 0.2495660400366597, 0.2867062087283160, -0.4949946365187199},
        {2, 0.7517341827138082, 0.9722916273066612, -0.04166451399150953, -0.2024000677647043},
        {3, -0.2213802495986939, 1.937586785266043, -0.06702923330379870, -0.05112188404598678},
        {4, -2.563416557258580, 2.292690322699300, -0.03617884789954761, 0.002198399294972520},
        {5, -6.230082478666358, 0.1160343815502004, -0.01151172719949066, 0.01118758650986964},
    };
    for (const Row& row : rows) {
        SCOPED_TRACE(row.x);
        const Complex z = row.x * Complex(std::numbers::sqrt2 / 2, std::numbers::sqrt2 / 2);
        const ScaledBessel all = scaled_bessel(z);
        EXPECT_LT(std::abs(all.i0 * std::exp(z) - Complex(row.ber, row.bei)),
                  2e-14 * std::abs(all.i0 * std::exp(z)));
        EXPECT_LT(std::abs(all.k0 * std::exp(-z) - Complex(row.ker, row.kei)),
                  2e-14 * std::abs(all.k0 * std::exp(-z)));
    }
}

// The tube by its defining Bessel functions, which are another method than the Taylor series in it.
TEST(TubeRatio, AgreesWithTheCrossProducts) {
    for (const double modulus : {0.4, 3.0, 9.0, 19.0}) {
        for (const double wall : {0.2, 0.5, 0.8, 0.95}) {
            SCOPED_TRACE(testing::Message() << modulus << " wall " << wall);
            const Complex outer = std::polar(modulus, std::numbers::pi / 4), inner = outer * (1.0 - wall);
            const ScaledBessel b = scaled_bessel(outer), a = scaled_bessel(inner);
            const Complex up = std::exp(outer - inner), down = 1.0 / up;
            const Complex top = b.i0 * a.k1 * up + b.k0 * a.i1 * down;
            const Complex bottom = b.i1 * a.k1 * up - b.k1 * a.i1 * down;
            const Complex expected = 0.5 * outer * wall * (2.0 - wall) * top / bottom;
            expect_parts(tube_ratio(w_of(modulus), wall), expected.real(), expected.imag(), 2e-12);
        }
    }
}

TEST(TubeRatio, BecomesTheWireAndTheDirectCurrent) {
    for (const double modulus : {0.01, 1.0, 10.0, 100.0, 1e4}) {
        const Complex wire = half_z_i0_over_i1(w_of(modulus));
        expect_parts(tube_ratio(w_of(modulus), 1.0), wire.real(), wire.imag(), 1e-15);
        expect_parts(tube_ratio(w_of(modulus), 1.0 - 1e-7), wire.real(), wire.imag(), 1e-11);
    }
    EXPECT_EQ(tube_ratio(0.0, 0.1), Complex(1.0));
    EXPECT_EQ(half_z_i0_over_i1(0.0), Complex(1.0));
    EXPECT_THROW((void)tube_ratio(w_of(1.0), 0.0), base::ProgramError);
    EXPECT_THROW((void)tube_ratio(w_of(1.0), 1.1), base::ProgramError);
    EXPECT_THROW((void)scaled_bessel(Complex(0.0, 1.0)), base::ProgramError);
}

// I_{n-1} - I_{n+1} = (2 n / z) I_n (A&S 9.6.26) joined over the orders, and the value for order 1 from h:
// I2/I0 = 1 - (2/z) I1/I0 = 1 - 1/h.
TEST(RatiosTwoApart, SatisfyTheRecurrence) {
    for (const double modulus : {1.0, 6.0, 30.0, 200.0, 5000.0}) {
        std::vector<Complex> ratio(20);
        i_ratios_two_apart(w_of(modulus), 20, ratio.data());
        const Complex expected = 1.0 - 1.0 / half_z_i0_over_i1(w_of(modulus));
        EXPECT_LT(std::abs(ratio[0] - expected), 1e-14 * std::max(1.0, std::abs(expected))) << modulus;
        const Complex w = w_of(modulus);
        for (int n = 1; n < 20; ++n) {
            // with s_n = I_n/I_{n-1} z: rho_n = 1 - 2n/(z) I_n/I_{n-1}; I_{n+1}/I_n = rho_n I_{n-1}/I_n
            const Complex tail =
                (1.0 - ratio[static_cast<std::size_t>(n - 1)]) / (2.0 * n);           // I_n/(z I_{n-1})
            const Complex next = ratio[static_cast<std::size_t>(n - 1)] / (w * tail); // I_{n+1}/(z I_n)
            const Complex other = (1.0 - ratio[static_cast<std::size_t>(n)]) / (2.0 * (n + 1));
            EXPECT_LT(std::abs(next - other), 1e-11 * std::abs(other)) << modulus << " " << n;
        }
    }
}

// Small argument: I_{n+1}/I_{n-1} -> w / (4 n (n + 1)), A&S 9.6.7.
TEST(RatiosTwoApart, HaveTheSmallArgumentLimit) {
    std::vector<Complex> ratio(5);
    i_ratios_two_apart(w_of(1e-4), 5, ratio.data());
    for (int n = 1; n <= 5; ++n) {
        EXPECT_NEAR(ratio[static_cast<std::size_t>(n - 1)].imag(), 1e-8 / (4.0 * n * (n + 1)), 1e-16) << n;
    }
}

} // namespace loopwright::numeric
