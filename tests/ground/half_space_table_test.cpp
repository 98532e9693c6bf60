// The table against the direct integrals it is built from, over grounds, bands and heights.
#include "ground/half_space_table.hpp"

#include "base/error.hpp"
#include "ground/soil.hpp"
#include "units/constants.hpp"

#include <algorithm>
#include <gtest/gtest.h>
#include <random>

namespace loopwright::ground {
namespace {

using units::constants::pi;

struct Setting {
    double f_Hz, eps_r, sigma, lowest_m, size_m;
};

class Table : public ::testing::TestWithParam<Setting> {};

TEST_P(Table, HoldsItsTolerance) {
    const Setting s = GetParam();
    const double k0 = 2.0 * pi * s.f_Hz / units::constants::speed_of_light_m_s;
    const auto eps = complex_permittivity({s.eps_r, units::siemens_per_metre(s.sigma)}, units::hertz(s.f_Hz));
    const double z_min = 2.0 * s.lowest_m;
    const double z_max = 2.0 * (s.lowest_m + s.size_m);
    const double tolerance = 1e-6;
    const HalfSpaceTable table(k0, eps, s.size_m, z_min, z_max, tolerance);
    EXPECT_LE(table.error_estimate(), tolerance);
    const HalfSpace direct(k0, eps, s.size_m, z_min);
    std::mt19937 random(7);
    std::uniform_real_distribution<double> share(0.0, 1.0);
    double worst = 0;
    for (int i = 0; i < 60; ++i) {
        const double rho = i == 0 ? 0.0 : s.size_m * share(random);
        const double z = z_min + (z_max - z_min) * share(random);
        const PotentialKernels a = table.potentials(rho, z);
        const PotentialKernels b = direct.potentials(rho, z);
        const double scale = 4.0 * pi * std::hypot(rho, z);
        worst = std::max({worst, scale * std::abs(a.horizontal - b.horizontal),
                          scale * std::abs(a.vertical - b.vertical), scale * std::abs(a.mixed - b.mixed),
                          scale * std::abs(a.scalar - b.scalar)});
    }
    EXPECT_LT(worst, 2.0 * tolerance) << table.chebyshev_nodes()[0] << " x " << table.chebyshev_nodes()[1];
}

INSTANTIATE_TEST_SUITE_P(
    Grounds, Table,
    ::testing::Values(Setting{7.1e6, 13, 0.005, 0.5, 0.9}, Setting{28.5e6, 13, 0.005, 0.1, 1.0},
                      Setting{28.5e6, 3, 1e-4, 1.0, 1.0}, Setting{1.84e6, 30, 0.01, 0.1, 3.5},
                      Setting{14.1e6, 70, 5.0, 0.3, 1.7}, Setting{50e6, 80, 0.003, 0.2, 2.0},
                      Setting{21e6, 15, 0.001, 20.0, 6.0}));

TEST(HalfSpaceTable, RefusesALookUpOutside) {
    const HalfSpaceTable table(0.1, {13.0, -10.0}, 1.0, 0.5, 2.0);
    EXPECT_THROW((void)table.potentials(1.1, 1.0), base::ProgramError);
    EXPECT_THROW((void)table.potentials(0.5, 0.4), base::ProgramError);
    EXPECT_THROW((void)table.potentials(0.5, 2.1), base::ProgramError);
}

} // namespace
} // namespace loopwright::ground
