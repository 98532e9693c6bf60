#include "loop/detail/ring_series.hpp"

#include "loop/detail/array_kernels.hpp"
#include "loop/detail/delay_series.hpp"
#include "loop/detail/ring_modes.hpp"
#include "units/constants.hpp"

#include <algorithm>
#include <cmath>

namespace loopwright::loop::detail {
namespace {

using units::constants::electric_constant_F_m;
using units::constants::magnetic_constant_H_m;
using units::constants::pi;
using units::constants::speed_of_light_m_s;

// A current by the cosines of its Fourier series: at the orders of the modes, and of order 0.
struct Wave {
    double level = 0;
    std::array<double, RingModes::capacity> of;
};

// u and v - u, (L.9) and (L.10).
struct Waves {
    std::array<Wave, currents - 1> wave;
    double charge = 0; ///< self-capacitance / (4 pi eps0 R)
};

// Mean 0 over the gap and 1 opposite it.
double normalize(Wave& wave, const RingModes& modes) noexcept {
    double over_gap = 0;
    double opposite = 0;
    for (std::size_t i = 0; i < modes.size; ++i) {
        over_gap -= modes.weight[i] * wave.of[i] * modes.spread[i];
    }
    for (std::size_t i = 0; i < RingModes::singly; ++i) {
        opposite += modes.alternating[i] * wave.of[i];
    }
    const double scale = 1 / (over_gap + opposite);
    wave.level = over_gap * scale;
    for (std::size_t i = 0; i < modes.size; ++i) {
        wave.of[i] *= scale;
    }
    return over_gap;
}

// The potential of (L.7) has the sines spread/(pi n); each charge is that over K_n, each current the charge
// over n, (L.27). The flux of u takes off its share, (L.28).
Waves waves_of(const RingModes& modes) noexcept {
    Waves waves;
    Wave& u = waves.wave[0];
    for (std::size_t i = 0; i < modes.size; ++i) {
        u.of[i] = -modes.spread[i] / (pi * modes.order[i] * modes.order[i] * modes.scalar[i]);
    }
    waves.charge = normalize(u, modes);
    Wave& v = waves.wave[1];
    const double share = 0.5 / (modes.vector_0 * u.level);
    for (std::size_t i = 0; i < modes.size; ++i) {
        const double sine = modes.spread[i] - share * modes.vector[i] * u.of[i];
        v.of[i] = -sine / (pi * modes.order[i] * modes.order[i] * modes.scalar[i]);
    }
    normalize(v, modes);
    v.level -= u.level;
    for (std::size_t i = 0; i < modes.size; ++i) {
        v.of[i] -= u.of[i];
    }
    return waves;
}

// Means, inductances and elastances of the currents, (L.29).
void put_static(LoopSeries& series, const CircularTurn& turn, const RingModes& modes, const Waves& waves,
                double inductance_H) noexcept {
    const double henries = 0.5 * magnetic_constant_H_m * turn.radius_m * speed_of_light_m_s;
    const double elastance = 1 / (4 * electric_constant_F_m * turn.radius_m);
    series.mean[entry(0, 0)] = 1;
    series.reactance[entry(0, 0)].c[0] += inductance_H * speed_of_light_m_s;
    for (std::size_t i = 1; i < currents; ++i) {
        const Wave& a = waves.wave[i - 1];
        series.mean[entry(0, i)] = a.level;
        // Of the uniform current on u what is known better.
        series.reactance[entry(0, i)].c[0] +=
            a.level * (i == 1 ? inductance_H * speed_of_light_m_s : henries * modes.vector_0);
        for (std::size_t k = i; k < currents; ++k) {
            const Wave& b = waves.wave[k - 1];
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
DelayMoments moments_of_circle(const CircularTurn& turn, const Waves& waves) noexcept {
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
            const Wave& a = waves.wave[i - 1];
            current[entry(0, i)] = a.level * current[entry(0, 0)];
            for (std::size_t k = i; k < currents; ++k) {
                const Wave& b = waves.wave[k - 1];
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

// Places round the circle for what it sends: with the fifth power of n.r only the first six orders of a
// current count, and sums over sixteen places give their integrals exactly.
constexpr std::size_t ring_places = 16, orders_sent = 6;

struct PlaceCosines {
    std::array<double, ring_places> sine{}, cosine{};
    PlaceCosines() {
        for (std::size_t i = 0; i < ring_places; ++i) {
            const double angle = 2 * pi * double(i) / double(ring_places);
            sine[i] = std::sin(angle);
            cosine[i] = std::cos(angle);
        }
    }
};

Nodes nodes_of_circle(const CircularTurn& turn, const Waves& waves) {
    static const PlaceCosines at;
    Nodes nodes{Eigen::ArrayXXd::Zero(Eigen::Index(ring_places), Eigen::Index(node_columns)), false};
    const double length_m = 2 * pi * turn.radius_m / double(ring_places);
    for (std::size_t i = 0; i < ring_places; ++i) {
        const auto row = static_cast<Eigen::Index>(i);
        nodes.columns(row, 0) = turn.radius_m * at.sine[i];
        nodes.columns(row, 2) = turn.radius_m * at.cosine[i];
        nodes.columns(row, 3) = length_m * at.cosine[i];
        nodes.columns(row, 5) = -length_m * at.sine[i];
        for (std::size_t k = 0; k < waves.wave.size(); ++k) {
            double sum = waves.wave[k].level;
            for (std::size_t n = 1; n <= orders_sent; ++n) {
                sum += waves.wave[k].of[n - 1] * at.cosine[n * i % ring_places];
            }
            nodes.columns(row, static_cast<Eigen::Index>(shapes_of_node + k)) = sum;
        }
    }
    return nodes;
}

} // namespace

PreparedLoop prepare_circle(const CircularTurn& turn, double inductance_H,
                            const std::vector<geometry::Vector3>& directions) {
    const RingModes modes = ring_modes(turn.wire_radius_m / turn.radius_m, 0.5 * turn.gap_m / turn.radius_m);
    const Waves waves = waves_of(modes);
    PreparedLoop loop;
    LoopSeries& series = loop.series;
    series.length_m = 2 * pi * turn.radius_m;
    series.inductance_H = inductance_H;
    series.self_capacitance_F = 4 * pi * electric_constant_F_m * turn.radius_m * waves.charge;
    add_delays(moments_of_circle(turn, waves), series);
    put_static(series, turn, modes, waves, inductance_H);
    const Nodes nodes = nodes_of_circle(turn, waves);
    loop.directions.reserve(directions.size());
    for (const geometry::Vector3& direction : directions) {
        loop.directions.emplace_back(direction, nodes);
    }
    return loop;
}

} // namespace loopwright::loop::detail
