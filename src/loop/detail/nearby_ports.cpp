#include "loop/detail/nearby_ports.hpp"

#include "units/constants.hpp"

#include <cmath>

namespace loopwright::loop::detail {
namespace {

using units::constants::pi;

/// On -1 to 1, of the first kind: cos((2 i + 1) pi / (2 n)), the middle one 0.
const std::array<double, NearbyPorts::nodes>& chebyshev_nodes() {
    static const auto all = [] {
        std::array<double, NearbyPorts::nodes> x{};
        for (std::size_t i = 0; i < x.size(); ++i) {
            x[i] = 2 * i + 1 == x.size() ? 0.0
                                         : std::cos((2 * static_cast<double>(i) + 1) * pi / (2.0 * x.size()));
        }
        return x;
    }();
    return all;
}

/// Of the barycentric formula: (-1)^i sin((2 i + 1) pi / (2 n)).
const std::array<double, NearbyPorts::nodes>& chebyshev_weights() {
    static const auto all = [] {
        std::array<double, NearbyPorts::nodes> w{};
        for (std::size_t i = 0; i < w.size(); ++i) {
            w[i] = (i % 2 == 0 ? 1 : -1) * std::sin((2 * static_cast<double>(i) + 1) * pi / (2.0 * w.size()));
        }
        return w;
    }();
    return all;
}

wire::TwoPort times(const wire::TwoPort& port, double factor) {
    return {port.y11 * factor, port.y12 * factor, port.y22 * factor};
}

} // namespace

std::array<double, NearbyPorts::nodes> NearbyPorts::nodes_Hz(double centre_Hz) {
    std::array<double, nodes> all{};
    for (std::size_t i = 0; i < nodes; ++i) {
        all[i] = centre_Hz * (1 + reach * chebyshev_nodes()[i]);
    }
    return all;
}

NearbyPorts::NearbyPorts(double centre_Hz, const std::function<wire::TwoPort(double)>& solved)
    : centre_Hz_(centre_Hz) {
    const auto at = nodes_Hz(centre_Hz);
    for (std::size_t i = 0; i < nodes; ++i) {
        times_frequency_[i] = times(solved(at[i]), at[i] / centre_Hz);
    }
}

bool NearbyPorts::reaches(double frequency_Hz) const {
    return std::abs(frequency_Hz / centre_Hz_ - 1) <= reach;
}

wire::TwoPort NearbyPorts::at(double frequency_Hz) const {
    const double x = (frequency_Hz / centre_Hz_ - 1) / reach;
    wire::TwoPort sum{};
    double weights = 0;
    for (std::size_t i = 0; i < nodes; ++i) {
        const double away = x - chebyshev_nodes()[i];
        if (std::abs(away) < 1e-14) {
            return times(times_frequency_[i], centre_Hz_ / frequency_Hz);
        }
        const double weight = chebyshev_weights()[i] / away;
        weights += weight;
        sum.y11 += weight * times_frequency_[i].y11;
        sum.y12 += weight * times_frequency_[i].y12;
        sum.y22 += weight * times_frequency_[i].y22;
    }
    return times(sum, centre_Hz_ / frequency_Hz / weights);
}

} // namespace loopwright::loop::detail
