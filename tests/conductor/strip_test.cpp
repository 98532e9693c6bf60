#include "conductor/strip.hpp"

#include "base/error.hpp"
#include "conductor/skin_effect.hpp"
#include "support/cases.hpp"
#include "support/spaced.hpp"

#include <cmath>
#include <gtest/gtest.h>
#include <numbers>

namespace loopwright::conductor {
namespace {

// Impedance over the resistance to direct current, thickness 1 mm.
std::complex<double> relative_impedance(double aspect, double thickness_over_depth) {
    const StripImpedance strip(units::millimetres(aspect), units::millimetres(1));
    const double sigma = 58e6;
    return strip.ohm_per_m(sigma, 1e-3 / thickness_over_depth) * sigma * aspect * 1e-6;
}

} // namespace

// A bar of square cross-section: the logarithmic capacity is 0.5901702995 of the side (Gamma(1/4)^2 / (4
// pi^(3/2)); Landkof, Foundations of Modern Potential Theory; from memory). A flat strip without thickness: a
// quarter of the width.
TEST(StripShape, HasTheCapacityOfSquareAndSegment) {
    const double gamma = std::tgamma(0.25);
    const double square = gamma * gamma / (4.0 * std::pow(std::numbers::pi, 1.5));
    EXPECT_NEAR(strip_shape(units::metres(1), units::metres(1)).equivalent_radius.value(), square, 1e-12);
    EXPECT_NEAR(strip_shape(units::metres(1), units::metres(1e-6)).equivalent_radius.value(), 0.25, 1e-5);
}

TEST(StripShape, DoesNotCareWhichSideIsTheThickness) {
    const auto a = strip_shape(units::millimetres(20), units::millimetres(1));
    const auto b = strip_shape(units::millimetres(1), units::millimetres(20));
    EXPECT_EQ(a.equivalent_radius, b.equivalent_radius);
    EXPECT_EQ(a.effective_perimeter, b.effective_perimeter);
    EXPECT_LT(a.effective_perimeter.value(), 42e-3); // less than the perimeter: edges carry too much
    EXPECT_THROW((void)strip_shape(units::metres(1), units::metres(0)), base::ProgramError);
}

// The independent cases give the resistance by a two-dimensional volume integral equation made apart from
// this program (u_num 5e-4); the stated accuracy of StripImpedance is 1 %.
TEST(StripImpedance, AgreesWithTheIndependentNumericalResistance) {
    int checked = 0;
    for (const support::Case& c : support::independent_cases("skin")) {
        if (!c.has_output("R_numerical_per_m")) {
            continue;
        }
        const auto sigma = units::siemens_per_metre(c.input("sigma"));
        const auto f = units::hertz(c.input("frequency"));
        const StripImpedance strip(units::metres(c.input("width")), units::metres(c.input("thickness")));
        const double expected = c.output("R_numerical_per_m");
        const double value = strip.ohm_per_m(sigma.value(), skin_depth(sigma, f).value()).real();
        EXPECT_NEAR(value, expected, 0.003 * expected) << c.id;
        // within the model uncertainty of the thin-skin limit as well
        EXPECT_NEAR(value, c.output("R_thin_skin_per_m"),
                    c.u_model("R_thin_skin_per_m") * c.output("R_thin_skin_per_m"))
            << c.id;
        ++checked;
    }
    EXPECT_EQ(checked, 2);
}

// Bars off the table's grid: aspect, thickness over skin depth, impedance over the resistance to direct
// current, by make_strip_table.py check. This tests the interpolation; the equation itself is tested by the
// independent cases.
TEST(StripImpedance, InterpolatesWithinItsStatedAccuracy) {
    const double rows[][4] = {
        {1.2, 3.5, 1.37685, 1.07253}, {3.5, 0.8, 1.01387, 0.170351},  {8, 2.2, 1.61076, 1.21235},
        {15, 30, 22.6035, 22.8371},   {30, 1.4, 1.56919, 0.865981},   {100, 0.25, 1.0871, 0.193946},
        {350, 5.5, 6.22427, 6.30666}, {1000, 1.0, 2.09173, 0.787732}, {1430, 0.7, 1.97641, 0.570409},
        {20, 75, 59.8235, 60.4596},
    };
    for (const auto& row : rows) {
        const auto z = relative_impedance(row[0], row[1]);
        const double modulus = std::hypot(row[2], row[3]);
        EXPECT_NEAR(z.real(), row[2], 0.005 * row[2]) << row[0] << " " << row[1];
        EXPECT_NEAR(z.imag(), row[3], 0.01 * modulus) << row[0] << " " << row[1];
    }
}

TEST(StripImpedance, TendsToDirectCurrentAndToCockcroftsLimit) {
    for (const double aspect : {1.0, 4.0, 30.0, 1000.0, 6000.0}) {
        const auto slow = relative_impedance(aspect, 1e-4);
        EXPECT_NEAR(slow.real(), 1.0, 1e-6) << aspect;
        EXPECT_GT(slow.imag(), 0.0) << aspect;
        const auto shape = strip_shape(units::millimetres(aspect), units::millimetres(1));
        const double limit = aspect * 1e-3 * 1e7 / shape.effective_perimeter.value() * 1e0; // tau = 1e7
        EXPECT_NEAR(relative_impedance(aspect, 1e7).real() / limit, 1.0, 0.003) << aspect;
    }
}

// Resistance rises with frequency, the internal inductance falls.
TEST(StripImpedance, IsMonotoneInFrequency) {
    // NOLINTNEXTLINE(clang-analyzer-security.FloatLoopCounter)
    for (const double aspect : support::geometric(1.0, 6000.0, 1.9)) {
        double resistance = 1.0 - 1e-6, inductance = 1e9;
        // NOLINTNEXTLINE(clang-analyzer-security.FloatLoopCounter)
        for (const double tau : support::geometric(1e-3, 1e4, 1.11)) {
            const auto z = relative_impedance(aspect, tau);
            EXPECT_GT(z.real(), resistance) << aspect << " " << tau;
            EXPECT_LT(z.imag() / (tau * tau), inductance * 1.002) << aspect << " " << tau;
            resistance = z.real() * (1.0 - 1e-6);
            inductance = z.imag() / (tau * tau);
        }
    }
}

TEST(StripImpedance, RefusesWhatTheTableDoesNotHold) {
    EXPECT_THROW(StripImpedance(units::metres(1), units::metres(1e-4)), base::ProgramError);
    const StripImpedance strip(units::millimetres(20), units::millimetres(1));
    EXPECT_THROW((void)strip.ohm_per_m(58e6, 0.0), base::ProgramError);
    EXPECT_THROW((void)strip.ohm_per_m(-1.0, 1e-5), base::ProgramError);
}

} // namespace loopwright::conductor
