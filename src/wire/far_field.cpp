#include "wire/far_field.hpp"

#include "units/constants.hpp"
#include "wire/detail/pair_rule.hpp"

#include <cmath>

namespace loopwright::wire {

namespace {

using units::constants::free_space_impedance_ohm;
using units::constants::pi;

} // namespace

ground::FarField far_field(const std::vector<ground::CurrentElement>& elements, double k, double zenith,
                           double azimuth) {
    const double st = std::sin(zenith), ct = std::cos(zenith);
    const double sp = std::sin(azimuth), cp = std::cos(azimuth);
    ground::FarField sum{};
    for (const ground::CurrentElement& element : elements) {
        const auto& [x, y, z] = element.position_m;
        const auto& [mx, my, mz] = element.moment_A_m;
        const double phase = k * (st * cp * x + st * sp * y + ct * z);
        const std::complex<double> turn(std::cos(phase), std::sin(phase));
        sum.e_theta_V += turn * (ct * cp * mx + ct * sp * my - st * mz);
        sum.e_phi_V += turn * (cp * my - sp * mx);
    }
    const std::complex<double> scale(0, -k * free_space_impedance_ohm / (4 * pi));
    return {scale * sum.e_theta_V, scale * sum.e_phi_V};
}

double radiated_power_W(const std::vector<ground::CurrentElement>& elements, double k, int zenith_points,
                        int azimuth_points) {
    // Gauss points on panels of eight over cos(zenith) = -1..1.
    const int panels = std::max(1, (zenith_points + 7) / 8);
    const detail::GaussRule& rule = detail::gauss_rule(8);
    double power = 0;
    for (int panel = 0; panel < panels; ++panel) {
        for (std::size_t i = 0; i < rule.x.size(); ++i) {
            const double cosine = -1 + 2 * (panel + rule.x[i]) / panels;
            const double weight = 2 * rule.weight[i] / panels * 2 * pi / azimuth_points;
            for (int a = 0; a < azimuth_points; ++a) {
                const auto field = far_field(elements, k, std::acos(cosine), 2 * pi * a / azimuth_points);
                power += weight * (std::norm(field.e_theta_V) + std::norm(field.e_phi_V));
            }
        }
    }
    return power / free_space_impedance_ohm;
}

} // namespace loopwright::wire
