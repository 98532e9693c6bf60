#include "loop/detail/delay_series.hpp"

#include "units/constants.hpp"

namespace loopwright::loop::detail {
namespace {

using units::constants::free_space_impedance_ohm;
using units::constants::pi;

double sign_of(std::size_t half) {
    return half % 2 == 0 ? 1.0 : -1.0;
}

void add_to(EvenSeries& series, std::size_t power_of_x, double value) {
    if (power_of_x < EvenSeries::terms) {
        series.c[power_of_x] += value;
    }
}

} // namespace

// exp(-jkR)/R = sum (-jk)^m R^(m-1) / m!. Odd m: resistance; even m from 2: reactance. Factors: j omega mu0 /
// (4 pi) for the currents, 1 / (j omega 4 pi eps0) for the charges.
void add_delays(const DelayMoments& moments, LoopSeries& series) noexcept {
    double factor = free_space_impedance_ohm / (4 * pi);
    for (std::size_t m = 1; m <= DelayMoments::powers; ++m) {
        factor /= double(m);
        const double signed_factor = factor * sign_of(m / 2);
        for (std::size_t e = 0; e < series.mean.size(); ++e) {
            const double current =
                signed_factor * moments.current[(m - 1) * DelayMoments::current_products + e];
            // The uniform current has no charge.
            const double charge =
                e < currents
                    ? 0.0
                    : signed_factor * moments.charge[(m - 1) * DelayMoments::charge_products + e - currents];
            // Resistance: k k^m for the currents, k^m / k for the charges. Reactance: over k.
            auto& part = m % 2 == 1 ? series.radiation[e] : series.reactance[e];
            const std::size_t n = (m + 1) / 2;
            add_to(part, n, current);
            add_to(part, n - 1, -charge);
        }
    }
}

} // namespace loopwright::loop::detail
