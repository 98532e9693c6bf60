#include "field/loop_field.hpp"

#include "base/error.hpp"
#include "ground/half_space.hpp"
#include "units/constants.hpp"
#include "units/text.hpp"
#include "wire/near_field.hpp"

#include <algorithm>
#include <cmath>

namespace loopwright::field {

namespace {

using Complex = std::complex<double>;
using geometry::Vector3;
using units::constants::free_space_impedance_ohm;
using units::constants::pi;
using Triple = std::array<Complex, 3>;

Vector3 turned(const geometry::Frame& stand, const Vector3& v) {
    return v.x * stand.right + v.y * stand.rise + v.z * stand.up;
}

Triple turned_field(const geometry::Frame& stand, const Triple& v) {
    const Vector3 re = turned(stand, {v[0].real(), v[1].real(), v[2].real()});
    const Vector3 im = turned(stand, {v[0].imag(), v[1].imag(), v[2].imag()});
    return {Complex(re.x, im.x), Complex(re.y, im.y), Complex(re.z, im.z)};
}

double rms(const Triple& v) {
    return std::sqrt(std::norm(v[0]) + std::norm(v[1]) + std::norm(v[2]));
}

/// Over perfect ground every kernel is an image's: -g for horizontal currents and charges, +g for vertical
/// ones.
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

} // namespace

units::ElectricField Field::electric() const {
    return units::ElectricField::from_value(rms(electric_V_m));
}
units::MagneticField Field::magnetic() const {
    return units::MagneticField::from_value(rms(magnetic_A_m));
}

LoopField::LoopField(loop::SolvedLoop loop, units::Power power) : loop_(std::move(loop)) {
    if (!(power.value() > 0)) {
        throw base::InputError("power", units::canonical(power), "a power above 0");
    }
    scale_ = std::sqrt(power.value() / loop_.total.value());
    const wire::Mesh& mesh = loop_.solution.mesh();
    const auto node_current = [&](std::size_t node) {
        return node == wire::no_node ? Complex(0) : loop_.currents.node_A[node];
    };
    constexpr std::array<double, 2> gauss{0.21132486540518712, 0.78867513459481288};
    for (const wire::Element& element : mesh.elements()) {
        const Complex begin = node_current(element.node[0]);
        const Complex end = node_current(element.node[1]);
        for (const double x : gauss) {
            const Vector3 p = loop_.stand.origin + turned(loop_.stand, mesh.point(element, x));
            const Vector3 t = turned(loop_.stand, mesh.tangent(element, x));
            const Complex moment = 0.5 * element.length_m * (begin * (1 - x) + end * x);
            sources_.push_back(
                {{p.x, p.y, p.z}, {moment * t.x, moment * t.y, moment * t.z}, 0.5 * (end - begin)});
        }
    }
}

Field LoopField::free_space(const std::array<double, 3>& point_m) const {
    // Into the mesh's own coordinates and back.
    const geometry::Frame& stand = loop_.stand;
    const Vector3 away = Vector3{point_m[0], point_m[1], point_m[2]} - stand.origin;
    const wire::NearField near =
        wire::near_field(loop_.solution.mesh(), loop_.currents,
                         {dot(away, stand.right), dot(away, stand.rise), dot(away, stand.up)});
    return {turned_field(stand, near.electric_V_m), turned_field(stand, near.magnetic_A_m)};
}

void LoopField::add_ground(Field& field, const std::array<double, 3>& point_m) const {
    const double k = loop_.solution.wavenumber_rad_m();
    double rho_max = 0, z_min = 1e300;
    for (const Source& s : sources_) {
        rho_max = std::max(rho_max, std::hypot(point_m[0] - s.position_m[0], point_m[1] - s.position_m[1]));
        z_min = std::min(z_min, point_m[2] + s.position_m[2]);
    }
    const bool perfect = loop_.underground->perfect;
    const ground::HalfSpace half_space(k, perfect ? Complex(1) : loop_.permittivity(), rho_max, z_min);
    const Complex of_current(0, -k * free_space_impedance_ohm); // -j omega mu0
    const Complex of_charge(0, -free_space_impedance_ohm / k);  // -(1/eps0)(-1/(j omega)) of dI/ds
    for (const Source& s : sources_) {
        const double dx = point_m[0] - s.position_m[0];
        const double dy = point_m[1] - s.position_m[1];
        const double rho = std::hypot(dx, dy);
        const double z_sum = point_m[2] + s.position_m[2];
        const double ex = rho > 0 ? dx / rho : 1.0;
        const double ey = rho > 0 ? dy / rho : 0.0;
        const ground::FieldKernels f = perfect ? image_kernels(k, rho, z_sum) : half_space.fields(rho, z_sum);
        const ground::PotentialKernels& p = f.potential;
        const auto& [jx, jy, jz] = s.moment_A_m;
        const Complex away = ex * jx + ey * jy;
        const Complex q = s.charge_current_A;
        field.electric_V_m[0] +=
            of_current * (p.horizontal * jx - ex * p.mixed * jz) + of_charge * q * ex * f.scalar_drho;
        field.electric_V_m[1] +=
            of_current * (p.horizontal * jy - ey * p.mixed * jz) + of_charge * q * ey * f.scalar_drho;
        field.electric_V_m[2] +=
            of_current * (p.vertical * jz + p.mixed * away) + of_charge * q * f.scalar_dz;
        // curl of the true vector potential
        const auto mixed_slope = [&](double e, Complex j) {
            return f.mixed_drho * e * away + f.mixed_over_rho * (j - e * away);
        };
        field.magnetic_A_m[0] += ey * f.vertical_true_drho * jz + mixed_slope(ey, jy) - f.horizontal_dz * jy;
        field.magnetic_A_m[1] += f.horizontal_dz * jx - ex * f.vertical_true_drho * jz - mixed_slope(ex, jx);
        field.magnetic_A_m[2] += f.horizontal_drho * (ex * jy - ey * jx);
    }
}

Field LoopField::at(units::Length x, units::Length y, units::Length z) const {
    const std::array<double, 3> point{x.value(), y.value(), z.value()};
    if (loop_.underground && !(point[2] > 0)) {
        throw base::InputError("position", units::canonical(z), "a height above the ground, z above 0 m");
    }
    Field field = free_space(point);
    if (loop_.underground) {
        add_ground(field, point);
    }
    for (Complex& e : field.electric_V_m) {
        e *= scale_;
    }
    for (Complex& h : field.magnetic_A_m) {
        h *= scale_;
    }
    return field;
}

} // namespace loopwright::field
