#include "loop/inductance.hpp"

#include "base/error.hpp"
#include "conductor/curvature.hpp"
#include "units/constants.hpp"

#include <boost/math/quadrature/gauss_kronrod.hpp>
#include <boost/math/special_functions/ellint_1.hpp>
#include <boost/math/special_functions/ellint_2.hpp>
#include <cmath>
#include <string>

namespace loopwright::loop {
namespace {

using units::constants::magnetic_constant_H_m;
using units::constants::pi;

void require(bool holds, const char* what) {
    if (!holds) {
        throw base::ProgramError(std::string("inductance: ") + what);
    }
}

void require_ring(units::Length radius, units::Length wire_radius) {
    require(wire_radius.value() > 0 && radius.value() > wire_radius.value(),
            "a ring needs 0 < wire radius < radius");
}

double coaxial_mutual_H(double r1_m, double r2_m, double distance_m) {
    const double sum = r1_m + r2_m;
    const double m2 = 4 * r1_m * r2_m / (sum * sum + distance_m * distance_m);
    const double m = std::sqrt(m2);
    return magnetic_constant_H_m * std::sqrt(r1_m * r2_m) *
           ((2 / m - m) * boost::math::ellint_1(m) - 2 / m * boost::math::ellint_2(m));
}

// int int ds dt / R over two straight filaments in one plane whose lines meet at the angle with cosine c;
// x from x0 to x1 and y from y0 to y1 are distances from the meeting point.
double inclined_integral_m(double x0, double x1, double y0, double y1, double c) {
    const auto corner = [c](double x, double y) {
        const double r = std::sqrt(std::max(0.0, x * x + y * y - 2 * x * y * c));
        const auto term = [](double factor, double argument) {
            return factor == 0 ? 0.0 : factor * std::log(argument);
        };
        return term(x, r + y - x * c) + term(y, r + x - y * c);
    };
    return corner(x1, y1) - corner(x0, y1) - corner(x1, y0) + corner(x0, y0);
}

// int int ds dt / R of two parallel filaments of one length, side by side at the distance d.
double parallel_integral_m(double length, double d) {
    return 2 * (length * std::asinh(length / d) - std::hypot(length, d) + d);
}

// Magnetic field per ampere [1/m] of a circle of radius r at (rho, z) from its centre; Smythe, Static and
// Dynamic Electricity, 7.10.
struct RingField {
    double radial = 0, axial = 0;
};
RingField field_of_ring(double r, double rho, double z) {
    const double sum2 = (r + rho) * (r + rho) + z * z;
    const double difference2 = (r - rho) * (r - rho) + z * z;
    const double m = std::sqrt(4 * r * rho / sum2);
    const double k = boost::math::ellint_1(m);
    const double e = boost::math::ellint_2(m);
    const double factor = 1 / (2 * pi * std::sqrt(sum2));
    return {factor * z / rho * (-k + (r * r + rho * rho + z * z) / difference2 * e),
            factor * (k + (r * r - rho * rho - z * z) / difference2 * e)};
}

double side_self_H(double length_m, double wire_radius_m) {
    return magnetic_constant_H_m / (2 * pi) * length_m * (std::log(2 * length_m / wire_radius_m) - 1);
}

} // namespace

units::Inductance circle_inductance_thin(units::Length radius, units::Length wire_radius) {
    require_ring(radius, wire_radius);
    return units::henries(magnetic_constant_H_m * radius.value() *
                          (std::log(8 * radius.value() / wire_radius.value()) - 2));
}

units::Inductance circle_inductance_dc(units::Length radius, units::Length wire_radius) {
    return circle_inductance_thin(radius, wire_radius) +
           units::henries(0.25 * magnetic_constant_H_m * radius.value());
}

units::Inductance coaxial_mutual(units::Length radius1, units::Length radius2, units::Length distance) {
    require(radius1.value() > 0 && radius2.value() > 0, "radii must be above 0");
    require(distance.value() != 0 || radius1 != radius2, "two different circles");
    return units::henries(coaxial_mutual_H(radius1.value(), radius2.value(), distance.value()));
}

units::Inductance parallel_axis_mutual(units::Length radius1, units::Length radius2, units::Length offset,
                                       units::Length height) {
    require(radius1.value() > 0 && radius2.value() > 0, "radii must be above 0");
    const double r1 = radius1.value();
    const double r2 = radius2.value();
    // A of the first circle is M/(2 pi rho) at the distance rho from its axis; its part along the second.
    const auto integrand = [&](double t) {
        const double x = offset.value() + r2 * std::cos(t);
        const double y = r2 * std::sin(t);
        const double rho = std::hypot(x, y);
        if (rho < 1e-12 * r1) {
            return 0.0;
        }
        const double along = (x * std::cos(t) + y * std::sin(t)) / rho;
        return coaxial_mutual_H(r1, rho, height.value()) / (2 * pi * rho) * along * r2;
    };
    using Rule = boost::math::quadrature::gauss_kronrod<double, 61>;
    return units::henries(2 * Rule::integrate(integrand, 0.0, pi, 12, 1e-12));
}

units::Inductance polygon_inductance(int sides, units::Length perimeter, units::Length wire_radius) {
    require(sides >= 3 && perimeter.value() > 0 && wire_radius.value() > 0, "a polygon needs three sides");
    const double side = perimeter.value() / sides;
    const double inner_radius = 0.5 * side / std::tan(pi / sides);
    double sum_m = 0;
    for (int apart = 1; apart < sides; ++apart) {
        const double turn = 2 * pi * apart / sides;
        const double cosine = std::cos(turn);
        if (2 * apart == sides) {
            sum_m -= parallel_integral_m(side, 2 * inner_radius);
            continue;
        }
        // The lines meet at the distance inner_radius tan(turn/2) from the middles of both sides.
        const double middle = std::abs(inner_radius * std::tan(turn / 2));
        const double from = std::max(0.0, middle - side / 2);
        // Measured from the meeting point outward the directions include the angle pi - turn.
        sum_m += cosine * inclined_integral_m(from, from + side, from, from + side, -cosine);
    }
    return units::henries(
        sides * (side_self_H(side, wire_radius.value()) + magnetic_constant_H_m / (4 * pi) * sum_m));
}

units::Inductance rectangle_inductance(units::Length width, units::Length height, units::Length wire_radius) {
    require(width.value() > 0 && height.value() > 0 && wire_radius.value() > 0, "sides above 0");
    const double w = width.value();
    const double h = height.value();
    const double mutual_m = parallel_integral_m(w, h) + parallel_integral_m(h, w);
    return units::henries(2 * (side_self_H(w, wire_radius.value()) + side_self_H(h, wire_radius.value()) -
                               magnetic_constant_H_m / (4 * pi) * mutual_m));
}

units::Inductance rings_inductance(const std::vector<Ring>& rings, units::Length wire_radius) {
    double sum_H = 0;
    for (std::size_t i = 0; i < rings.size(); ++i) {
        sum_H += circle_inductance_thin(rings[i].radius, wire_radius).value();
        for (std::size_t j = 0; j < i; ++j) {
            sum_H += 2 * coaxial_mutual_H(rings[i].radius.value(), rings[j].radius.value(),
                                          rings[i].position.value() - rings[j].position.value());
        }
    }
    return units::henries(sum_H);
}

units::Inductance rings_redistribution(const std::vector<Ring>& rings, units::Length wire_radius) {
    const double a = wire_radius.value();
    double sum_H = 0;
    for (std::size_t i = 0; i < rings.size(); ++i) {
        const double r = rings[i].radius.value();
        // A ring alone: the exact torus; its field on itself is that of its curvature, along the axis.
        sum_H += (conductor::ring_current(rings[i].radius, wire_radius).inductance -
                  circle_inductance_thin(rings[i].radius, wire_radius))
                     .value();
        const double own = (std::log(8 * r / a) - 1) / (4 * pi * r);
        RingField others;
        for (std::size_t j = 0; j < rings.size(); ++j) {
            if (j != i) {
                const RingField field = field_of_ring(rings[j].radius.value(), r,
                                                      rings[i].position.value() - rings[j].position.value());
                others.radial += field.radial;
                others.axial += field.axial;
            }
        }
        const double square =
            others.radial * others.radial + others.axial * others.axial + 2 * own * others.axial;
        sum_H -= 2 * pi * a * a * magnetic_constant_H_m * square * 2 * pi * r;
    }
    return units::henries(sum_H);
}

} // namespace loopwright::loop
