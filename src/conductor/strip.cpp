#include "conductor/strip.hpp"

#include "base/error.hpp"
#include "numeric/roots.hpp"
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
