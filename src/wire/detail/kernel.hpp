#pragma once
// The static kernel between two thin round wires whose current and charge are spread evenly around them.
#include "geometry/vector3.hpp"

#include <cmath>

namespace loopwright::wire::detail {

/// 1 / AGM(a, b), a >= b > 0, AGM the arithmetic-geometric mean. Converges quadratically: relative error
/// below 1e-15 once the two agree to 1e-8.
[[nodiscard]] inline double inverse_agm(double a, double b) noexcept {
    while (a - b > 1e-8 * a) {
        const double mean = 0.5 * (a + b);
        b = std::sqrt(a * b);
        a = mean;
    }
    return 2.0 / (a + b);
}

/// Mean of 1/R over both circumferences [1/m]. Source: two coaxial circles of radii a1, a2 at a distance d,
/// exactly 1/AGM(sqrt(d^2 + (a1 + a2)^2), sqrt(d^2 + (a1 - a2)^2)) (complete elliptic integral, Abramowitz
/// and Stegun 17.6). Wires side by side need the second term: from the field of a ring off its axis, 1/d [1 -
/// (a^2 / 2 d^2) P2(cos)], P2 being -1/2 there, not 1. Its denominator is chosen so that the mutual part of
/// two parallel wires of equal radius is that of their axes to second order in (a/d)^2, and so that it dies
/// out where d < a. between: vector from one axis point to the other, not 0; t1, t2: unit tangents there.
[[nodiscard]] inline double static_kernel(const geometry::Vector3& between, const geometry::Vector3& t1,
                                          const geometry::Vector3& t2, double a1_m, double a2_m) noexcept {
    const double d2 = dot(between, between);
    const double sum = a1_m + a2_m;
    const double difference = a1_m - a2_m;
    const double coaxial = inverse_agm(std::sqrt(d2 + sum * sum), std::sqrt(d2 + difference * difference));
    const double along1 = dot(between, t1);
    const double along2 = dot(between, t2);
    const double beside = a1_m * a1_m * (d2 - along1 * along1) + a2_m * a2_m * (d2 - along2 * along2);
    const double soft = d2 + 0.3 * (a1_m * a1_m + a2_m * a2_m);
    return coaxial + 0.75 * beside / (soft * soft * std::sqrt(soft));
}

} // namespace loopwright::wire::detail
