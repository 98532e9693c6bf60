#include "coupling/detail/series_feed.hpp"
#include "units/constants.hpp"
#include "wire/port_matrix.hpp"

namespace loopwright::coupling::detail {

namespace {

ToroidTransformer transformer_of(const design::Coupling& coupling) {
    return {coupling.turns, coupling.turn_inductance.value, coupling.core_q, coupling.leakage_share};
}

struct Branches {
    Complex leakage, magnetising; ///< seen from the line's winding
};

Branches branches_of(const ToroidTransformer& t, units::Frequency frequency) {
    const double n = t.primary_turns;
    const double x =
        2 * units::constants::pi * frequency.value() * n * n * t.inductance_per_turn_squared.value();
    const Complex j{0, 1};
    return {j * (t.leakage_share * x), j * x * (t.core_q / (t.core_q + j))}; // jX with Q X in parallel
}

} // namespace

TransformerFeed::TransformerFeed(const design::Coupling& coupling, const loop::FullWave& alone,
                                 units::Resistance line)
    : SeriesFeed(alone), transformer_(transformer_of(coupling)), line_(line) {}

SeriesCircuit TransformerFeed::circuit(units::Frequency frequency, const loop::SolvedLoop& /*loop*/) const {
    const Branches b = branches_of(transformer_, frequency);
    const double n = transformer_.primary_turns;
    return {b.leakage + b.magnetising, b.magnetising / n, b.magnetising / (n * n)};
}

// What does not reach the loop's own series impedance.
double TransformerFeed::own_loss_share(units::Frequency frequency, const OpenTwoPort& port,
                                       Complex capacitor_ohm) const {
    const loop::SolvedLoop loop = solved(frequency);
    const SeriesCircuit c = circuit(frequency, loop);
    const Complex loop_ohm = wire::two_port(loop.solution.admittance()).input_impedance(1.0 / capacitor_ohm);
    const double ratio = std::norm(c.z12 / (loop_ohm + c.zs));
    const double into_loop = ratio * loop_ohm.real() / port.input(capacitor_ohm).real();
    return into_loop < 1 ? 1 - into_loop : 0;
}

base::Notices TransformerFeed::notices(units::Frequency frequency) const {
    return transformer_input(transformer_, units::Impedance::from_value({1.0, 0.0}), frequency, line_)
        .notices;
}

} // namespace loopwright::coupling::detail
