#include "conductor/strip.hpp"

#include "base/error.hpp"
#include "conductor/detail/strip_table.hpp"
#include "numeric/roots.hpp"
#include "units/constants.hpp"

#include <algorithm>
#include <boost/math/special_functions/ellint_rd.hpp>
#include <boost/math/special_functions/ellint_rf.hpp>
#include <cmath>
#include <vector>

namespace loopwright::conductor {
namespace {

using boost::math::ellint_rd;
using boost::math::ellint_rf;
using units::constants::pi;

// How the distance to the limit falls with thickness over skin depth, from the last rows of the table.
constexpr double limit_exponent = -0.27;

struct Sides {
    double long_m, short_m;
};

Sides checked_sides(units::Length width, units::Length thickness) {
    const Sides sides{std::max(width.value(), thickness.value()), std::min(width.value(), thickness.value())};
    if (!(sides.short_m > 0.0 && std::isfinite(sides.long_m) && sides.long_m <= 1e6 * sides.short_m)) {
        throw base::ProgramError("strip: sides must be positive, their ratio at most 1e6");
    }
    return sides;
}

// Complete elliptic integrals from m = k^2 and its complement, each without loss at its small end:
// K and B = (E - (1 - m) K)/m.
struct Elliptic {
    double k, b;
};
Elliptic elliptic(double complement) {
    const double k = ellint_rf(0.0, complement, 1.0);
    return {k, k - ellint_rd(0.0, complement, 1.0) / 3.0};
}

// Short side over long side of the rectangle with parameter m: (E - m'K)/(E' - m K').
double aspect_of(double m) {
    const double complement = 1.0 - m;
    return m * elliptic(complement).b / (complement * elliptic(m).b);
}

// The aspect rises with m, near pi m / 4 when thin, to 1 at m = 1/2.
double parameter_for(double aspect) {
    const auto excess = [aspect](double log_m) { return std::log(aspect_of(std::exp(log_m)) / aspect); };
    const double log_aspect = std::log(aspect);
    if (aspect > 1.0 - 1e-12) {
        return 0.5;
    }
    return std::exp(
        numeric::bracketed_root(excess, log_aspect - 0.8, std::min(log_aspect + 0.4, std::log(0.5))));
}

// The rectangle as the image of a circle: capacity and both elliptic integrals.
struct Mapping {
    double capacity_m, k, k_other;
};

Mapping mapping_of(const Sides& sides) {
    const double m = parameter_for(sides.short_m / sides.long_m);
    const Elliptic at_m = elliptic(1.0 - m), at_complement = elliptic(m);
    return {sides.long_m / (4.0 * (1.0 - m) * at_complement.b), at_m.k, at_complement.k};
}

StripShape shape_of(const Mapping& mapping) {
    return {units::metres(mapping.capacity_m),
            units::metres(2.0 * pi * pi * mapping.capacity_m / (mapping.k + mapping.k_other))};
}

// What is laid between the table's points: toward direct current, where x = (width thickness)/(6 depth^2) is
// small, c goes as x^2 in the real and x in the imaginary part (part 0 and 1); these are divided out.
double low_law(double aspect, double tau, std::size_t part) {
    const double x = aspect * tau * tau / 6.0, power = part == 0 ? x * x : x;
    return power / (1.0 + power);
}

// (c - c at direct current)/law at one aspect over ln(thickness/skin depth), real or imaginary part.
numeric::HermiteCurve corrections_at(double aspect, std::size_t part) {
    std::vector<double> log_aspect(detail::strip_aspects), log_thickness, values,
        along(detail::strip_aspects);
    std::transform(detail::strip_aspect.begin(), detail::strip_aspect.end(), log_aspect.begin(),
                   [](double a) { return std::log(a); });
    for (std::size_t t = 0; t < detail::strip_thicknesses; ++t) {
        const double tau = detail::strip_thickness[t];
        for (std::size_t a = 0; a < detail::strip_aspects; ++a) {
            const double at_dc = part == 0 ? detail::strip_dc_correction[a] : 0.0;
            along[a] =
                (detail::strip_correction[a][t][part] - at_dc) / low_law(detail::strip_aspect[a], tau, part);
        }
        log_thickness.push_back(std::log(tau));
        values.push_back(numeric::HermiteCurve(log_aspect, along)(std::log(aspect)));
    }
    return {log_thickness, values};
}

double checked_aspect(const Sides& sides) {
    const double aspect = sides.long_m / sides.short_m;
    if (aspect > StripImpedance::largest_aspect * (1.0 + 1e-9)) {
        throw base::ProgramError("strip: width over thickness beyond the table");
    }
    return aspect;
}

// coth((1 + j) tau/2), tau = thickness over skin depth.
std::complex<double> slab_factor(double tau) {
    if (tau < 0.02) { // 1/x + x/3, x = (1 + j) tau/2; the next term is tau^4/720 of it
        return {1.0 / tau + tau / 6.0, -1.0 / tau + tau / 6.0};
    }
    if (tau > 40.0) {
        return 1.0;
    }
    const double down = std::cosh(tau) - std::cos(tau);
    return {std::sinh(tau) / down, -std::sin(tau) / down};
}

} // namespace

StripShape strip_shape(units::Length width, units::Length thickness) {
    return shape_of(mapping_of(checked_sides(width, thickness)));
}

StripImpedance::StripImpedance(units::Length width, units::Length thickness)
    : real_(corrections_at(checked_aspect(checked_sides(width, thickness)), 0)),
      imag_(corrections_at(checked_aspect(checked_sides(width, thickness)), 1)) {
    const Sides sides = checked_sides(width, thickness);
    const Mapping mapping = mapping_of(sides);
    shape_ = shape_of(mapping);
    thickness_m_ = sides.short_m;
    aspect_ = sides.long_m / sides.short_m;
    k_ = mapping.k;
    k_other_ = mapping.k_other;
    dc_correction_ = pi * pi * mapping.capacity_m / sides.long_m - k_other_;
}

std::complex<double> StripImpedance::end_correction(double tau) const {
    const double last = detail::strip_thickness.back();
    const double inside = std::fmin(tau, last),
                 at = std::log(inside); // below the first row the law alone goes on
    const std::complex<double> c(dc_correction_ + real_(at) * low_law(aspect_, inside, 0),
                                 imag_(at) * low_law(aspect_, inside, 1));
    // Beyond the last row toward Cockcroft's limit, as the corners' share of the skin shrinks.
    return tau <= last ? c : k_ + (c - k_) * std::pow(tau / last, limit_exponent);
}

std::complex<double> StripImpedance::ohm_per_m(double conductivity_S_m, double skin_depth_m) const {
    const double tau = thickness_m_ / skin_depth_m;
    if (!(tau > 0.0 && conductivity_S_m > 0.0) || !std::isfinite(tau)) {
        throw base::ProgramError("strip: conductivity and skin depth must be positive");
    }
    const std::complex<double> slab = std::complex<double>(1.0, 1.0) * slab_factor(tau);
    const double scale =
        1.0 / (conductivity_S_m * skin_depth_m * 2.0 * pi * pi * shape_.equivalent_radius.value());
    return scale * slab * (k_other_ + end_correction(tau));
}

units::ResistancePerLength strip_dc_resistance(units::Length width, units::Length thickness,
                                               units::Conductivity conductivity) {
    const Sides sides = checked_sides(width, thickness);
    if (!(conductivity.value() > 0.0)) {
        throw base::ProgramError("strip: conductivity must be positive");
    }
    return units::ohms_per_metre(1.0 / (conductivity.value() * sides.long_m * sides.short_m));
}

} // namespace loopwright::conductor
