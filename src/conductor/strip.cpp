#include "conductor/strip.hpp"

#include "base/error.hpp"
#include "units/constants.hpp"

#include <algorithm>
#include <boost/math/special_functions/ellint_rd.hpp>
#include <boost/math/special_functions/ellint_rf.hpp>
#include <cmath>

namespace loopwright::conductor {
namespace {

using boost::math::ellint_rd;
using boost::math::ellint_rf;
using units::constants::pi;

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

// The aspect rises with m, from 0 to 1 at m = 1/2; near pi m / 4 when thin. Bisection on log m, then secant
// steps would save little: this runs once a design.
double parameter_for(double aspect) {
    double low = std::log(0.5 * aspect), high = std::log(0.5);
    for (int i = 0; i < 200 && high - low > 1e-16 * std::fabs(low); ++i) {
        const double middle = 0.5 * (low + high);
        if (middle <= low || middle >= high) {
            break;
        }
        (aspect_of(std::exp(middle)) < aspect ? low : high) = middle;
    }
    return std::exp(0.5 * (low + high));
}

} // namespace

StripShape strip_shape(units::Length width, units::Length thickness) {
    const Sides sides = checked_sides(width, thickness);
    const double m = parameter_for(sides.short_m / sides.long_m);
    const Elliptic at_m = elliptic(1.0 - m), at_complement = elliptic(m);
    const double capacity_m = sides.long_m / (4.0 * (1.0 - m) * at_complement.b);
    return {units::metres(capacity_m),
            units::metres(2.0 * pi * pi * capacity_m / (at_m.k + at_complement.k))};
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
