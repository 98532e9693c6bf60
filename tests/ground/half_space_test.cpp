// Kernels of the half-space against: the image limits, independent evaluations of loops with uniform current,
// Wait's integrals for magnetic dipoles by adaptive quadrature, and Maxwell's equations themselves.
#include "ground/half_space.hpp"

#include "ground/soil.hpp"
#include "ground/waves.hpp"
#include "support/cases.hpp"
#include "support/compared.hpp"
#include "units/constants.hpp"

#include <algorithm>
#include <cmath>
#include <complex>
#include <cstdio>
#include <gtest/gtest.h>

namespace loopwright::ground {
namespace {

using Complex = std::complex<double>;
using units::constants::magnetic_constant_H_m;
using units::constants::pi;

Complex soil_at(double eps_r, double sigma, double f_Hz) {
    return complex_permittivity({eps_r, units::siemens_per_metre(sigma)}, units::hertz(f_Hz));
}
/// Impedance that the ground adds to a circle of uniform current: j omega mu0 times the double line integral.
Complex added_impedance(double f_Hz, double radius_m, double centre_height_m, Complex eps, bool vertical) {
    const double z_min = vertical ? 2.0 * (centre_height_m - radius_m) : 2.0 * centre_height_m;
    const HalfSpace half_space(k0_at(f_Hz), eps, 2.0 * radius_m, z_min);
    constexpr int n = 64; // trapezium rule on periodic smooth functions: converges geometrically
    const double step = 2.0 * pi / n;
    Complex sum = 0;
    for (int a = 0; a < n; ++a) {
        for (int b = 0; b < n; ++b) {
            const double pa = step * a;
            const double pb = step * b;
            if (!vertical) {
                const double rho = 2.0 * radius_m * std::abs(std::sin(0.5 * (pa - pb)));
                sum += std::cos(pa - pb) * half_space.potentials(rho, 2.0 * centre_height_m).horizontal;
                continue;
            }
            const double dx = radius_m * (std::cos(pa) - std::cos(pb));
            const double z_sum = 2.0 * centre_height_m + radius_m * (std::sin(pa) + std::sin(pb));
            const PotentialKernels k = half_space.potentials(std::abs(dx), z_sum);
            const double sign = dx > 0 ? 1.0 : (dx < 0 ? -1.0 : 0.0);
            const double tax = -std::sin(pa), taz = std::cos(pa), tbx = -std::sin(pb), tbz = std::cos(pb);
            sum +=
                tax * tbx * k.horizontal + taz * tbz * k.vertical + sign * (taz * tbx - tax * tbz) * k.mixed;
        }
    }
    return j * 2.0 * pi * f_Hz * magnetic_constant_H_m * sum * step * step * radius_m * radius_m;
}

TEST(HalfSpace, LoopsOfUniformCurrentMatchTheIndependentCases) {
    const support::Compared table("independent-cases", "Ground: what it adds to loops of uniform current");
    int met = 0;
    for (const auto& c : support::independent_cases("ground")) {
        if (!c.has_input("radius")) {
            continue;
        }
        const double f = c.input("frequency");
        const Complex eps = soil_at(c.input("eps_r"), c.input("sigma"), f);
        const Complex horizontal = added_impedance(f, c.input("radius"), c.input("height"), eps, false);
        const Complex vertical = added_impedance(f, c.input("radius"), c.input("height"), eps, true);
        table.share(c.id, "horizontal_dR [ohm]", horizontal.real(), c.output("horizontal_dR"), 1e-6);
        table.share(c.id, "horizontal_dX [ohm]", horizontal.imag(), c.output("horizontal_dX"), 1e-6);
        table.share(c.id, "vertical_dR [ohm]", vertical.real(), c.output("vertical_dR"), 1e-6);
        table.share(c.id, "vertical_dX [ohm]", vertical.imag(), c.output("vertical_dX"), 1e-6);
        ++met;
    }
    EXPECT_EQ(met, 2);
}

/// A small loop's added impedance over its free-space resistance, from the second differences that make a
/// magnetic dipole: horizontal loop (vertical dipole) -d^2/drho^2 of `horizontal`.
TEST(HalfSpace, SmallHorizontalLoopMatchesTheIndependentDipoleCases) {
    const support::Compared table("independent-cases",
                                  "Ground: small loops on our kernels and magnetic dipoles");
    int met = 0;
    for (const auto& c : support::independent_cases("ground")) {
        if (c.has_input("radius") || !c.has_input("eps_r")) {
            continue;
        }
        const double f = c.input("frequency");
        const double radius = 0.02 * c.input("height");
        const Complex eps = soil_at(c.input("eps_r"), c.input("sigma"), f);
        const double ka = k0_at(f) * radius;
        const double r0 = units::constants::free_space_impedance_ohm * pi / 6.0 * std::pow(ka, 4);
        // The finite size costs about (radius/height)^2.
        const Complex horizontal = added_impedance(f, radius, c.input("height"), eps, false) / r0;
        const Complex vertical = added_impedance(f, radius, c.input("height"), eps, true) / r0;
        const double scale_h =
            std::hypot(c.output("horizontal_dR_over_R0"), c.output("horizontal_dX_over_R0"));
        const double scale_v = std::hypot(c.output("vertical_dR_over_R0"), c.output("vertical_dX_over_R0"));
        table.amount(c.id, "horizontal_dR_over_R0", horizontal.real(), c.output("horizontal_dR_over_R0"),
                     1e-3 * scale_h);
        table.amount(c.id, "horizontal_dX_over_R0", horizontal.imag(), c.output("horizontal_dX_over_R0"),
                     1e-3 * scale_h);
        table.amount(c.id, "vertical_dR_over_R0", vertical.real(), c.output("vertical_dR_over_R0"),
                     1e-3 * scale_v);
        table.amount(c.id, "vertical_dX_over_R0", vertical.imag(), c.output("vertical_dX_over_R0"),
                     1e-3 * scale_v);
        ++met;
    }
    EXPECT_EQ(met, 4);
}

Complex free_kernel(double k0, double rho, double z) {
    const double r = std::hypot(rho, z);
    return std::exp(-j * k0 * r) / (4.0 * pi * r);
}

TEST(HalfSpace, NearlyPerfectGroundGivesTheImages) {
    const double k0 = k0_at(14.2e6);
    const HalfSpace half_space(k0, {1.0, -1e14}, 5.0, 0.5);
    double worst = 0;
    for (const double rho : {0.0, 0.3, 1.7, 5.0}) {
        for (const double z : {0.5, 2.0, 9.0}) {
            const PotentialKernels k = half_space.potentials(rho, z);
            const Complex image = free_kernel(k0, rho, z);
            worst =
                std::max({worst, std::abs(k.horizontal + image) / std::abs(image),
                          std::abs(k.vertical - image) / std::abs(image),
                          std::abs(k.scalar + image) / std::abs(image), std::abs(k.mixed) / std::abs(image)});
        }
    }
    const support::Compared table("theory", "Half-space in its limits");
    table.amount("14.2 MHz, permittivity -j1e14, 12 places",
                 "worst difference of a kernel from its image, in 1e-6", 1e6 * worst, 0, 3);
}

// ground-05: a magnetic dipole above a perfect conductor, closed form of its image.
TEST(HalfSpace, SmallLoopOverPerfectGroundMatchesTheIndependentCase) {
    const support::Compared table("independent-cases",
                                  "Ground: small loops on our kernels and magnetic dipoles");
    int met = 0;
    for (const auto& c : support::independent_cases("ground")) {
        if (c.has_input("eps_r")) {
            continue;
        }
        const double f = c.input("frequency");
        const double radius = 0.02 * c.input("height");
        const double r0 =
            units::constants::free_space_impedance_ohm * pi / 6.0 * std::pow(k0_at(f) * radius, 4);
        for (const bool vertical : {false, true}) {
            const std::string name = vertical ? "vertical_dR_over_R0" : "horizontal_dR_over_R0";
            const Complex z = added_impedance(f, radius, c.input("height"), {1.0, -1e14}, vertical) / r0;
            table.share(c.id, name, z.real(), c.output(name), 1e-3); // finite size: (radius/height)^2
        }
        ++met;
    }
    EXPECT_EQ(met, 1);
}

TEST(HalfSpace, SoilLikeAirReflectsNothing) {
    // Only waves within sqrt(eps - 1) of grazing are reflected: what is left shrinks like that.
    for (const double contrast : {1e-6, 1e-8, 1e-10}) {
        const double k0 = k0_at(7e6);
        const HalfSpace half_space(k0, {1.0 + contrast, 0.0}, 2.0, 0.3);
        const PotentialKernels k = half_space.potentials(1.0, 0.4);
        const double left =
            std::abs(k.horizontal) + std::abs(k.vertical) + std::abs(k.mixed) + std::abs(k.scalar);
        const support::Compared table("theory", "Half-space in its limits");
        char name[64];
        (void)std::snprintf(name, sizeof name, "7 MHz, permittivity 1 + %g", contrast);
        table.amount(name, "sizes of the kernels over k0 sqrt(contrast) / 4 pi",
                     left / (k0 * std::sqrt(contrast) / (4.0 * pi)), 0, 10);
    }
}

TEST(HalfSpace, HalvingThePanelsChangesNothing) {
    const double f = 28.5e6;
    for (const Complex eps :
         {soil_at(3, 1e-4, f), soil_at(13, 0.005, f), soil_at(80, 0.003, f), soil_at(70, 5, f)}) {
        const HalfSpace coarse(k0_at(f), eps, 6.0, 0.2);
        const HalfSpace fine(k0_at(f), eps, 6.0, 0.2, 2.0);
        for (const double rho : {0.0, 0.05, 1.0, 6.0}) {
            for (const double z : {0.2, 1.0, 8.0}) {
                const PotentialKernels a = coarse.potentials(rho, z);
                const PotentialKernels b = fine.potentials(rho, z);
                const double scale = 1e-9 / (4.0 * pi * std::hypot(rho, z));
                EXPECT_LT(std::abs(a.horizontal - b.horizontal), scale) << eps << rho << ' ' << z;
                EXPECT_LT(std::abs(a.vertical - b.vertical), scale) << eps << rho << ' ' << z;
                EXPECT_LT(std::abs(a.mixed - b.mixed), scale) << eps << rho << ' ' << z;
                EXPECT_LT(std::abs(a.scalar - b.scalar), scale) << eps << rho << ' ' << z;
            }
        }
    }
}

TEST(HalfSpace, DerivativesAreThoseOfTheKernels) {
    const double f = 10e6;
    const HalfSpace half_space(k0_at(f), soil_at(13, 0.005, f), 4.0, 0.3);
    const double rho = 1.3, z = 1.1, h = 1e-4;
    const FieldKernels k = half_space.fields(rho, z);
    const auto drho = [&](auto member) {
        return (half_space.potentials(rho + h, z).*member - half_space.potentials(rho - h, z).*member) /
               (2.0 * h);
    };
    const auto dz = [&](auto member) {
        return (half_space.potentials(rho, z + h).*member - half_space.potentials(rho, z - h).*member) /
               (2.0 * h);
    };
    EXPECT_LT(std::abs(k.scalar_drho - drho(&PotentialKernels::scalar)), 1e-7);
    EXPECT_LT(std::abs(k.scalar_dz - dz(&PotentialKernels::scalar)), 1e-7);
    EXPECT_LT(std::abs(k.horizontal_drho - drho(&PotentialKernels::horizontal)), 1e-7);
    EXPECT_LT(std::abs(k.horizontal_dz - dz(&PotentialKernels::horizontal)), 1e-7);
    EXPECT_LT(std::abs(k.mixed_drho - drho(&PotentialKernels::mixed)), 1e-7);
    EXPECT_LT(std::abs(k.mixed_over_rho - k.potential.mixed / rho), 1e-9);
}

} // namespace
} // namespace loopwright::ground
