// The table of near-field kernels against the integrals themselves, taken four times as finely.
#include "ground/field_table.hpp"

#include "base/error.hpp"
#include "units/constants.hpp"

#include <cmath>
#include <gtest/gtest.h>
#include <random>

namespace loopwright::ground {
namespace {

using Complex = std::complex<double>;
using units::constants::pi;

struct Case {
    double frequency_Hz, permittivity, conductivity_S_m, z_min_m;
};

class FieldTables : public testing::TestWithParam<Case> {};

double k_of(const Case& c) {
    return 2 * pi * c.frequency_Hz / units::constants::speed_of_light_m_s;
}
Complex soil(const Case& c) {
    return {c.permittivity,
            -c.conductivity_S_m / (2 * pi * c.frequency_Hz * units::constants::electric_constant_F_m)};
}

TEST_P(FieldTables, AgreeWithTheIntegrals) {
    const Case c = GetParam();
    const double k = k_of(c), rho_max = 30;
    FieldTable table(k, soil(c), rho_max, c.z_min_m, 6.0);
    std::mt19937 random(3);
    std::uniform_real_distribution<double> share(0, 1);
    double worst = 0;
    for (int i = 0; i < 60; ++i) {
        const double rho = c.z_min_m * std::sinh(share(random) * std::asinh(rho_max / c.z_min_m));
        const double z = c.z_min_m * std::pow(6.0 / c.z_min_m, share(random));
        const FieldKernels exact = HalfSpace(k, soil(c), rho, z, 2).fields(rho, z);
        const FieldKernels got = table.at(rho, z);
        const double r = std::hypot(rho, z);
        const double of_potential = 1 / (4 * pi * r);
        const double of_slope = std::abs(Complex(1, k * r)) / (4 * pi * r * r);
        const auto check = [&](Complex a, Complex b, double size, const char* name) {
            const double error = std::abs(a - b) / size;
            worst = std::max(worst, error);
            const bool wave_in_the_soil = rho > 2 * pi / k && c.conductivity_S_m < 5e-3;
            EXPECT_LT(error, wave_in_the_soil ? 2e-3 : 1e-3)
                << name << " at rho " << rho << " m, Z " << z << " m";
        };
        check(got.potential.horizontal, exact.potential.horizontal, of_potential, "horizontal");
        check(got.potential.vertical, exact.potential.vertical, of_potential, "vertical");
        check(got.potential.mixed, exact.potential.mixed, of_potential, "mixed");
        check(got.potential.scalar, exact.potential.scalar, of_potential, "scalar");
        check(got.scalar_drho, exact.scalar_drho, of_slope, "scalar_drho");
        check(got.scalar_dz, exact.scalar_dz, of_slope, "scalar_dz");
        check(got.horizontal_drho, exact.horizontal_drho, of_slope, "horizontal_drho");
        check(got.horizontal_dz, exact.horizontal_dz, of_slope, "horizontal_dz");
        check(got.vertical_true_drho, exact.vertical_true_drho, of_slope, "vertical_true_drho");
        check(got.mixed_drho, exact.mixed_drho, of_slope, "mixed_drho");
        check(got.mixed_over_rho, exact.mixed_over_rho, of_slope, "mixed_over_rho");
    }
    RecordProperty("worst_relative_error", std::to_string(worst));
}

INSTANTIATE_TEST_SUITE_P(GroundsAndBands, FieldTables,
                         testing::Values(Case{1.84e6, 13, 5e-3, 0.1}, Case{7.1e6, 13, 5e-3, 0.1},
                                         Case{28.5e6, 15, 1e-3, 0.5}, Case{14.1e6, 3, 1e-4, 0.2},
                                         Case{7.1e6, 70, 5, 0.3}, Case{50.3e6, 30, 1e-2, 1.0}));

TEST(FieldTable, RefusesWhatItDoesNotCover) {
    FieldTable table(0.3, {13, -6}, 5, 0.5, 3);
    EXPECT_THROW((void)table.at(6, 1), base::ProgramError);
    EXPECT_THROW((void)table.at(1, 0.4), base::ProgramError);
    EXPECT_THROW((void)table.at(1, 3.1), base::ProgramError);
    EXPECT_THROW(FieldTable(0.3, {13, -6}, 5, 0, 3), base::ProgramError);
}

} // namespace
} // namespace loopwright::ground
