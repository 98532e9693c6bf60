#include "wire/detail/contact.hpp"

#include "base/error.hpp"

#include <algorithm>
#include <cmath>

namespace loopwright::wire::detail {

namespace {

using geometry::Vector3;

std::vector<Vector3> finely(const Mesh& mesh, const Element& element) {
    const int steps = std::clamp(static_cast<int>(std::ceil(element.length_m / element.radius_m)), 1, 200);
    std::vector<Vector3> points;
    for (int i = 0; i <= steps; ++i) {
        points.push_back(mesh.point(element, static_cast<double>(i) / steps));
    }
    return points;
}

bool touch(const Mesh& mesh, const Element& a, const Element& b) {
    const double reach = 0.999 * (a.radius_m + b.radius_m); // touching as designed is no contact
    const std::vector<Vector3> of_b = finely(mesh, b);
    for (const Vector3& p : finely(mesh, a)) {
        for (const Vector3& q : of_b) {
            if (norm(p - q) < reach) {
                return true;
            }
        }
    }
    return false;
}

/// Distance along the wire between two elements; infinite on two wires.
double apart_along(const Mesh& mesh, const Element& a, const Element& b) {
    if (a.wire != b.wire) {
        return INFINITY;
    }
    const Wire& wire = mesh.model().wires[a.wire];
    const double onward = b.begin_m - a.begin_m - a.length_m;
    return wire.closed ? std::min(onward, wire.length_m() - (b.begin_m + b.length_m - a.begin_m)) : onward;
}

} // namespace

void refuse_contact(const Mesh& mesh) {
    const auto& elements = mesh.elements();
    for (std::size_t i = 0; i < elements.size(); ++i) {
        const Element& a = elements[i];
        const Vector3 middle = mesh.point(a, 0.5);
        for (std::size_t k = i + 1; k < elements.size(); ++k) {
            const Element& b = elements[k];
            const double reach = a.radius_m + b.radius_m;
            const bool near = norm(middle - mesh.point(b, 0.5)) <= 0.5 * (a.length_m + b.length_m) + reach;
            if (near && apart_along(mesh, a, b) >= 4 * reach && touch(mesh, a, b)) {
                throw base::InputError("conductor", "conductors that touch or cross",
                                       "conductors whose axes are at least the sum of their radii apart");
            }
        }
    }
}

} // namespace loopwright::wire::detail
