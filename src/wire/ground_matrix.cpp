#include "wire/ground_matrix.hpp"

#include "base/error.hpp"
#include "ground/half_space_table.hpp"
#include "units/constants.hpp"
#include "units/text.hpp"

#include <algorithm>
#include <cmath>
#include <string>

namespace loopwright::wire {

namespace {

using units::constants::pi;
constexpr double table_tolerance = 1e-6;
constexpr double panel_start_Hz = 1e4;
constexpr double panel_factor = 2.0;

double chebyshev_node(int i, int nodes) {
    return -std::cos(pi * (i + 0.5) / nodes);
}

double wavenumber(double frequency_Hz) {
    return 2 * pi * frequency_Hz / units::constants::speed_of_light_m_s;
}

/// The kernels change within a distance of the height; nearer than this the soil's surface is not even
/// anyway.
constexpr double least_clearance_m = 0.05;

void refuse_near(double lowest_m) {
    if (!(lowest_m >= least_clearance_m)) {
        throw base::InputError("site.lowest_point", units::canonical(units::metres(lowest_m)),
                               "5 cm or more between the ground and the centre line of the conductor");
    }
}

} // namespace

GroundMatrices::GroundMatrices(const Solver& solver, const Underground& underground,
                               const geometry::Frame& stand)
    : pairs_(solver.mesh(), stand), underground_(underground) {
    refuse_near(0.5 * pairs_.least_z_sum_m());
}

FieldMatrix GroundMatrices::direct(units::Frequency frequency) const {
    const double k = wavenumber(frequency.value());
    if (underground_.perfect) {
        return pairs_.matrix(k, PerfectGround(k));
    }
    const ground::HalfSpaceTable table(k, ground::complex_permittivity(underground_.soil, frequency),
                                       1.001 * pairs_.greatest_rho_m(), 0.999 * pairs_.least_z_sum_m(),
                                       1.001 * pairs_.greatest_z_sum_m(), table_tolerance);
    return pairs_.matrix(k, TabulatedGround(table));
}

void GroundMatrices::fill(Panel& panel, int number) const {
    const double lowest_Hz = panel_start_Hz * std::pow(panel_factor, number);
    // The waves to the image and back turn by k Z over the panel, which the nodes must follow.
    const double turn =
        wavenumber((panel_factor - 1) * lowest_Hz) * (pairs_.greatest_z_sum_m() + pairs_.greatest_rho_m());
    const int nodes = 7 + static_cast<int>(std::ceil(0.8 * turn));
    for (int i = 0; i < nodes; ++i) {
        const double share = 0.5 * (1 + chebyshev_node(i, nodes));
        panel.at_node.push_back(direct(units::hertz(lowest_Hz * std::pow(panel_factor, share))));
    }
}

FieldMatrix GroundMatrices::at(units::Frequency frequency) const {
    const double place = std::log(frequency.value() / panel_start_Hz) / std::log(panel_factor);
    const auto number = static_cast<int>(std::floor(place));
    if (number < 0 || number >= panels) {
        return direct(frequency);
    }
    Panel& panel = panels_[static_cast<std::size_t>(number)];
    std::call_once(panel.filled, [&] { fill(panel, number); });
    // Barycentric weights of Chebyshev nodes of the first kind (Berrut and Trefethen, SIAM Rev. 46 (2004)
    // 501).
    const double x = 2 * (place - number) - 1;
    const auto nodes = static_cast<int>(panel.at_node.size());
    std::vector<double> weight(panel.at_node.size());
    double total = 0;
    for (int i = 0; i < nodes; ++i) {
        const auto n = static_cast<std::size_t>(i);
        const double away = x - chebyshev_node(i, nodes);
        if (std::abs(away) < 1e-14) {
            return panel.at_node[n];
        }
        weight[n] = (i % 2 == 0 ? 1.0 : -1.0) * std::sin(pi * (i + 0.5) / nodes) / away;
        total += weight[n];
    }
    FieldMatrix field{panel.at_node[0].unknowns, std::vector<double>(panel.at_node[0].re.size(), 0.0),
                      std::vector<double>(panel.at_node[0].im.size(), 0.0)};
    for (std::size_t i = 0; i < panel.at_node.size(); ++i) {
        const double w = weight[i] / total;
        const FieldMatrix& node = panel.at_node[i];
        for (std::size_t e = 0; e < field.re.size(); ++e) {
            field.re[e] += w * node.re[e];
            field.im[e] += w * node.im[e];
        }
    }
    return field;
}

} // namespace loopwright::wire
