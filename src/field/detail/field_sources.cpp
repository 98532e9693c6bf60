#include "field/detail/field_sources.hpp"

#include "base/error.hpp"
#include "units/constants.hpp"
#include "wire/near_field.hpp"

#include <boost/math/quadrature/gauss.hpp>
#include <cmath>

namespace loopwright::field::detail {

namespace {

using Complex = std::complex<double>;
using geometry::Vector3;
using units::constants::free_space_impedance_ohm;
using units::constants::pi;
using Triple = std::array<Complex, 3>;

Triple turned_field(const geometry::Frame& stand, const Triple& v) {
    const Vector3 re = turned(stand, {v[0].real(), v[1].real(), v[2].real()});
    const Vector3 im = turned(stand, {v[0].imag(), v[1].imag(), v[2].imag()});
    return {Complex(re.x, im.x), Complex(re.y, im.y), Complex(re.z, im.z)};
}

struct GaussPoint {
    double place, weight; ///< both on 0 to 1
};

template <unsigned count>
std::vector<GaussPoint> gauss_points() {
    const auto& x = boost::math::quadrature::gauss<double, count>::abscissa();
    const auto& w = boost::math::quadrature::gauss<double, count>::weights();
    std::vector<GaussPoint> points;
    for (std::size_t i = x.size(); i-- > 0;) {
        points.push_back({0.5 - 0.5 * x[i], 0.5 * w[i]});
    }
    for (std::size_t i = 0; i < x.size(); ++i) {
        points.push_back({0.5 + 0.5 * x[i], 0.5 * w[i]});
    }
    return points;
}

std::vector<GaussPoint> rule_of(int points) {
    switch (points) {
    case 2:
        return gauss_points<2>();
    case 4:
        return gauss_points<4>();
    case 8:
        return gauss_points<8>();
    default:
        throw base::ProgramError("sources_of: 2, 4 or 8 points an element");
    }
}

} // namespace

Vector3 turned(const geometry::Frame& stand, const Vector3& v) {
    return v.x * stand.right + v.y * stand.rise + v.z * stand.up;
}

std::vector<Source> sources_of(const loop::SolvedLoop& loop, int points) {
    const wire::Mesh& mesh = loop.solution.mesh();
    const auto node_current = [&](std::size_t node) {
        return node == wire::no_node ? Complex(0) : loop.currents.node_A[node];
    };
    const std::vector<GaussPoint> rule = rule_of(points);
    std::vector<Source> sources;
    sources.reserve(mesh.elements().size() * rule.size());
    for (const wire::Element& element : mesh.elements()) {
        const Complex begin = node_current(element.node[0]);
        const Complex end = node_current(element.node[1]);
        for (const auto& [x, share] : rule) {
            const Vector3 p = loop.stand.origin + turned(loop.stand, mesh.point(element, x));
            const Vector3 t = turned(loop.stand, mesh.tangent(element, x));
            const Complex moment = share * element.length_m * (begin * (1 - x) + end * x);
            sources.push_back(
                {{p.x, p.y, p.z}, {moment * t.x, moment * t.y, moment * t.z}, share * (end - begin)});
        }
    }
    return sources;
}

ground::FieldKernels image_kernels(double k, double rho, double z_sum) {
    const double r = std::hypot(rho, z_sum);
    const Complex g = std::exp(Complex(0, -k * r)) / (4 * pi * r);
    const Complex slope = -g * (Complex(0, k) + 1 / r); // dg/dr
    ground::FieldKernels kernels{};
    kernels.potential = {-g, g, 0, -g};
    kernels.scalar_drho = kernels.horizontal_drho = -slope * (rho / r);
    kernels.scalar_dz = kernels.horizontal_dz = -slope * (z_sum / r);
    kernels.vertical_true_drho = slope * (rho / r);
    return kernels;
}

void add_ground_part(Field& field, const Source& s, const std::array<double, 3>& point_m,
                     const ground::FieldKernels& f, double k) {
    const Complex of_current(0, -k * free_space_impedance_ohm); // -j omega mu0
    const Complex of_charge(0, -free_space_impedance_ohm / k);  // -(1/eps0)(-1/(j omega)) of dI/ds
    const double dx = point_m[0] - s.position_m[0];
    const double dy = point_m[1] - s.position_m[1];
    const double rho = std::sqrt(dx * dx + dy * dy);
    const double ex = rho > 0 ? dx / rho : 1.0;
    const double ey = rho > 0 ? dy / rho : 0.0;
    const ground::PotentialKernels& p = f.potential;
    const auto& [jx, jy, jz] = s.moment_A_m;
    const Complex away = ex * jx + ey * jy;
    const Complex q = of_charge * s.charge_current_A;
    field.electric_V_m[0] += of_current * (p.horizontal * jx - ex * p.mixed * jz) + q * (ex * f.scalar_drho);
    field.electric_V_m[1] += of_current * (p.horizontal * jy - ey * p.mixed * jz) + q * (ey * f.scalar_drho);
    field.electric_V_m[2] += of_current * (p.vertical * jz + p.mixed * away) + q * f.scalar_dz;
    // curl of the true vector potential
    const Complex along = (f.mixed_drho - f.mixed_over_rho) * away;
    field.magnetic_A_m[0] +=
        ey * f.vertical_true_drho * jz + along * ey + f.mixed_over_rho * jy - f.horizontal_dz * jy;
    field.magnetic_A_m[1] +=
        f.horizontal_dz * jx - ex * f.vertical_true_drho * jz - along * ex - f.mixed_over_rho * jx;
    field.magnetic_A_m[2] += f.horizontal_drho * (ex * jy - ey * jx);
}

Field free_space_part(const loop::SolvedLoop& loop, const std::array<double, 3>& point_m) {
    // Into the mesh's own coordinates and back.
    const geometry::Frame& stand = loop.stand;
    const Vector3 away = Vector3{point_m[0], point_m[1], point_m[2]} - stand.origin;
    const wire::NearField near =
        wire::near_field(loop.solution.mesh(), loop.currents,
                         {dot(away, stand.right), dot(away, stand.rise), dot(away, stand.up)});
    return {turned_field(stand, near.electric_V_m), turned_field(stand, near.magnetic_A_m)};
}

} // namespace loopwright::field::detail
