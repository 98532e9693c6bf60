#include "field/quick_field.hpp"

#include "base/error.hpp"
#include "field/detail/field_sources.hpp"
#include "ground/field_table.hpp"
#include "units/constants.hpp"

#include <algorithm>
#include <cmath>
#include <optional>

namespace loopwright::field {

namespace {

using Complex = std::complex<double>;
using Point = std::array<double, 3>;
using units::constants::free_space_impedance_ohm;
using units::constants::pi;

// From this many element lengths on two points stand for an element (the error falls with the fourth power:
// 0.03 % here); nearer, the solver's own quadrature. One point serves for the short elements at gaps; on the
// long ones it would spoil the closed path's sum of I dl, which must vanish.
constexpr double one_point_from = 20.0;
constexpr double two_points_from = 4.0;
constexpr double short_element = 0.25; // of the longest

double distance(const Point& a, const Point& b) {
    const double dx = a[0] - b[0], dy = a[1] - b[1], dz = a[2] - b[2];
    return std::sqrt(dx * dx + dy * dy + dz * dz);
}

/// Free-space field of one source, the constants in front left out.
struct FreeSum {
    std::array<Complex, 3> current{}, charge{}, magnetic{};

    void add(const detail::Source& s, const Point& at, double k) {
        const std::array<double, 3> d{at[0] - s.position_m[0], at[1] - s.position_m[1],
                                      at[2] - s.position_m[2]};
        const double r2 = d[0] * d[0] + d[1] * d[1] + d[2] * d[2];
        const double r = std::sqrt(r2);
        const Complex green = Complex(std::cos(k * r), -std::sin(k * r)) / r;
        const Complex gradient = green * Complex(1, k * r) / r2;
        const Complex charged = s.charge_current_A * gradient;
        const auto& m = s.moment_A_m;
        for (std::size_t i = 0; i < 3; ++i) {
            current[i] += m[i] * green;
            charge[i] += charged * d[i];
            const std::size_t b = (i + 1) % 3, c = (i + 2) % 3;
            magnetic[i] += gradient * (m[b] * d[c] - m[c] * d[b]);
        }
    }
    void add_to(Field& field, double k) const {
        const Complex of_current(0, -k * free_space_impedance_ohm / (4 * pi));
        const Complex of_charge(0, free_space_impedance_ohm / (4 * pi * k));
        for (std::size_t i = 0; i < 3; ++i) {
            field.electric_V_m[i] += of_current * current[i] + of_charge * charge[i];
            field.magnetic_A_m[i] += magnetic[i] / (4 * pi);
        }
    }
};

} // namespace

struct QuickField::Parts {
    Parts(loop::SolvedLoop&& solved, double reach, double top)
        : loop(std::move(solved)), middles(detail::sources_of(loop, 1)), pairs(detail::sources_of(loop, 2)),
          k(loop.solution.wavenumber_rad_m()), scale(1 / std::sqrt(loop.total.value())), reach_m(reach),
          top_m(top) {
        extent.lowest_m = 1e300;
        extent.highest_m = -1e300;
        for (const wire::Element& element : loop.solution.mesh().elements()) {
            short_m = std::max(short_m, short_element * element.length_m);
        }
        std::vector<detail::Source> all = pairs;
        all.insert(all.end(), middles.begin(), middles.end());
        for (const detail::Source& s : all) {
            extent.horizontal_m = std::max(extent.horizontal_m, std::hypot(s.position_m[0], s.position_m[1]));
            extent.lowest_m = std::min(extent.lowest_m, s.position_m[2]);
            extent.highest_m = std::max(extent.highest_m, s.position_m[2]);
        }
        if (loop.underground && !loop.underground->perfect) {
            table.emplace(k, loop.permittivity(), reach_m + extent.horizontal_m, extent.lowest_m,
                          extent.highest_m + top_m);
        }
    }

    [[nodiscard]] Field free_part(const Point& at) const {
        const auto& elements = loop.solution.mesh().elements();
        FreeSum sum;
        for (std::size_t e = 0; e < elements.size(); ++e) {
            const double lengths = distance(at, middles[e].position_m) / elements[e].length_m;
            if (lengths > one_point_from && elements[e].length_m <= short_m) {
                sum.add(middles[e], at, k);
            } else if (lengths > two_points_from) {
                sum.add(pairs[2 * e], at, k);
                sum.add(pairs[2 * e + 1], at, k);
            } else {
                return detail::free_space_part(loop, at);
            }
        }
        Field field;
        sum.add_to(field, k);
        return field;
    }

