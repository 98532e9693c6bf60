#include "wire/detail/direct.hpp"

#include "units/constants.hpp"
#include "wire/detail/pair_rule.hpp"
#include "wire/detail/unknowns.hpp"

#include <array>
#include <cmath>

namespace loopwright::wire::detail {

namespace {

using Complex = std::complex<double>;

struct Sums {
    std::array<Complex, 4> current{};
    Complex charge = 0;
};

double sinc(double x) {
    return x < 1e-4 ? 1 - x * x / 6 : std::sin(x) / x;
}

Sums dynamic_sums(const std::vector<Site>& one, const std::vector<Site>& other, double k, double radii2_m2) {
    Sums sums;
    for (const Site& s : one) {
        for (const Site& t : other) {
            const geometry::Vector3 between = s.point - t.point;
            const double square = dot(between, between);
            const double distance = std::sqrt(square + radii2_m2);
            const double sine = std::sin(0.5 * k * distance);
            const double weight = s.weight_m * t.weight_m;
            // (cos kR - 1)/R without cancellation; the radiating part is that of the axes.
            const Complex kernel =
                weight * Complex(-2.0 * sine * sine / distance, -k * sinc(k * std::sqrt(square)));
            sums.charge += kernel + weight * 0.5 * k * k * distance;
            const Complex along = dot(s.tangent, t.tangent) * kernel;
            sums.current[0] += along * (1 - s.x) * (1 - t.x);
            sums.current[1] += along * (1 - s.x) * t.x;
            sums.current[2] += along * s.x * (1 - t.x);
            sums.current[3] += along * s.x * t.x;
        }
    }
    return sums;
}

Complex entry(const Sums& sums, const LocalCurrent& u, const LocalCurrent& v, double inverse_area, double k) {
    const Complex currents = u.begin * v.begin * sums.current[0] + u.begin * v.end * sums.current[1] +
                             u.end * v.begin * sums.current[2] + u.end * v.end * sums.current[3];
    return u.charge() * v.charge() * inverse_area * sums.charge - k * k * currents;
}

FieldMatrix scaled(const std::vector<Complex>& dynamic, const Moments& moments, double k) {
    const double scale = units::constants::free_space_impedance_ohm / (4 * units::constants::pi * k);
    FieldMatrix field{moments.unknowns, {}, {}};
    for (std::size_t e = 0; e < dynamic.size(); ++e) {
        const Complex sum = dynamic[e] + moments.series[0][e] - k * k * moments.series[2][e];
        field.re.push_back(scale * sum.imag()); // times -j
        field.im.push_back(-scale * sum.real());
    }
    return field;
}

} // namespace

FieldMatrix direct_matrix(const Mesh& mesh, const Moments& moments, double k) {
    const auto& elements = mesh.elements();
    std::vector<std::vector<Site>> sites;
    std::vector<std::vector<LocalCurrent>> locals;
    for (const Element& element : elements) {
        sites.push_back(sites_on(mesh, element, 4));
        locals.push_back(locals_of(mesh, element));
    }
    std::vector<Complex> dynamic(moments.series[0].size(), 0.0);
    for (std::size_t p = 0; p < elements.size(); ++p) {
        for (std::size_t q = 0; q <= p; ++q) {
            const double radii2 =
                elements[p].radius_m * elements[p].radius_m + elements[q].radius_m * elements[q].radius_m;
            const Sums sums = dynamic_sums(sites[p], sites[q], k, radii2);
            const double inverse_area = 1.0 / (elements[p].length_m * elements[q].length_m);
            for_each_entry(locals[p], locals[q], p == q,
                           [&](std::size_t at, const LocalCurrent& u, const LocalCurrent& v, double factor) {
                               dynamic[at] += factor * entry(sums, u, v, inverse_area, k);
                           });
        }
    }
    return scaled(dynamic, moments, k);
}

} // namespace loopwright::wire::detail
