#include "capacitor/made.hpp"

#include "base/error.hpp"
#include "units/constants.hpp"

#include <algorithm>
#include <cmath>
#include <string>

namespace loopwright::capacitor {
namespace {

constexpr double pi = units::constants::pi;
constexpr double vacuum_F_m = units::constants::electric_constant_F_m;

void need(bool holds, const char* field, double value_m, const char* accepted) {
    if (!holds) {
        throw base::InputError(field, std::isfinite(value_m) ? std::to_string(value_m) : "not a number",
                               accepted);
    }
}

bool positive(double value) {
    return value > 0 && std::isfinite(value);
}

// (K14), the thickness term over pi.
double thickness_term(double ratio) {
    return std::log(1 + 2 * ratio + 2 * std::sqrt(ratio + ratio * ratio)) / pi;
}

// (K15): one edge of a plate midway between two planes, thickness over the distance of the planes.
double between_planes(double ratio) {
    if (ratio < 1e-9) {
        return 2 / pi * std::log(2.0);
    }
    const double r = 1 / (1 - ratio);
    return (2 * r * std::log(r + 1) - (r - 1) * std::log(r * r - 1)) / pi;
}

struct Sizes {
    double w, l, d, t, x; ///< width, length, spacing, thickness, overlap [m]
};

struct Edges {
    double side = 0; ///< added to the width, both edges together [m]
    double end = 0;  ///< added to the overlap, both ends together [m]
};

// How far the ends are from lying over each other: 0 at the most overlap, towards 1 beyond a spacing.
double apart(const Sizes& s) {
    const double travel = std::max(0.0, s.l - s.x);
    return travel / (travel + s.d);
}

// (K13), (K14)
Edges open_edges(const Sizes& s) {
    const double ratio = s.t / s.d;
    Edges e;
    e.side = s.d * ((1 + std::log(2 * pi * s.w / s.d)) / pi + thickness_term(ratio));
    const double travel = std::max(0.0, s.l - s.x) + s.d / (2 * pi * std::exp(1.0));
    const double thick = thickness_term(ratio) * (1 - apart(s)) + 2 * thickness_term(ratio / 2) * apart(s);
    e.end = s.d * (2 / pi * (1 + std::log(2 * pi * std::sqrt(s.l * travel) / s.d)) + thick);
    return e;
}

// (K15), a gap inside the stack.
Edges inner_edges(const Sizes& s) {
    const double aligned = s.d * between_planes(s.t / (s.d + s.t)); // two edges, half a spacing each
    Edges e;
    e.side = aligned;
    const double offset = 2 * s.d * between_planes(s.t / (2 * s.d + s.t));
    e.end = aligned * (1 - apart(s)) + offset * apart(s);
    return e;
}

} // namespace

MadeCapacitance plates_capacitance(const PlateStack& stack, units::Length overlap) {
    const Sizes s{stack.width.value(), stack.length.value(), stack.spacing.value(), stack.thickness.value(),
                  overlap.value()};
    need(positive(s.w), "capacitor.made.width", s.w, "a width above 0");
    need(positive(s.d), "capacitor.made.spacing", s.d, "a spacing above 0");
    need(s.t >= 0 && std::isfinite(s.t), "capacitor.made.thickness", s.t, "a thickness from 0");
    need(positive(s.l), "capacitor.made.most_overlap", s.l, "a length above 0");
    need(s.x >= 0 && s.x <= s.l, "capacitor.made.least_overlap", s.x, "from 0 to the most overlap");
    need(stack.plates >= 2, "capacitor.made.plates", stack.plates, "two plates or more");
    need(stack.relative_permittivity >= 1, "capacitor.made.relative_permittivity",
         stack.relative_permittivity, "a number from 1");
    const double gaps = stack.plates - 1;
    const double inside = vacuum_F_m * stack.relative_permittivity * s.w * s.x / s.d * gaps;
    const Edges open = open_edges(s), inner = inner_edges(s);
    const auto with = [&](const Edges& e) {
        return vacuum_F_m * ((s.w + e.side) * (s.x + e.end) - s.w * s.x) / s.d;
    };
    const double fringe = with(open) + (gaps - 1) * with(inner);
    MadeCapacitance made;
    made.established = s.w >= 2 * s.d && s.l >= 2 * s.d && s.x >= s.d;
    const double doubt = made.established ? 0.25 : 0.6;
    const double low = fringe * (1 - doubt);
    const double high = fringe * (1 + doubt) * stack.relative_permittivity;
    made.ideal = units::farads(inside);
    made.value = units::farads(inside + fringe * (1 + stack.relative_permittivity) / 2);
    made.range = {units::farads(inside + low), units::farads(inside + high)};
    return made;
}

MadeCapacitance tubes_capacitance(const TubePairs& tubes, units::Length overlap) {
    const double a = tubes.inner_diameter.value() / 2, b = tubes.outer_diameter.value() / 2;
    const double x = overlap.value();
    need(positive(a), "capacitor.made.inner_diameter", a, "a diameter above 0");
    need(b > a && std::isfinite(b), "capacitor.made.outer_diameter", b, "more than the inner diameter");
    need(positive(tubes.length.value()), "capacitor.made.most_overlap", tubes.length.value(), "above 0");
    need(x >= 0 && x <= tubes.length.value(), "capacitor.made.least_overlap", x,
         "from 0 to the most overlap");
    need(tubes.pairs >= 1, "capacitor.made.pairs", tubes.pairs, "one pair or more");
    need(tubes.relative_permittivity >= 1, "capacitor.made.relative_permittivity",
         tubes.relative_permittivity, "a number from 1");
    const double d = b - a;
    const double per_metre = 2 * pi * vacuum_F_m / std::log(b / a) / tubes.pairs;
    const double end = d / pi * (2 + std::log(2 * pi * a / d + 1) + std::log(2 * pi * b / d + 1));
    MadeCapacitance made;
    made.established = d <= b / 2 && x >= 2 * d;
    const double doubt = made.established ? 0.25 : 0.6;
    const double inside = per_metre * tubes.relative_permittivity * x, fringe = per_metre * end;
    made.ideal = units::farads(inside);
    made.value = units::farads(inside + fringe * (1 + tubes.relative_permittivity) / 2);
    made.range = {units::farads(inside + fringe * (1 - doubt)),
                  units::farads(inside + fringe * (1 + doubt) * tubes.relative_permittivity)};
    return made;
}

} // namespace loopwright::capacitor
