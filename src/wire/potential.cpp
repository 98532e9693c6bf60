#include "wire/potential.hpp"

#include "units/constants.hpp"
#include "wire/detail/element_current.hpp"
#include "wire/detail/kernel.hpp"
#include "wire/detail/pair_rule.hpp"

#include <cmath>

namespace loopwright::wire {

namespace {

using Complex = std::complex<double>;
using geometry::Vector3;

struct Place {
    Vector3 point, tangent;
    double radius_m;
};

constexpr double least_distance_m = 1e-9; // the kernel's logarithm is not taken at its point
constexpr int most_halvings = 14;         // leave a part of 6e-5 of the element round that point

// Int G ds over a part of an element; halved until it is no longer than its distance.
Complex part(const Place& at, double k, const Element& element, const detail::Track& track, double low,
             double high, int depth) {
    const double length = (high - low) * element.length_m;
    const double near = norm(at.point - track.at(0.5 * (low + high)).point);
    if (length > near && depth < most_halvings) {
        const double half = 0.5 * (low + high);
        return part(at, k, element, track, low, half, depth + 1) +
               part(at, k, element, track, half, high, depth + 1);
    }
    Complex sum = 0;
    for (const detail::Site& site :
         detail::sites_on(track, element.length_m, length < 0.2 * near ? 3 : 6, low, high)) {
        Vector3 between = at.point - site.point;
        if (norm(between) < least_distance_m) {
            between = least_distance_m * at.tangent;
        }
        const double fixed =
            detail::static_kernel(between, at.tangent, site.tangent, at.radius_m, element.radius_m);
        const double r = std::sqrt(dot(between, between) + at.radius_m * at.radius_m +
                                   element.radius_m * element.radius_m);
        // (exp(-jkR) - 1)/R without a difference of nearly equal numbers
        const double half = std::sin(0.5 * k * r);
        const Complex moving(-2 * half * half / r, -std::sin(k * r) / r);
        sum += site.weight_m * (fixed + moving);
    }
    return sum;
}

} // namespace

Complex surface_potential(const Mesh& mesh, const Currents& currents, const Element& element, double x) {
    const double k = currents.wavenumber_rad_m;
    const Place at{mesh.point(element, x), mesh.tangent(element, x), element.radius_m};
    Complex sum = 0;
    for (const Element& source : mesh.elements()) {
        const auto ends = detail::end_currents(source, currents);
        const Complex slope = (ends[1] - ends[0]) / source.length_m;
        sum += slope * part(at, k, source, detail::Track(mesh, source), 0, 1, 0);
    }
    return Complex(0, units::constants::free_space_impedance_ohm / (4 * units::constants::pi * k)) * sum;
}

} // namespace loopwright::wire
