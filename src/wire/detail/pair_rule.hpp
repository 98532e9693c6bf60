#pragma once
// Quadrature points for the double integral over two elements: Gauss where they are far apart, subdivided
// where they are near, graded towards the common point where they touch.
#include "wire/detail/track.hpp"

#include <vector>

namespace loopwright::wire::detail {

/// A point of an element, ready for the kernel. x: from 0 to 1 along the element.
struct Site {
    geometry::Vector3 point, tangent;
    double x = 0;
    double weight_m = 0;
};

/// Points and weights of the n-point Gauss-Legendre rule on [0, 1]; n = 1 to 8.
struct GaussRule {
    std::vector<double> x, weight;
};
[[nodiscard]] const GaussRule& gauss_rule(int points);

/// Gauss points of a part of an element, from x = low to high.
[[nodiscard]] std::vector<Site> sites_on(const Track& track, double length_m, int points, double low = 0,
                                         double high = 1);
[[nodiscard]] std::vector<Site> sites_on(const Mesh& mesh, const Element& element, int points);

/// Panels of [0, 1], each 0.3 of the one before towards 0, five Gauss points in each. touch_panels serve
/// integrands like t log t (two elements that touch), self_panels log t (an element with itself).
[[nodiscard]] const GaussRule& graded_rule(int panels);
inline constexpr int touch_panels = 5;
inline constexpr int self_panels = 11;
/// Across the rays from the common point of two touching elements, and along the rest of an element from
/// which a distance is taken.
inline constexpr int points_across = 4;
inline constexpr int points_along = 3;

} // namespace loopwright::wire::detail
