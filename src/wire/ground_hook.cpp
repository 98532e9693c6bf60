#include "wire/ground_hook.hpp"

#include "base/error.hpp"
#include "units/constants.hpp"
#include "wire/detail/pair_rule.hpp"
#include "wire/detail/unknowns.hpp"

#include <algorithm>
#include <cmath>

namespace loopwright::wire {

namespace {

using Complex = std::complex<double>;
using geometry::Vector3;
using units::constants::free_space_impedance_ohm;
using units::constants::pi;

// Sums over the sites of one pair of elements, as in the free-space matrix.
struct Sums {
    std::array<Complex, 4> current{};
    Complex charge = 0;
};

Vector3 turned(const geometry::Frame& stand, const Vector3& v) {
    return v.x * stand.right + v.y * stand.rise + v.z * stand.up;
}

Vector3 placed(const geometry::Frame& stand, const Vector3& point) {
    return stand.origin + turned(stand, point);
}

int points_for(const Mesh& mesh, const geometry::Frame& stand) {
    double ratio = 0;
    for (const Element& element : mesh.elements()) {
        const double above =
            std::min(placed(stand, mesh.point(element, 0)).z, placed(stand, mesh.point(element, 1)).z);
        ratio = std::max(ratio, element.length_m / (2 * above));
    }
    return ratio < 0.25 ? 2 : ratio < 0.6 ? 3 : ratio < 1.2 ? 4 : 6;
}

void refuse_ground_contact(const Mesh& mesh, const geometry::Frame& stand) {
    for (const Element& element : mesh.elements()) {
        for (const double x : {0.0, 0.5, 1.0}) {
            if (!(placed(stand, mesh.point(element, x)).z >= element.radius_m)) {
                throw base::InputError("site.lowest_point", "a conductor that reaches into the ground",
                                       "a lowest point above the conductor's radius");
            }
        }
    }
}

} // namespace

void PerfectGround::potentials(std::span<const double> rho_m, std::span<const double> z_sum_m,
                               std::span<ground::PotentialKernels> out) const {
    for (std::size_t i = 0; i < out.size(); ++i) {
        const double r = std::hypot(rho_m[i], z_sum_m[i]);
        const Complex image = Complex(std::cos(k_ * r), -std::sin(k_ * r)) / (4 * pi * r);
        out[i] = {-image, image, 0.0, -image};
    }
}

void TabulatedGround::potentials(std::span<const double> rho_m, std::span<const double> z_sum_m,
                                 std::span<ground::PotentialKernels> out) const {
    for (std::size_t i = 0; i < out.size(); ++i) {
        out[i] = table_->potentials(rho_m[i], z_sum_m[i]);
    }
}

GroundPairs::GroundPairs(const Mesh& mesh, double height_m, int points)
    : GroundPairs(mesh, geometry::Frame{.origin = {0, 0, height_m}}, points) {}

GroundPairs::GroundPairs(const Mesh& mesh, const geometry::Frame& stand, int points)
    : unknowns_(mesh.nodes()) {
    refuse_ground_contact(mesh, stand);
    const int count = points > 0 ? points : points_for(mesh, stand);
    sites_per_element_ = static_cast<std::size_t>(count);
    std::vector<std::vector<detail::Site>> sites;
    for (const Element& element : mesh.elements()) {
        sites.push_back(detail::sites_on(mesh, element, count));
        for (detail::Site& site : sites.back()) {
            site.point = placed(stand, site.point);
            site.tangent = turned(stand, site.tangent);
        }
        auto& locals = locals_.emplace_back();
        for (const detail::LocalCurrent& u : detail::locals_of(mesh, element)) {
            locals.push_back({u.unknown, u.begin, u.end, u.charge() / element.length_m});
        }
    }
    for (std::size_t p = 0; p < sites.size(); ++p) {
        for (std::size_t q = 0; q <= p; ++q) {
            for (const detail::Site& s : sites[p]) {
                for (const detail::Site& t : sites[q]) {
                    const double dx = s.point.x - t.point.x;
                    const double dy = s.point.y - t.point.y;
                    const double rho = std::hypot(dx, dy);
                    const double inverse = rho > 0 ? 1 / rho : 0.0; // no direction, no mixed term
                    const double along_s = (s.tangent.x * dx + s.tangent.y * dy) * inverse;
                    const double along_t = (t.tangent.x * dx + t.tangent.y * dy) * inverse;
                    rho_.push_back(rho);
                    z_sum_.push_back(s.point.z + t.point.z);
                    pairs_.push_back(
                        {s.tangent.x * t.tangent.x + s.tangent.y * t.tangent.y, s.tangent.z * t.tangent.z,
                         s.tangent.z * along_t - along_s * t.tangent.z, s.weight_m * t.weight_m, s.x, t.x});
                }
            }
        }
    }
    greatest_rho_ = *std::max_element(rho_.begin(), rho_.end());
    const auto [least, greatest] = std::minmax_element(z_sum_.begin(), z_sum_.end());
    least_z_ = *least;
    greatest_z_ = *greatest;
}

FieldMatrix GroundPairs::matrix(double k, const GroundKernels& kernels) const {
    const std::size_t count = unknowns_ * (unknowns_ + 1) / 2;
    FieldMatrix added{unknowns_, std::vector<double>(count, 0.0), std::vector<double>(count, 0.0)};
    std::vector<ground::PotentialKernels> values(rho_.size());
    kernels.potentials(rho_, z_sum_, values);
    const Complex of_current(0, k * free_space_impedance_ohm);
    const Complex of_charge(0, -free_space_impedance_ohm / k);
    std::size_t at = 0;
    for (std::size_t p = 0; p < locals_.size(); ++p) {
        for (std::size_t q = 0; q <= p; ++q) {
            Sums sums;
            for (std::size_t i = 0; i < sites_per_element_ * sites_per_element_; ++i, ++at) {
                const Pair& pair = pairs_[at];
                const ground::PotentialKernels& value = values[at];
                const Complex current =
                    pair.weight_m2 * (pair.horizontal * value.horizontal + pair.vertical * value.vertical +
                                      pair.mixed * value.mixed);
                sums.current[0] += (1 - pair.x) * (1 - pair.y) * current;
                sums.current[1] += (1 - pair.x) * pair.y * current;
                sums.current[2] += pair.x * (1 - pair.y) * current;
                sums.current[3] += pair.x * pair.y * current;
                sums.charge += pair.weight_m2 * value.scalar;
            }
            for (const Local& u : locals_[p]) {
                for (const Local& v : locals_[q]) {
                    if (p == q && v.unknown > u.unknown) {
                        continue;
                    }
                    const Complex currents =
                        u.begin * v.begin * sums.current[0] + u.begin * v.end * sums.current[1] +
                        u.end * v.begin * sums.current[2] + u.end * v.end * sums.current[3];
                    const Complex entry =
                        of_current * currents + of_charge * (u.charge_per_m * v.charge_per_m) * sums.charge;
                    const std::size_t row = std::max(u.unknown, v.unknown);
                    const std::size_t column = std::min(u.unknown, v.unknown);
                    const double factor = p != q && row == column ? 2.0 : 1.0;
                    added.re[row * (row + 1) / 2 + column] += factor * entry.real();
                    added.im[row * (row + 1) / 2 + column] += factor * entry.imag();
                }
            }
        }
    }
    return added;
}

} // namespace loopwright::wire
