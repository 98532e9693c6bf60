// Near fields against a textbook formula and against Maxwell's equations.
#include "wire/near_field.hpp"

#include "base/error.hpp"
#include "support/cases.hpp"
#include "support/compared.hpp"
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

/// A circle's field with the same current everywhere; image: that of the ground below added.
NearField uniform_circle(const support::Case& c, double amperes, const Vector3& point) {
    const double radius = c.input("radius");
    const bool over_ground = c.has_input("height");
    const bool vertical = over_ground && c.input_text("orientation") == "vertical";
    const double height = over_ground ? c.input("height") : 0.0;
    NearField sum;
    for (const double sign : over_ground ? std::vector{1.0, -1.0} : std::vector{1.0}) {
        const Vector3 up = vertical ? Vector3{0, 0, sign} : Vector3{0, 1, 0};
        const WireModel model{{circle({0, 0, sign * height}, {1, 0, 0}, up, 2 * radius, 1e-4)}, {}, {}};
        const Mesh mesh(model, {});
        Currents currents{2 * pi * c.input("frequency") / units::constants::speed_of_light_m_s, {}, {}};
        currents.unknown_A.assign(mesh.nodes(), 0.0);
        currents.unknown_A.front() = sign * amperes;
        currents.node_A.assign(mesh.nodes(), sign * amperes);
        const NearField part = near_field(mesh, currents, point);
        for (std::size_t i = 0; i < 3; ++i) {
            sum.electric_V_m[i] += part.electric_V_m[i];
            sum.magnetic_A_m[i] += part.magnetic_A_m[i];
        }
    }
    return sum;
}

// Limit: the quadrature's 1e-5, as the header states.
TEST(NearField, OfCirclesOfUniformCurrentMatchesTheIndependentCases) {
    const support::Compared table("independent-cases", "Near fields of circles of uniform current");
    int met = 0;
    for (const auto& c : support::independent_cases("nearfield")) {
        if (c.has_input("gap_width")) {
            continue; // tuned loops
        }
        const bool listed = c.has_input("point");
        const auto p =
            listed ? c.input_point("point") : std::array<double, 3>{c.input("rho"), 0.0, c.input("z")};
        const double amperes = listed ? c.input("I_rms") : c.output("I_rms");
        const NearField field = uniform_circle(c, amperes, {p[0], p[1], p[2]});
        table.share(c.id, "H_rms", field.magnetic_rms_A_m(), c.output("H_rms"), 1e-5);
        if (c.has_output("E_rms")) {
            table.share(c.id, "E_rms", field.electric_rms_V_m(), c.output("E_rms"), 1e-5);
        }
        ++met;
    }
    EXPECT_EQ(met, 5);
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
