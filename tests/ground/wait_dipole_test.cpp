// Magnetic dipoles above a lossy half-space: the classical integrals (J. R. Wait, "Characteristics of
// antennas over lossy earth", in Collin and Zucker, Antenna Theory, part 2, McGraw-Hill 1969, ch. 23;
// formulas from memory, signs fixed by the power of a dipole in free space and by the images of a perfect
// conductor) by adaptive quadrature, against the independent cases and against small loops built on our
// kernels.
#include "ground/half_space.hpp"
#include "ground/soil.hpp"
#include "ground/waves.hpp"
#include "support/cases.hpp"
#include "support/compared.hpp"
#include "units/constants.hpp"

#include <boost/math/quadrature/gauss_kronrod.hpp>
#include <cmath>
#include <complex>
#include <gtest/gtest.h>

namespace loopwright::ground {
namespace {

using Complex = std::complex<double>;
using units::constants::pi;

/// Integral over kr dkr of f(kr, kz) exp(-2j kz h): travelling part in kz, decaying part in kappa.
template <class Function>
Complex spectral_integral(double k0, double height_m, const Function& f) {
    using Rule = boost::math::quadrature::gauss_kronrod<double, 31>;
    const auto part = [&](double a, double b, const auto& g) {
        const auto re = [&](double x) { return g(x).real(); };
        const auto im = [&](double x) { return g(x).imag(); };
        return Complex(Rule::integrate(re, a, b, 18, 1e-11), Rule::integrate(im, a, b, 18, 1e-11));
    };
    const auto travelling = [&](double kz) {
        return kz * f(std::sqrt(k0 * k0 - kz * kz), Complex(kz, 0)) * std::exp(-2.0 * j * kz * height_m);
    };
    const auto decaying = [&](double kappa) {
        return kappa * f(std::sqrt(k0 * k0 + kappa * kappa), Complex(0, -kappa)) *
               std::exp(-2.0 * kappa * height_m);
    };
    const double end = 22.0 / height_m;
    Complex sum = part(0, 0.05 * k0, travelling) + part(0.05 * k0, k0, travelling);
    double done = 0;
    while (done < end) {
        const double next = std::min(std::max(3.0 * done, 0.05 * k0), end);
        sum += part(done, next, decaying);
        done = next;
    }
    return sum;
}

struct Coefficients {
    Complex te_electric, tm_magnetic;
};
Coefficients surface(Complex eps, double k0, double kr, Complex kz) {
    Complex kz2 = std::sqrt(eps * k0 * k0 - kr * kr);
    kz2 = kz2.imag() > 0 ? -kz2 : kz2;
    return {(kz - kz2) / (kz + kz2), (eps * kz - kz2) / (eps * kz + kz2)};
}

TEST(WaitDipole, IntegralsMatchTheIndependentCases) {
    const support::Compared table("independent-cases", "Ground: magnetic dipoles by Wait's integrals");
    int met = 0;
    for (const auto& c : support::independent_cases("ground")) {
        if (c.has_input("radius") || !c.has_input("eps_r")) {
            continue;
        }
        const double f = c.input("frequency");
        const double k0 = 2.0 * pi * f / units::constants::speed_of_light_m_s;
        const Complex eps = complex_permittivity(
            {c.input("eps_r"), units::siemens_per_metre(c.input("sigma"))}, units::hertz(f));
        // Horizontal loop = vertical dipole: only TE waves.
        const Complex vertical_dipole =
            1.5 / std::pow(k0, 3) * spectral_integral(k0, c.input("height"), [&](double kr, Complex kz) {
                return surface(eps, k0, kr, kz).te_electric * kr * kr / kz;
            });
        // Vertical loop = horizontal dipole.
        const Complex horizontal_dipole =
            0.75 / (k0 * k0) * spectral_integral(k0, c.input("height"), [&](double kr, Complex kz) {
                const Coefficients s = surface(eps, k0, kr, kz);
                return k0 / kz * s.tm_magnetic - kz / k0 * s.te_electric;
            });
        const double scale_h = std::abs(vertical_dipole);
        const double scale_v = std::abs(horizontal_dipole);
        table.amount(c.id, "horizontal_dR_over_R0", vertical_dipole.real(), c.output("horizontal_dR_over_R0"),
                     1e-8 * scale_h);
        table.amount(c.id, "horizontal_dX_over_R0", vertical_dipole.imag(), c.output("horizontal_dX_over_R0"),
                     1e-8 * scale_h);
        table.amount(c.id, "vertical_dR_over_R0", horizontal_dipole.real(), c.output("vertical_dR_over_R0"),
                     1e-8 * scale_v);
        table.amount(c.id, "vertical_dX_over_R0", horizontal_dipole.imag(), c.output("vertical_dX_over_R0"),
                     1e-8 * scale_v);
        ++met;
    }
    EXPECT_EQ(met, 4);
}

} // namespace
} // namespace loopwright::ground
