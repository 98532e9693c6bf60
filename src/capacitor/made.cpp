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

// How far the ends are from lying over each other: 0 at the most overlap, towards 1 beyond two spacings.
double apart(const Sizes& s) {
    const double travel = std::max(0.0, s.l - s.x);
    return travel / (travel + 2 * s.d);
}

// (K14): sinh 2s + 2s = pi travel/spacing.
double edge_parameter(double travel_over_spacing) {
    const double wanted = units::constants::pi * travel_over_spacing;
    double s = std::asinh(wanted) / 4; // below
    for (int i = 0; i < 50; ++i) {
        const double step = (wanted - std::sinh(2 * s) - 2 * s) / (2 * std::cosh(2 * s) + 2);
        s += step;
        if (std::abs(step) < 1e-14) {
            break;
        }
    }
    return s;
}

// (K13), (K14)
Edges open_edges(const Sizes& s) {
    const double thick = thickness_term(s.t / s.d);
    const double p = edge_parameter(std::max(0.0, s.l - s.x) / s.d);
    Edges e;
    e.side = s.d * ((1 + std::log(2 * pi * s.w / s.d)) / pi + thick);
    e.end = s.d * ((2 + 2 * p - std::exp(-2 * p) + std::log(2 * pi * s.l / s.d)) / pi + thick);
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

// What the outer faces of the outermost plates add to the open side of a stack. With an odd number both have
// the same polarity: with the plates over each other nothing lies opposite to them.
double outer_share(const PlateStack& stack, const Sizes& s) {
    return stack.plates % 2 == 0 ? 1.0 : 0.35 + 0.65 * apart(s);
}

// (K17): potential of a tube by its own charge, mean along it, times 2 pi eps0 l.
double own_potential(double length_over_radius) {
    const double u = length_over_radius;
    return std::asinh(u) - std::sqrt(1 + 1 / (u * u)) + 1 / u;
}

// (K17): between the parts of two collinear tubes that do not overlap, of one radius.
double outside_F(double bare_m, double whole_m, double radius_m) {
    if (!(bare_m > 0)) {
        return 0;
    }
    const double both = bare_m + whole_m;
    const double mutual = both * std::log(both) - bare_m * std::log(bare_m) - whole_m * std::log(whole_m);
    const double own =
        own_potential(bare_m / radius_m) / bare_m + own_potential(whole_m / radius_m) / whole_m;
    const double per_charge = (own - mutual / (bare_m * whole_m)) / (2 * pi * vacuum_F_m);
    return bare_m / (bare_m + radius_m) / per_charge;
}

MadeCapacitance with_edges(double inside_F, double between_F, double outside_F, double permittivity,
                           bool established) {
    const units::Interval<double> doubt =
        established ? units::Interval<double>{0.65, 1.5} : units::Interval<double>{0.3, 2.0};
    MadeCapacitance made;
    made.established = established;
    made.ideal = units::farads(inside_F);
    made.value = units::farads(inside_F + between_F * (1 + permittivity) / 2 + outside_F);
    made.range = {units::farads(inside_F + (between_F + outside_F) * doubt.low),
                  units::farads(inside_F + (between_F * permittivity + outside_F) * doubt.high)};
    return made;
}

void check(const Sizes& s, const PlateStack& stack) {
    need(positive(s.w), "capacitor.made.width", s.w, "a width above 0");
    need(positive(s.d), "capacitor.made.spacing", s.d, "a spacing above 0");
    need(s.t >= 0 && std::isfinite(s.t), "capacitor.made.thickness", s.t, "a thickness from 0");
    need(positive(s.l), "capacitor.made.most_overlap", s.l, "a length above 0");
    need(s.x >= 0 && s.x <= s.l, "capacitor.made.least_overlap", s.x, "from 0 to the most overlap");
    need(stack.plates >= 2, "capacitor.made.plates", stack.plates, "two plates or more");
    need(stack.relative_permittivity >= 1 && std::isfinite(stack.relative_permittivity),
         "capacitor.made.relative_permittivity", stack.relative_permittivity, "a number from 1");
}

void check(const TubePairs& tubes, double a, double b, double x) {
    const double length = tubes.length.value();
    need(positive(a), "capacitor.made.inner_diameter", 2 * a, "a diameter above 0");
    need(b > a && std::isfinite(b), "capacitor.made.outer_diameter", 2 * b, "more than the inner diameter");
    need(positive(length), "capacitor.made.most_overlap", length, "a length above 0");
    need(x >= 0 && x <= length, "capacitor.made.least_overlap", x, "from 0 to the most overlap");
    need(tubes.pairs >= 1, "capacitor.made.pairs", tubes.pairs, "one pair or more");
    need(tubes.relative_permittivity >= 1 && std::isfinite(tubes.relative_permittivity),
         "capacitor.made.relative_permittivity", tubes.relative_permittivity, "a number from 1");
}

} // namespace

MadeCapacitance plates_capacitance(const PlateStack& stack, units::Length overlap) {
    const Sizes s{stack.width.value(), stack.length.value(), stack.spacing.value(), stack.thickness.value(),
                  overlap.value()};
    check(s, stack);
    const double gaps = stack.plates - 1;
    const auto edges_F = [&](const Edges& e) {
        return vacuum_F_m * (std::max(0.0, s.w + e.side) * std::max(0.0, s.x + e.end) - s.w * s.x) / s.d;
    };
    const double inner = edges_F(inner_edges(s)), open = edges_F(open_edges(s));
    const double edge_F = std::max(0.0, gaps * inner + outer_share(stack, s) * (open - inner));
    const double inside = vacuum_F_m * stack.relative_permittivity * s.w * s.x / s.d * gaps;
    const bool established = s.w >= 4 * s.d && s.l >= 4 * s.d && 3 * s.w >= s.l && s.x >= s.d;
    return with_edges(inside, edge_F, 0, stack.relative_permittivity, established);
}

MadeCapacitance tubes_capacitance(const TubePairs& tubes, units::Length overlap) {
    const double a = tubes.inner_diameter.value() / 2, b = tubes.outer_diameter.value() / 2;
    const double x = overlap.value(), length = tubes.length.value();
    check(tubes, a, b, x);
    const double d = b - a, middle = std::sqrt(a * b);
    const double per_metre = 2 * pi * vacuum_F_m / std::log(b / a) / tubes.pairs;
    const double edges = d / pi * std::max(0.0, 1 + std::log(2 * pi * middle / d)); // (K16), both ends
    const double outside = outside_F(length - x, length, middle) / tubes.pairs;
    const bool established = b <= 2 * a && x >= d && length >= 4 * b;
    return with_edges(per_metre * tubes.relative_permittivity * x, per_metre * edges, outside,
                      tubes.relative_permittivity, established);
}

} // namespace loopwright::capacitor
