// The static kernel against means over two circles taken point by point, and the double integrals over pairs
// of elements against adaptive quadrature.
#include "wire/detail/kernel.hpp"

#include "units/constants.hpp"
#include "wire/detail/site_pairs.hpp"
#include "wire/loops.hpp"

#include <algorithm>
#include <boost/math/quadrature/tanh_sinh.hpp>
#include <cmath>
#include <gtest/gtest.h>

namespace loopwright::wire::testing {
namespace {

using geometry::Vector3;
using units::constants::pi;

struct Ring {
    Vector3 centre, axis;
    double radius_m;
    [[nodiscard]] Vector3 at(double angle) const {
        const Vector3 side = unit(cross(axis, std::abs(axis.z) < 0.9 ? Vector3{0, 0, 1} : Vector3{1, 0, 0}));
        return centre + radius_m * (std::cos(angle) * side + std::sin(angle) * cross(axis, side));
    }
};

/// Mean of 1/R over two circles; the trapezium rule on smooth periodic functions.
double mean_over_rings(const Ring& one, const Ring& other) {
    constexpr int n = 160;
    double sum = 0;
    for (int i = 0; i < n; ++i) {
        for (int k = 0; k < n - 3; ++k) {
            sum += 1 / norm(one.at(2 * pi * i / n) - other.at(2 * pi * (k + 0.5) / (n - 3)));
        }
    }
    return sum / n / (n - 3);
}

double kernel_of(const Ring& one, const Ring& other) {
    return detail::static_kernel(one.centre - other.centre, one.axis, other.axis, one.radius_m,
                                 other.radius_m);
}

TEST(StaticKernel, IsExactForCoaxialCircles) {
    for (const double distance : {0.7, 1.0, 3.0, 30.0}) {
        const Ring one{{0, 0, 0}, {0, 0, 1}, 1.0};
        const Ring other{{0, 0, distance}, {0, 0, 1}, 0.5};
        EXPECT_NEAR(kernel_of(one, other) / mean_over_rings(one, other), 1, 1e-12) << distance;
    }
}

// Both formulas are first terms of an expansion in radius over distance: side by side and at corners.
TEST(StaticKernel, IsNearTheMeanForWiresSideBySideAndAtCorners) {
    struct Pair {
        Ring one, other;
        double tolerance;
    };
    const double h = std::sqrt(0.5);
    const std::vector<Pair> pairs{
        {{{0, 0, 0}, {0, 0, 1}, 1}, {{4, 0, 0}, {0, 0, 1}, 1}, 5e-3},
        {{{0, 0, 0}, {0, 0, 1}, 1}, {{7.5, 0, 0}, {0, 0, 1}, 0.5}, 1e-3},
        {{{0, 0, 0}, {0, 0, 1}, 1}, {{4, 0, 3}, {0, 0, 1}, 1}, 4e-3},
        {{{-3, 0, 0}, {1, 0, 0}, 1}, {{0, 3, 0}, {0, 1, 0}, 1}, 2e-3},
        {{{-3, 0, 0}, {1, 0, 0}, 1}, {{3 * h, 3 * h, 0}, {h, h, 0}, 1}, 1e-3},
        {{{-5, 0, 0}, {1, 0, 0}, 1}, {{5 * h, 5 * h, 0}, {h, h, 0}, 1}, 1e-4},
    };
    for (const Pair& pair : pairs) {
        EXPECT_NEAR(kernel_of(pair.one, pair.other) / mean_over_rings(pair.one, pair.other), 1,
                    pair.tolerance);
    }
}

// Neumann's formula takes the axes of parallel wires: exact for current that is even around each.
TEST(StaticKernel, MutualPartOfParallelWiresIsThatOfTheirAxes) {
    boost::math::quadrature::tanh_sinh<double> integrate;
    const double a1 = 1, a2 = 0.6, apart = 6;
    const auto difference = [&](double u) {
        return detail::static_kernel({apart, 0, u}, {0, 0, 1}, {0, 0, 1}, a1, a2) - 1 / std::hypot(apart, u);
    };
    const double left = 2 * integrate.integrate(difference, 0.0, INFINITY);
    // Without the second term it would be -(a1^2 + a2^2)/apart^2 = -0.038.
    EXPECT_LT(std::abs(left), 5e-4);
}

/// Sum of weights times the static kernel over a pair of elements.
double pair_integral(const Mesh& mesh, std::size_t p, std::size_t q) {
    const detail::SiteCache cache(mesh);
    double sum = 0;
    const auto visit = [&](const detail::Site& s, const detail::Site& t, double weight) {
        sum += weight * detail::static_kernel(s.point - t.point, s.tangent, t.tangent,
                                              mesh.elements()[p].radius_m, mesh.elements()[q].radius_m);
    };
    detail::PairWalk walk(mesh, cache, visit);
    walk.walk(p, q);
    return p == q ? 2 * sum : sum;
}

/// The same for two parts of one straight line, as a single integral over the distance.
double line_integral(const Element& one, const Element& other, double radius) {
    boost::math::quadrature::tanh_sinh<double> integrate;
    const auto overlap = [&](double shift) { // length of `one` that meets `other` after a shift
        const double low = std::max(one.begin_m, other.begin_m + shift);
        const double high = std::min(one.begin_m + one.length_m, other.begin_m + other.length_m + shift);
        return std::max(0.0, high - low);
    };
    const auto kernel = [&](double v) {
        const double d = std::max(std::abs(v), 1e-150);
        return overlap(v) * detail::static_kernel({0, 0, d}, {0, 0, 1}, {0, 0, 1}, radius, radius);
    };
    const double gap = std::abs(one.begin_m - other.begin_m);
    std::vector<double> kinks{0.0};
    for (const double shift :
         {gap, gap + one.length_m, gap - other.length_m, gap + one.length_m - other.length_m}) {
        kinks.push_back(shift);
        kinks.push_back(-shift);
    }
    std::sort(kinks.begin(), kinks.end());
    double sum = 0;
    for (std::size_t i = 0; i + 1 < kinks.size(); ++i) {
        if (kinks[i + 1] - kinks[i] > 1e-12) {
            sum += integrate.integrate(kernel, kinks[i], kinks[i + 1]);
        }
    }
    return sum;
}

TEST(PairIntegrals, OfAStraightWireAgreeWithAdaptiveQuadrature) {
    for (const double radius : {0.0005, 0.005, 0.03}) {
        const WireModel model{{straight({0, 0, 0}, {0, 0, 1}, radius)}, {{0, 0.5, 0.02}}, {}};
        const Mesh mesh(model, {});
        const auto& elements = mesh.elements();
        const std::size_t middle = elements.size() / 2;
        for (const std::size_t q : {middle, middle - 1, middle - 2, middle - 4, std::size_t{0}}) {
            const double wanted = line_integral(elements[middle], elements[q], radius);
            EXPECT_NEAR(pair_integral(mesh, middle, q) / wanted, 1, 3e-6)
                << radius << ' ' << middle - q << ' ' << elements[q].length_m;
        }
    }
}

} // namespace
} // namespace loopwright::wire::testing