    void add_image(Field& field, const detail::Source& s, const Point& at) const {
        const double dx = at[0] - s.position_m[0], dy = at[1] - s.position_m[1];
        const double rho = std::sqrt(dx * dx + dy * dy);
        const double z_sum = at[2] + s.position_m[2];
        detail::add_ground_part(field, s, at,
                                table ? table->at(rho, z_sum) : detail::image_kernels(k, rho, z_sum), k);
    }

    void add_ground(Field& field, const Point& at) const {
        const auto& elements = loop.solution.mesh().elements();
        for (std::size_t e = 0; e < elements.size(); ++e) {
            const Point& p = middles[e].position_m;
            const double lengths = distance(at, {p[0], p[1], -p[2]}) / elements[e].length_m;
            if (lengths > one_point_from && elements[e].length_m <= short_m) {
                add_image(field, middles[e], at);
            } else {
                add_image(field, pairs[2 * e], at);
                add_image(field, pairs[2 * e + 1], at);
            }
        }
    }

    loop::SolvedLoop loop;
    std::vector<detail::Source> middles, pairs;
    double k, scale, reach_m, top_m, short_m = 0;
    Extent extent;
    std::optional<ground::FieldTable> table;
};

QuickField::QuickField(loop::SolvedLoop loop, units::Length reach, units::Length top) {
    if (!(reach.value() > 0 && reach.value() <= 300) || !(top.value() > 0 && top.value() <= 300)) {
        throw base::ProgramError("QuickField: reach and top must be above 0 and up to 300 m");
    }
    parts_ = std::make_unique<Parts>(std::move(loop), reach.value(), top.value());
}
QuickField::~QuickField() = default;
QuickField::QuickField(QuickField&&) noexcept = default;
QuickField& QuickField::operator=(QuickField&&) noexcept = default;

Field QuickField::at_1W(const Point& point_m) const {
    const Parts& parts = *parts_;
    if (!(std::hypot(point_m[0], point_m[1]) <= parts.reach_m * (1 + 1e-9)) ||
        (!free_space() && !(point_m[2] >= 0 && point_m[2] <= parts.top_m * (1 + 1e-9)))) {
        throw base::ProgramError("QuickField: a point outside what is covered");
    }
    Field field = parts.free_part(point_m);
    if (parts.loop.underground) {
        parts.add_ground(field, point_m);
    }
    for (std::size_t i = 0; i < 3; ++i) {
        field.electric_V_m[i] *= parts.scale;
        field.magnetic_A_m[i] *= parts.scale;
    }
    return field;
}

double QuickField::clearance_m(const Point& point_m) const {
    const auto& elements = parts_->loop.solution.mesh().elements();
    double least = 1e300;
    for (std::size_t e = 0; e < elements.size(); ++e) {
        // An element as a straight piece through its middle, along its current.
        const Point& middle = parts_->middles[e].position_m;
        const Point& a = parts_->pairs[2 * e].position_m;
        const Point& b = parts_->pairs[2 * e + 1].position_m;
        const double span = distance(a, b);
        double along = 0;
        for (std::size_t i = 0; i < 3; ++i) {
            along += (point_m[i] - middle[i]) * (b[i] - a[i]) / span;
        }
        along = std::clamp(along, -0.5 * elements[e].length_m, 0.5 * elements[e].length_m);
        Point nearest{};
        for (std::size_t i = 0; i < 3; ++i) {
            nearest[i] = middle[i] + along * (b[i] - a[i]) / span;
        }
        least = std::min(least, distance(point_m, nearest) - elements[e].radius_m);
    }
    return least;
}

const loop::SolvedLoop& QuickField::loop() const noexcept {
    return parts_->loop;
}
bool QuickField::free_space() const noexcept {
    return !parts_->loop.underground.has_value();
}
QuickField::Extent QuickField::extent() const noexcept {
    return parts_->extent;
}

} // namespace loopwright::field
