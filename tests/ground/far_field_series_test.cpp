// The series against the direct sum it stands for, and its sky power against the direct quadrature.
#include "ground/far_field_series.hpp"

#include "base/error.hpp"
#include "ground/soil.hpp"

#include <cmath>
#include <gtest/gtest.h>
#include <random>

namespace loopwright::ground {
namespace {

using Complex = std::complex<double>;

/// A tilted ring with a current that is not uniform.
std::vector<CurrentElement> ring(double radius_m, double height_m, double tilt_rad) {
    std::vector<CurrentElement> elements;
    constexpr int n = 40;
    for (int i = 0; i < n; ++i) {
        const double t = 2 * 3.14159265358979 * i / n;
        const double c = std::cos(t), s = std::sin(t), step = 2 * 3.14159265358979 * radius_m / n;
        const Complex current(1.0 + 0.3 * c, 0.2 * s);
        elements.push_back(
            {{radius_m * c, radius_m * s * std::sin(tilt_rad), height_m + radius_m * s * std::cos(tilt_rad)},
             {-s * step * current, c * std::sin(tilt_rad) * step * current,
              c * std::cos(tilt_rad) * step * current}});
    }
    return elements;
}

TEST(FarFieldSeries, IsTheDirectSum) {
    std::mt19937 random(3);
    std::uniform_real_distribution<double> share(0.0, 1.0);
    for (const double k : {0.04, 0.3, 1.1}) {
        for (const double tilt : {0.0, 0.6}) {
            const auto elements = ring(1.0, 2.5, tilt);
            const FarFieldSeries series(elements, k);
            const Complex eps(13, -12);
            double largest = 0;
            for (int i = 0; i < 20; ++i) {
                const double zenith = 1.57 * share(random), azimuth = 6.28 * share(random);
                const FarField a = series.over_ground(eps, zenith, azimuth);
                const FarField b = far_field(elements, k, eps, zenith, azimuth);
                largest = std::max({largest, std::abs(b.e_theta_V), std::abs(b.e_phi_V)});
                EXPECT_LT(std::abs(a.e_theta_V - b.e_theta_V), 1e-5 * largest) << k << ' ' << tilt;
                EXPECT_LT(std::abs(a.e_phi_V - b.e_phi_V), 1e-5 * largest) << k << ' ' << tilt;
                const FarField c = series.free_space(zenith, azimuth);
                const FarField d = far_field(elements, k, {1.0, 0.0}, zenith, azimuth);
                EXPECT_LT(std::abs(c.e_theta_V - d.e_theta_V) + std::abs(c.e_phi_V - d.e_phi_V),
                          1e-5 * largest);
            }
        }
    }
}

// Beside the origin, so that the centre's phase counts: the field one by one has it, the ring leaves it out
// of two currents on the same pieces alike.
TEST(FarFieldSeries, ARingIsTheFieldsOneByOneButForAPhase) {
    auto elements = ring(0.8, 2.5, 0.6);
    for (CurrentElement& e : elements) {
        e.position_m[0] += 0.9;
        e.position_m[1] -= 1.7;
    }
    auto others = elements;
    for (std::size_t i = 0; i < others.size(); ++i) {
        others[i].moment_A_m[2] *= Complex(0.1 * static_cast<double>(i), 0.7);
    }
    const double k = 0.6;
    const FarFieldSeries first(elements, k), second(others, k);
    const std::vector<double> around{0.3, 1.9, 2.0, 4.4};
    for (const Complex eps : {Complex(13, -12), Complex(1, 0)}) {
        for (const double zenith : {0.2, 1.1, 1.5}) {
            std::vector<FarField> a, b;
            first.ring(eps, zenith, first.azimuths(around), a);
            second.ring(eps, zenith, second.azimuths(around), b);
            ASSERT_EQ(a.size(), around.size());
            for (std::size_t i = 0; i < around.size(); ++i) {
                const FarField f = first.over_ground(eps, zenith, around[i]);
                const FarField g = second.over_ground(eps, zenith, around[i]);
                const FarField direct = far_field(elements, k, eps, zenith, around[i]);
                const double size = std::abs(f.e_theta_V) + std::abs(f.e_phi_V);
                EXPECT_LT(std::abs(f.e_theta_V - direct.e_theta_V) + std::abs(f.e_phi_V - direct.e_phi_V),
                          1e-6 * size);
                EXPECT_NEAR(std::norm(a[i].e_theta_V), std::norm(f.e_theta_V), 1e-13 * size * size);
                EXPECT_NEAR(std::norm(a[i].e_phi_V), std::norm(f.e_phi_V), 1e-13 * size * size);
                const Complex together = f.e_theta_V * std::conj(g.e_theta_V);
                EXPECT_LT(std::abs(a[i].e_theta_V * std::conj(b[i].e_theta_V) - together),
                          1e-12 * std::abs(together));
            }
        }
    }
}

TEST(FarFieldSeries, SkyPowerConverged) {
    for (const double height : {1.3, 5.0, 20.0}) {
        for (const double k : {0.04, 0.3, 1.1}) {
            for (const Complex eps : {Complex(13, -12), Complex(3, -0.1), Complex(70, -6000)}) {
                const auto elements = ring(1.0, height, 0.4);
                EXPECT_NEAR(FarFieldSeries(elements, k).sky_power_W(eps) /
                                sky_power_W(elements, k, eps, 96, 32),
                            1.0, 2e-5)
                    << height << ' ' << k << eps;
            }
        }
    }
}

TEST(FarFieldSeries, RefusesLargeSystems) {
    EXPECT_FALSE(FarFieldSeries::reaches(ring(1.0, 2, 0), 5.0));
    EXPECT_THROW(FarFieldSeries(ring(1.0, 2, 0), 5.0), base::ProgramError);
}

} // namespace
} // namespace loopwright::ground
