// Near fields against a textbook formula and against Maxwell's equations.
#include "wire/near_field.hpp"

#include "base/error.hpp"
#include "units/constants.hpp"
#include "wire/loops.hpp"

#include <array>
#include <cmath>
#include <gtest/gtest.h>

namespace loopwright::wire::testing {
namespace {

using geometry::Vector3;
using units::constants::electric_constant_F_m;
using units::constants::magnetic_constant_H_m;
using units::constants::pi;

Solution solved(double diameter_m, double radius_m, units::Frequency frequency) {
    const WireModel model{
        {vertical_circle(diameter_m, radius_m)}, {{0, pi * diameter_m / 2, 0.02}, {0, 0, 0.02}}, {}};
    return Solver(model, {}, frequency).solve(frequency, {{0.0}, {}});
}

// Field on the axis of a ring of current: I R^2 / (2 (R^2 + y^2)^(3/2)) (J. D. Jackson, Classical
// Electrodynamics, section 5.5; from memory).
TEST(NearField, OnTheAxisOfASmallLoop) {
    const Solution solution = solved(0.2, 0.001, units::kilohertz(100));
    const Currents currents = solution.currents(std::vector<Complex>{1.0, 0.0});
    const double amperes = std::abs(currents.node_A.front());
    for (const double y : {0.0, 0.05, 0.3, 1.0}) {
        const double wanted = amperes * 0.01 / (2 * std::pow(0.01 + y * y, 1.5));
        EXPECT_NEAR(near_field(solution.mesh(), currents, {0, y, 0}).magnetic_rms_A_m() / wanted, 1, 1e-4)
            << y;
    }
}

using Vector = std::array<Complex, 3>;

/// Curl of a field by differences of fourth order.
template <class Field>
Vector curl(const Field& field, const Vector3& p) {
    const double h = 3e-3;
    const auto slope = [&](const Vector3& step) {
        Vector result{};
        for (const auto& [at, weight] : {std::pair{-2.0, 1.0}, {-1.0, -8.0}, {1.0, 8.0}, {2.0, -1.0}}) {
            const Vector there = field(p + (at * h) * step);
            for (std::size_t c = 0; c < 3; ++c) {
                result[c] += weight / (12 * h) * there[c];
            }
        }
        return result;
    };
    const Vector x = slope({1, 0, 0}), y = slope({0, 1, 0}), z = slope({0, 0, 1});
    return {y[2] - z[1], z[0] - x[2], x[1] - y[0]};
}

double difference(const Vector& a, const Vector& b, Complex factor) {
    double sum = 0;
    for (std::size_t c = 0; c < 3; ++c) {
        sum += std::norm(a[c] - factor * b[c]);
    }
    return std::sqrt(sum);
}

// In the air, by differences of the computed fields: curl E = -j omega mu H and curl H = j omega eps E.
TEST(NearField, ObeysMaxwellsEquations) {
    const double omega = 2 * pi * 28e6;
    const Solution solution = solved(1, 0.01, units::megahertz(28));
    const Currents currents = solution.currents(std::vector<Complex>{1.0, {2.0, -3.0}});
    const auto electric = [&](const Vector3& p) {
        return near_field(solution.mesh(), currents, p).electric_V_m;
    };
    const auto magnetic = [&](const Vector3& p) {
        return near_field(solution.mesh(), currents, p).magnetic_A_m;
    };
    const Complex of_h(0, -omega * magnetic_constant_H_m);
    const Complex of_e(0, omega * electric_constant_F_m);
    for (const Vector3& p : {Vector3{0.7, 0.2, 0.1}, {0.1, 0.3, 0.2}, {0.0, 1.5, 0.8}}) {
        const NearField here = near_field(solution.mesh(), currents, p);
        EXPECT_LT(difference(curl(electric, p), here.magnetic_A_m, of_h),
                  5e-4 * std::abs(of_h) * here.magnetic_rms_A_m());
        EXPECT_LT(difference(curl(magnetic, p), here.electric_V_m, of_e),
                  5e-4 * std::abs(of_e) * here.electric_rms_V_m());
    }
}

TEST(NearField, RefusesAPointInsideAConductor) {
    const Solution solution = solved(1, 0.01, units::megahertz(7));
    const Currents currents = solution.currents(std::vector<Complex>{1.0, 0.0});
    for (const double angle : {0.0, 0.3, pi / 2, 2.7}) {
        const Vector3 outward{std::sin(angle), 0, std::cos(angle)};
        EXPECT_THROW((void)near_field(solution.mesh(), currents, 0.505 * outward), base::InputError) << angle;
        EXPECT_THROW((void)near_field(solution.mesh(), currents, 0.492 * outward), base::InputError) << angle;
        EXPECT_NO_THROW((void)near_field(solution.mesh(), currents, 0.515 * outward)) << angle;
    }
}

} // namespace
} // namespace loopwright::wire::testing
