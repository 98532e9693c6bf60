// The perfectly conducting torus in toroidal coordinates.
#include "base/error.hpp"
#include "loop/inductance.hpp"
#include "units/constants.hpp"

#include <boost/math/special_functions/ellint_1.hpp>
#include <boost/math/special_functions/ellint_2.hpp>
#include <cmath>
#include <vector>

namespace loopwright::loop {
namespace {

using units::constants::magnetic_constant_H_m;
using units::constants::pi;

// P_{n-1/2}(x) for n = 0..count, x > 1, upward recurrence (stable: P grows). P_{-1/2} and P_{1/2} by complete
// elliptic integrals (Abramowitz and Stegun 8.13.1, 8.13.5 in the form with modulus sqrt(1 - exp(-2 eta))).
std::vector<double> half_legendre(double x, std::size_t count) {
    const double eta = std::acosh(x);
    const double modulus = std::sqrt(-std::expm1(-2 * eta));
    const double k = boost::math::ellint_1(modulus);
    const double e = boost::math::ellint_2(modulus);
    std::vector<double> p{2 / pi * std::exp(-eta / 2) * k, 2 / pi * std::exp(eta / 2) * e};
    for (std::size_t n = 1; n < count; ++n) {
        const double nu = double(n) - 0.5;
        p.push_back(((2 * nu + 1) * x * p[n] - nu * p[n - 1]) / (nu + 1));
    }
    return p;
}

// cos(n t) for n = 0..count, by the recurrence of the Chebyshev polynomials.
void cosines(double t, std::vector<double>& values) {
    const double c = std::cos(t);
    values[0] = 1;
    values[1] = c;
    for (std::size_t n = 2; n < values.size(); ++n) {
        values[n] = 2 * c * values[n - 1] - values[n - 2];
    }
}

// Fourier coefficients of sqrt(x - cos t): s_0 + sum s_n cos(n t), by the trapezoidal rule, which converges
// like exp(-eta) to the number of points.
std::vector<double> root_coefficients(double x, std::size_t count) {
    const std::size_t points = 4 * count;
    std::vector<double> s(count + 1, 0.0);
    std::vector<double> cosine(count + 1);
    for (std::size_t i = 0; i < points; ++i) {
        const double t = 2 * pi * double(i) / double(points);
        cosines(t, cosine);
        const double value = std::sqrt(x - cosine[1]) / double(points);
        for (std::size_t n = 0; n <= count; ++n) {
            s[n] += (n == 0 ? 1.0 : 2.0) * value * cosine[n];
        }
    }
    return s;
}

} // namespace

TorusRing torus_ring(units::Length radius, units::Length wire_radius) {
    if (!(wire_radius.value() > 0 && radius.value() > wire_radius.value())) {
        throw base::ProgramError("inductance: a ring needs 0 < wire radius < radius");
    }
    const double x = radius.value() / wire_radius.value(); // cosh eta on the surface
    const double sinh_eta = std::sqrt(x * x - 1);
    const double focus_m =
        std::sqrt(radius.value() * radius.value() - wire_radius.value() * wire_radius.value());
    const auto count = static_cast<std::size_t>(std::ceil(37 / std::acosh(x))) + 2;
    const std::vector<double> p = half_legendre(x, count + 1);
    const std::vector<double> s = root_coefficients(x, count);
    // Flux function rho A = c sinh(eta) / sqrt(cosh eta - cos t) sum A_n P^1_{n-1/2} cos(n t), constant (1)
    // on the surface; P^1 = sinh(eta) P'. The current is -sqrt(2)/mu0 sum A_n.
    std::vector<double> a;
    std::vector<double> slope_ratio; // P^1' over P^1, d/d eta
    double sum = 0;
    for (std::size_t n = 0; n <= count; ++n) {
        const double nu = double(n) - 0.5;
        // (x^2 - 1) P_nu' = (nu + 1) (P_{nu+1} - x P_nu)
        const double p1 = (nu + 1) * (p[n + 1] - x * p[n]) / sinh_eta;
        a.push_back(s[n] / (focus_m * sinh_eta * p1));
        // P^1 = dP/d eta; Legendre's equation: P'' + coth(eta) P' = nu (nu + 1) P.
        slope_ratio.push_back(nu * (nu + 1) * p[n] / p1 - x / sinh_eta);
        sum += a.back();
    }
    const double current = -std::sqrt(2.0) * sum / magnetic_constant_H_m;
    TorusRing ring;
    ring.inductance = units::henries(2 * pi / current);

    // Surface current K = |grad flux| / (mu0 rho); loss = sum of K^2 rho dl over the meridian.
    const std::size_t points = 4 * count;
    std::vector<double> cosine(count + 1);
    double loss = 0;
    for (std::size_t i = 0; i < points; ++i) {
        const double t = 2 * pi * double(i) / double(points);
        cosines(t, cosine);
        const double d = x - cosine[1];
        double slope = x / sinh_eta - 0.5 * sinh_eta / d; // of the common factor
        double series = 0;
        for (std::size_t n = 0; n <= count; ++n) {
            series += s[n] * slope_ratio[n] * cosine[n];
        }
        slope += series / std::sqrt(d);
        const double scale_m = focus_m / d; // length per d eta and per d t
        const double rho = focus_m * sinh_eta / d;
        const double k_surface = slope / (scale_m * rho * magnetic_constant_H_m);
        loss += k_surface * k_surface * rho * scale_m * 2 * pi / double(points);
    }
    const double even = current * current / (2 * pi * wire_radius.value()) * radius.value();
    ring.resistance_factor = loss / even;
    return ring;
}

} // namespace loopwright::loop
