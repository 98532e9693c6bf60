#include "loop/detail/ring_series.hpp"

#include "loop/detail/delay_series.hpp"
#include "loop/detail/ring_field.hpp"
#include "loop/detail/ring_waves.hpp"
#include "units/constants.hpp"

#include <algorithm>
#include <cmath>

namespace loopwright::loop::detail {
namespace {

using units::constants::electric_constant_F_m;
using units::constants::magnetic_constant_H_m;
using units::constants::pi;
using units::constants::speed_of_light_m_s;

// Means, inductances and elastances of the currents, (L.29).
void put_static(LoopSeries& series, const CircularTurn& turn, const RingModes& modes, const RingWaves& waves,
                double inductance_H) noexcept {
    const double henries = 0.5 * magnetic_constant_H_m * turn.radius_m * speed_of_light_m_s;
    const double elastance = 1 / (4 * electric_constant_F_m * turn.radius_m);
    series.mean[entry(0, 0)] = 1;
    series.reactance[entry(0, 0)].c[0] += inductance_H * speed_of_light_m_s;
    for (std::size_t i = 1; i < currents; ++i) {
        const RingWave& a = waves.wave[i - 1];
        series.mean[entry(0, i)] = a.level;
        // Of the uniform current on u what is known better.
        series.reactance[entry(0, i)].c[0] +=
            a.level * (i == 1 ? inductance_H * speed_of_light_m_s : henries * modes.vector_0);
        for (std::size_t k = i; k < currents; ++k) {
            const RingWave& b = waves.wave[k - 1];
            double mean = 0;
            double vector = 0;
            double scalar = 0;
            for (std::size_t n = 0; n < modes.size; ++n) {
                const double product = modes.weight[n] * a.of[n] * b.of[n];
                mean += product;
                vector += product * modes.vector[n];
                scalar += product * modes.scalar[n] * modes.order[n] * modes.order[n];
            }
            const double levels = a.level * b.level;
            series.mean[entry(i, k)] = levels + 0.5 * mean;
            series.reactance[entry(i, k)].c[0] += henries * (levels * modes.vector_0 + 0.5 * vector);
            series.elastance_1_F[entry(i, k)] = elastance * scalar;
        }
    }
}

// Double integrals of the powers of the distance: each order by itself here too.
DelayMoments moments_of_circle(const CircularTurn& turn, const RingWaves& waves) noexcept {
    const double ratio = turn.wire_radius_m / turn.radius_m;
    const auto powers = ring_powers(ratio * ratio);
    DelayMoments moments;
    double scale = pi;
    for (std::size_t p = 0; p < DelayMoments::powers; ++p) {
        const auto& scalar = powers[p];
        double* const current = moments.current.data() + p * DelayMoments::current_products;
        double* const charge = moments.charge.data() + p * DelayMoments::charge_products;
        const std::size_t orders = p % 2 == 0 ? 4 : 24;
        const double elements = scale * turn.radius_m * turn.radius_m;
        current[entry(0, 0)] = 2 * elements * scalar[1];
        for (std::size_t i = 1; i < currents; ++i) {
            const RingWave& a = waves.wave[i - 1];
            current[entry(0, i)] = a.level * current[entry(0, 0)];
            for (std::size_t k = i; k < currents; ++k) {
                const RingWave& b = waves.wave[k - 1];
                double vectors = 2 * a.level * b.level * scalar[1];
                double charges = 0;
                for (std::size_t n = 1; n <= orders; ++n) {
                    const double product = a.of[n - 1] * b.of[n - 1];
                    vectors += product * 0.5 * (scalar[n - 1] + scalar[n + 1]);
                    charges += product * double(n * n) * scalar[n];
                }
                current[entry(i, k)] = elements * vectors;
                charge[entry(i, k) - currents] = scale * charges;
            }
        }
        scale *= std::sqrt(2.0) * turn.radius_m;
    }
    return moments;
}

} // namespace

PreparedLoop prepare_circle(const CircularTurn& turn, double inductance_H,
                            const std::vector<geometry::Vector3>& directions) {
    const RingModes modes = ring_modes(turn.wire_radius_m / turn.radius_m, 0.5 * turn.gap_m / turn.radius_m);
    const RingWaves waves = ring_waves(modes);
    PreparedLoop loop;
    LoopSeries& series = loop.series;
    series.length_m = 2 * pi * turn.radius_m;
    series.inductance_H = inductance_H;
    series.self_capacitance_F = 4 * pi * electric_constant_F_m * turn.radius_m * waves.charge;
    add_delays(moments_of_circle(turn, waves), series);
    put_static(series, turn, modes, waves, inductance_H);
    loop.directions.reserve(directions.size());
    for (const geometry::Vector3& direction : directions) {
        loop.directions.push_back(ring_direction(direction, turn.radius_m, waves));
    }
    return loop;
}

} // namespace loopwright::loop::detail
