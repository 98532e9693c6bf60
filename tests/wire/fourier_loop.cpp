#include "wire/fourier_loop.hpp"

#include "units/constants.hpp"

#include <boost/math/constants/constants.hpp>
#include <boost/math/special_functions/bessel.hpp>
#include <cmath>
#include <cstdlib>
#include <vector>

namespace loopwright::wire::testing {

using Complex = std::complex<double>;
using units::constants::pi;

namespace {

/// Integral of the Lommel-Weber function of order 2n from 0 to x: Omega_2n = 1/pi Int sin(x sin t) cos(2nt)
/// dt over 0..pi, expanded in x; Int sin^q t cos(2nt) dt = 2/(1 - 4n^2) for q = 1, times q(q-1)/(q^2 - 4n^2)
/// for each step of two in q.
double lommel_weber_integral(int n, double x) {
    const double order = 4.0 * n * n;
    double power = x * x / 2;
    double angular = 2 / (1 - order);
    double sum = 0;
    for (int q = 1; q < 60; q += 2) {
        sum += power * angular;
        power *= -x * x / ((q + 2) * (q + 3));
        angular *= (q + 2) * (q + 1) / ((q + 2) * (q + 2) - order);
    }
    return sum / pi;
}

/// Integral of J_2n from 0 to x: 2 (J_{2n+1} + J_{2n+3} + ...), Abramowitz and Stegun 11.1.2.
double bessel_integral(int n, double x) {
    double sum = 0;
    for (int m = 0; m < 20; ++m) {
        sum += boost::math::cyl_bessel_j(2 * n + 2 * m + 1, x);
    }
    return 2 * sum;
}

} // namespace

Complex wu_coefficient(int n, double x, double ratio) {
    n = std::abs(n);
    double at_rest = std::log(8 / ratio) / pi;
    if (n > 0) {
        double c = std::log(4.0 * n) + boost::math::constants::euler<double>();
        for (int m = 0; m < n; ++m) {
            c -= 2.0 / (2 * m + 1);
        }
        const double z = n * ratio;
        at_rest = (boost::math::cyl_bessel_k(0, z) * boost::math::cyl_bessel_i(0, z) + c) / pi;
    }
    const double j = n < 40 ? bessel_integral(n, x) : 0.0; // below 1e-70 for x up to 4
    return at_rest - 0.5 * Complex(lommel_weber_integral(n, x), j);
}

Complex FourierLoop::admittance(double k, double angle) const {
    constexpr int terms = 3000;
    const double kb = k * radius_m;
    const double ratio = wire_radius_m / radius_m;
    std::vector<Complex> coefficient;
    for (int n = 0; n <= terms + 1; ++n) {
        coefficient.push_back(wu_coefficient(n, 2 * kb, ratio));
    }
    const auto mode = [&](int n) {
        const auto i = static_cast<std::size_t>(n);
        const Complex before = n == 0 ? coefficient[1] : coefficient[i - 1];
        return 0.5 * kb * (coefficient[i + 1] + before) - 1.0 * n * n / kb * coefficient[i];
    };
    Complex sum = 1.0 / mode(0);
    for (int n = 1; n <= terms; ++n) {
        const double half = n * gap_m / (2 * radius_m);
        const double gap = std::sin(half) / half; // of the voltage, and once more of the mean current
        sum += 2 * std::cos(n * angle) * gap * gap / mode(n);
    }
    return sum / (Complex(0, pi) * units::constants::free_space_impedance_ohm);
}

} // namespace loopwright::wire::testing
