#include "conductor/curvature.hpp"

#include "base/error.hpp"
#include "units/constants.hpp"

#include <boost/math/special_functions/ellint_rd.hpp>
#include <boost/math/special_functions/ellint_rf.hpp>
#include <cmath>
#include <cstddef>
#include <vector>

namespace loopwright::conductor {
namespace {

using units::constants::magnetic_constant_H_m;
using units::constants::pi;

// The surface eta = eta0 of toroidal coordinates: cosh eta0 = R/a.
struct Surface {
    double cosh, sinh;
    [[nodiscard]] double eta() const { return std::log(cosh + sinh); }
};

// p'_n/p_n for p_n = d P_{n-1/2}(cosh eta)/d eta, n = 0..count-1, (C18).
std::vector<double> radial_ratios(const Surface& s, std::size_t count) {
    // P_{-1/2} and P_{1/2} as complete elliptic integrals: A&S 8.13.1 and 8.13.6, in Carlson's forms.
    const double x = s.cosh;
    const double shrink = 1.0 / (x + s.sinh); // exp(-eta)
    const double complement = shrink * shrink;
    const double k = boost::math::ellint_rf(0.0, complement, 1.0);
    const double e = k - (1.0 - complement) * boost::math::ellint_rd(0.0, complement, 1.0) / 3.0;
    double before = 2.0 / pi * std::sqrt(shrink) * k; // P_{n-1/2}, n = 0
    double here = 2.0 / pi / std::sqrt(shrink) * e;   // n = 1
    const double coth = x / s.sinh;
    std::vector<double> ratios(count);
    ratios[0] = -0.25 * before * s.sinh / (0.5 * (here - x * before)) - coth;
    for (std::size_t n = 1; n < count; ++n) {
        const auto order = static_cast<double>(n);
        const double slope = (order - 0.5) * (x * here - before) / s.sinh;
        ratios[n] = (order * order - 0.25) * here / slope - coth;
        const double next = (2.0 * order * x * here - (order - 0.5) * before) / (order + 0.5);
        before = here;
        here = next;
    }
    return ratios;
}

// Places round the wire for the trapezoidal rule: 2 (places - 1) evenly spaced, of which those of one half
// stand for both.
struct Place {
    double cosine, weight;
};

std::vector<Place> places_round(std::size_t halves) {
    std::vector<Place> places(halves + 1);
    for (std::size_t k = 0; k <= halves; ++k) {
        const bool end = k == 0 || k == halves;
        places[k] = {std::cos(pi * static_cast<double>(k) / static_cast<double>(halves)), end ? 1.0 : 2.0};
    }
    return places;
}

// Cosine coefficients of sqrt(cosh eta0 - cos t), by the trapezoidal rule, which is exact to exp(-points
// eta0).
std::vector<double> root_coefficients(const Surface& s, std::size_t count, const std::vector<Place>& places) {
    const double points = 2.0 * static_cast<double>(places.size() - 1);
    std::vector<double> c(count, 0.0);
    for (const auto& [cosine, weight] : places) {
        const double value = weight * std::sqrt(s.cosh - cosine);
        double before = cosine, here = 1.0; // cos(-t), cos 0
        for (double& coefficient : c) {
            coefficient += value * here;
            const double next = 2.0 * cosine * here - before;
            before = here;
            here = next;
        }
    }
    for (std::size_t n = 0; n < count; ++n) {
        c[n] *= (n == 0 ? 1.0 : 2.0) / points;
    }
    return c;
}

} // namespace

RingCurrent ring_current(units::Length loop_radius, units::Length wire_radius) {
    const double ratio = loop_radius.value() / wire_radius.value();
    if (!(wire_radius.value() > 0.0 && ratio >= 1.5 && ratio <= 1e7)) {
        throw base::ProgramError("ring_current: loop radius must be 1.5 to 1e7 wire radii");
    }
    const Surface s{ratio, std::sqrt((ratio - 1.0) * (ratio + 1.0))};
    const auto count = static_cast<std::size_t>(32.0 / s.eta()) + 4;
    const std::vector<Place> places = places_round(count + 1);
    std::vector<double> terms = root_coefficients(s, count, places);
    const std::vector<double> ratios = radial_ratios(s, count);
    for (std::size_t n = 0; n < count; ++n) {
        terms[n] *= ratios[n];
    }
    // Slope of the flux function across the surface, per unit of flux, (C17): it is the surface current
    // times mu0 rho times the scale h = f / (cosh eta - cos t). Sums over t replace the integrals around the
    // wire.
    double current = 0.0, power = 0.0;
    for (const auto& [cosine, weight] : places) {
        const double q = s.cosh - cosine;
        double before = cosine, here = 1.0, sum = 0.0;
        for (const double term : terms) {
            sum += term * here;
            const double next = 2.0 * cosine * here - before;
            before = here;
            here = next;
        }
        const double slope = s.cosh / s.sinh - 0.5 * s.sinh / q + sum / std::sqrt(q);
        current += weight * slope * q;
        power += weight * slope * slope * q * q;
    }
    // With f = 1 (rho = sinh/q): I mu0 = sum of slope/rho dt; loss = sum of K^2 2 pi rho h dt.
    const double dt = pi / static_cast<double>(count + 1);
    const double mean_current = current * dt / s.sinh;  // mu0 I f per unit of flux/(2 pi)
    const double loss = 2.0 * pi * power * dt / s.sinh; // mu0^2 f^2 sum K^2 dS
    const double focal_m = wire_radius.value() * s.sinh;
    return {loss / (mean_current * mean_current) / ratio,
            units::henries(2.0 * pi * magnetic_constant_H_m * focal_m / mean_current)};
}

double curvature_factor(units::Length loop_radius, units::Length wire_radius) {
    return ring_current(loop_radius, wire_radius).resistance_factor;
}

} // namespace loopwright::conductor
