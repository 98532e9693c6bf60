#include "field/loop_field.hpp"

#include "base/error.hpp"
#include "field/detail/field_sources.hpp"
#include "ground/half_space.hpp"
#include "units/text.hpp"

#include <algorithm>
#include <cmath>

namespace loopwright::field {

namespace {

using Complex = std::complex<double>;

double rms(const std::array<Complex, 3>& v) {
    return std::sqrt(std::norm(v[0]) + std::norm(v[1]) + std::norm(v[2]));
}

/// What the ground adds, every kernel from its integral.
void add_ground(Field& field, const loop::SolvedLoop& loop, const std::array<double, 3>& point_m) {
    const double k = loop.solution.wavenumber_rad_m();
    const std::vector<detail::Source> sources = detail::sources_of(loop, 2);
    const auto rho_to = [&](const detail::Source& s) {
        return std::hypot(point_m[0] - s.position_m[0], point_m[1] - s.position_m[1]);
    };
    double rho_max = 0, z_min = 1e300;
    for (const detail::Source& s : sources) {
        rho_max = std::max(rho_max, rho_to(s));
        z_min = std::min(z_min, point_m[2] + s.position_m[2]);
    }
    const bool perfect = loop.underground->perfect;
    const ground::HalfSpace half_space(k, perfect ? Complex(1) : loop.permittivity(), rho_max, z_min);
    for (const detail::Source& s : sources) {
        const double rho = rho_to(s), z_sum = point_m[2] + s.position_m[2];
        detail::add_ground_part(
            field, s, point_m, perfect ? detail::image_kernels(k, rho, z_sum) : half_space.fields(rho, z_sum),
            k);
    }
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
}

Field LoopField::at(units::Length x, units::Length y, units::Length z) const {
    const std::array<double, 3> point{x.value(), y.value(), z.value()};
    if (loop_.underground && !(point[2] > 0)) {
        throw base::InputError("position", units::canonical(z), "a height above the ground, z above 0 m");
    }
    Field field = detail::free_space_part(loop_, point);
    if (loop_.underground) {
        add_ground(field, loop_, point);
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
