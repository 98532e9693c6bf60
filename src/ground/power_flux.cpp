#include "ground/power_flux.hpp"

#include "ground/imaginary_unit.hpp"
#include "ground/soil.hpp"
#include "units/constants.hpp"

#include <algorithm>
#include <boost/math/quadrature/gauss.hpp>
#include <cmath>

namespace loopwright::ground {

namespace {

using Complex = std::complex<double>;
using units::constants::free_space_impedance_ohm;
using units::constants::pi;

struct Span {
    double lowest_m = 1e300, across_m = 0;
};
Span span_of(const std::vector<CurrentElement>& elements) {
    Span span;
    double x0 = 1e300, x1 = -1e300, y0 = 1e300, y1 = -1e300;
    for (const CurrentElement& e : elements) {
        span.lowest_m = std::min(span.lowest_m, e.position_m[2]);
        x0 = std::min(x0, e.position_m[0]);
        x1 = std::max(x1, e.position_m[0]);
        y0 = std::min(y0, e.position_m[1]);
        y1 = std::max(y1, e.position_m[1]);
    }
    span.across_m = std::hypot(x1 - x0, y1 - y0);
    return span;
}

/// Amplitudes of the wave that leaves the elements toward (kr, azimuth), downward: the components of the
/// current along the TE and TM unit vectors.
struct Amplitudes {
    Complex te, tm;
};
Amplitudes downward(const std::vector<CurrentElement>& elements, double k0, double kr, Complex kz,
                    double azimuth) {
    const double c = std::cos(azimuth);
    const double s = std::sin(azimuth);
    Amplitudes sum{};
    for (const CurrentElement& e : elements) {
        const auto& [x, y, z] = e.position_m;
        const Complex phase = std::exp(j * (kr * (c * x + s * y)) - j * kz * z);
        const Complex along = c * e.moment_A_m[0] + s * e.moment_A_m[1];
        sum.te += phase * (-s * e.moment_A_m[0] + c * e.moment_A_m[1]);
        // Electric field of a downward TM wave is along kz rho_hat + kr z_hat (over k0).
        sum.tm += phase * (kz * along + kr * e.moment_A_m[2]) / k0;
    }
    return sum;
}

/// Flux density of one spectral component, in W m^2 before the (2 pi)^-2 kr dkr d(azimuth).
double flux(const Amplitudes& a, double k0, double kr, Complex kz, Complex eps) {
    Complex kz2 = std::sqrt(eps * k0 * k0 - kr * kr);
    kz2 = kz2.imag() > 0 ? -kz2 : kz2;
    // Transmitted tangential fields; written so that nothing is divided by kz = 0.
    const Complex e_te = -k0 * free_space_impedance_ohm * a.te / (kz + kz2);
    const Complex h_te = e_te * kz2 / (k0 * free_space_impedance_ohm);
    const Complex h_tm = -eps * k0 * a.tm / (eps * kz + kz2);
    const Complex e_tm = h_tm * kz2 * free_space_impedance_ohm / (eps * k0);
    return (e_te * std::conj(h_te)).real() + (e_tm * std::conj(h_tm)).real();
}

} // namespace

FarField far_field(const std::vector<CurrentElement>& elements, double k0, Complex permittivity,
                   double zenith_rad, double azimuth_rad) {
    const double ct = std::cos(zenith_rad), st = std::sin(zenith_rad);
    const double cp = std::cos(azimuth_rad), sp = std::sin(azimuth_rad);
    const Reflection gamma = reflection(permittivity, ct);
    Complex theta = 0;
    Complex phi = 0;
    for (const CurrentElement& e : elements) {
        const double across = st * (cp * e.position_m[0] + sp * e.position_m[1]);
        const Complex direct = std::exp(j * (k0 * (across + ct * e.position_m[2])));
        const Complex mirrored = std::exp(j * (k0 * (across - ct * e.position_m[2])));
        const Complex along = cp * e.moment_A_m[0] + sp * e.moment_A_m[1];
        const Complex beside = -sp * e.moment_A_m[0] + cp * e.moment_A_m[1];
        theta += ct * along * (direct - gamma.tm * mirrored) -
                 st * e.moment_A_m[2] * (direct + gamma.tm * mirrored);
        phi += beside * (direct + gamma.te * mirrored);
    }
    const Complex factor = -j * k0 * free_space_impedance_ohm / (4.0 * pi);
    return {factor * theta, factor * phi};
}

double sky_power_W(const std::vector<CurrentElement>& elements, double k0, Complex permittivity,
                   int zenith_points, int azimuth_points) {
    // Panels of 8 Gauss points in cos(zenith), the lowest one split: grazing waves change fastest.
    using Rule = boost::math::quadrature::gauss<double, 8>;
    const int panels = std::max(1, (zenith_points + 7) / 8);
    double power = 0;
    for (int p = 0; p < panels; ++p) {
        const double a = std::pow(static_cast<double>(p) / panels, 2);
        const double b = std::pow((p + 1.0) / panels, 2);
        for (std::size_t n = 0; n < 2 * Rule::abscissa().size(); ++n) {
            const double x = (n % 2 == 0 ? 1.0 : -1.0) * Rule::abscissa()[n / 2];
            const double cosine = 0.5 * (a + b) + 0.5 * (b - a) * x;
            const double weight = 0.5 * (b - a) * Rule::weights()[n / 2];
            for (int i = 0; i < azimuth_points; ++i) {
                const FarField f =
                    far_field(elements, k0, permittivity, std::acos(cosine), 2.0 * pi * i / azimuth_points);
                power +=
                    weight * (2.0 * pi / azimuth_points) * (std::norm(f.e_theta_V) + std::norm(f.e_phi_V));
            }
        }
    }
    return power / free_space_impedance_ohm;
}

double ground_power_W(const std::vector<CurrentElement>& elements, double k0, Complex permittivity,
                      int azimuth_points) {
    const Span span = span_of(elements);
    const HalfSpace half_space(k0, permittivity, 2.0 * span.across_m, 2.0 * span.lowest_m);
    double power = 0;
    for (const HalfSpace::Node& node : half_space.nodes()) {
        double ring = 0;
        for (int i = 0; i < azimuth_points; ++i) {
            const double azimuth = 2.0 * pi * i / azimuth_points;
            ring +=
                flux(downward(elements, k0, node.kr, node.kz, azimuth), k0, node.kr, node.kz, permittivity);
        }
        power += ring * node.kr_weight / azimuth_points;
    }
    return power / (2.0 * pi);
}

} // namespace loopwright::ground
