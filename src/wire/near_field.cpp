#include "wire/near_field.hpp"

#include "base/error.hpp"
#include "units/constants.hpp"
#include "wire/detail/element_current.hpp"
#include "wire/detail/pair_rule.hpp"

#include <cmath>

namespace loopwright::wire {

namespace {

using Complex = std::complex<double>;
using geometry::Vector3;
using units::constants::free_space_impedance_ohm;
using units::constants::pi;

double rms_of(const std::array<Complex, 3>& field) {
    return std::sqrt(std::norm(field[0]) + std::norm(field[1]) + std::norm(field[2]));
}

void add(std::array<Complex, 3>& field, Complex factor, const Vector3& direction) {
    field[0] += factor * direction.x;
    field[1] += factor * direction.y;
    field[2] += factor * direction.z;
}

// Integrals of one element, without the constants in front.
class FieldSum {
public:
    FieldSum(const Mesh& mesh, const Currents& currents, const Vector3& at)
        : mesh_(mesh), currents_(currents), at_(at) {}

    void add_element(const Element& element) { part(element, detail::Track(mesh_, element), 0, 1, 0); }

    [[nodiscard]] NearField field() const {
        const double k = currents_.wavenumber_rad_m;
        NearField result;
        const Complex of_current(0, -k * free_space_impedance_ohm / (4 * pi));
        const Complex of_charge(0, free_space_impedance_ohm / (4 * pi * k));
        for (std::size_t i = 0; i < 3; ++i) {
            result.electric_V_m[i] = of_current * current_[i] + of_charge * charge_[i];
            result.magnetic_A_m[i] = magnetic_[i] / (4 * pi);
        }
        return result;
    }

private:
    // Halves the element until six (near) or three points serve.
    void part(const Element& element, const detail::Track& track, double low, double high, int depth) {
        const double length = (high - low) * element.length_m;
        const detail::Station middle = track.at(0.5 * (low + high));
        const Vector3 away = at_ - middle.point;
        if (length > norm(away) && depth < 14) {
            const double half = 0.5 * (low + high);
            part(element, track, low, half, depth + 1);
            part(element, track, half, high, depth + 1);
            return;
        }
        const double along = dot(away, middle.tangent); // a little beyond its ends, for curved wires
        if (std::abs(along) <= 0.6 * length && norm(away - along * middle.tangent) < element.radius_m) {
            throw base::InputError("position", "a point inside a conductor",
                                   "a point outside all conductors");
        }
        points(element, track, low, high, length < 0.2 * norm(away) ? 3 : 6);
    }

    void points(const Element& element, const detail::Track& track, double low, double high, int count) {
        const auto ends = detail::end_currents(element, currents_);
        const Complex slope = (ends[1] - ends[0]) / element.length_m;
        const double k = currents_.wavenumber_rad_m;
        for (const detail::Site& site : detail::sites_on(track, element.length_m, count, low, high)) {
            const Vector3 away = at_ - site.point;
            const double r = norm(away);
            const Complex green = site.weight_m / r * Complex(std::cos(k * r), -std::sin(k * r));
            const Complex gradient = green * Complex(1, k * r) / (r * r); // times the vector `away`
            const Complex current = (1 - site.x) * ends[0] + site.x * ends[1];
            add(current_, current * green, site.tangent);
            add(charge_, slope * gradient, away);
            add(magnetic_, current * gradient, cross(site.tangent, away));
        }
    }

    const Mesh& mesh_;
    const Currents& currents_;
    Vector3 at_;
    std::array<Complex, 3> current_{}, charge_{}, magnetic_{};
};

} // namespace

double NearField::electric_rms_V_m() const {
    return rms_of(electric_V_m);
}
double NearField::magnetic_rms_A_m() const {
    return rms_of(magnetic_A_m);
}

NearField near_field(const Mesh& mesh, const Currents& currents, const Vector3& position_m) {
    FieldSum sum(mesh, currents, position_m);
    for (const Element& element : mesh.elements()) {
        sum.add_element(element);
    }
    return sum.field();
}

} // namespace loopwright::wire
