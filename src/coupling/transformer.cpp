#include "coupling/transformer.hpp"

#include "base/error.hpp"
#include "units/constants.hpp"

#include <cmath>
#include <string>

namespace loopwright::coupling {

namespace {

void require(bool holds, const std::string& field, double value, const std::string& accepted) {
    if (!holds) {
        throw base::InputError("coupling." + field, std::to_string(value), accepted);
    }
}

} // namespace

TransformerInput transformer_input(const ToroidTransformer& t, units::Impedance loop_series,
                                   units::Frequency frequency, units::Resistance line) {
    require(t.primary_turns >= 1 && t.primary_turns <= 100, "turns", t.primary_turns, "1 to 100");
    require(t.inductance_per_turn_squared.value() > 0, "turn_inductance",
            t.inductance_per_turn_squared.value(), "an inductance above 0");
    require(t.core_q > 0, "core_q", t.core_q, "a number above 0");
    require(t.leakage_share >= 0 && t.leakage_share < 0.5, "leakage_share", t.leakage_share,
            "0 to below 0.5");

    const double n = t.primary_turns;
    const double omega = 2.0 * units::constants::pi * frequency.value();
    const double x = omega * n * n * t.inductance_per_turn_squared.value();
    const std::complex<double> j{0.0, 1.0};
    const std::complex<double> magnetising = j * x * (t.core_q / (t.core_q + j)); // jX in parallel with Q X
    const std::complex<double> reflected = n * n * loop_series.value();
    const std::complex<double> parallel = magnetising * reflected / (magnetising + reflected);

    TransformerInput out;
    out.impedance = units::Impedance::from_value(j * (t.leakage_share * x) + parallel);
    const double core = (1.0 / magnetising).real();
    const double load = (1.0 / reflected).real();
    out.core_loss_share = core + load > 0 ? core / (core + load) : 0;
    // Seen from the loop with the line connected: (magnetising parallel (Z0 + leakage))/N^2.
    const std::complex<double> source = line.value() + j * (t.leakage_share * x);
    out.reactance_into_loop = units::ohms((magnetising * source / (magnetising + source)).imag() / (n * n));
    out.notices.add(
        {"transformer_circuit_model", base::Severity::information,
         "The transformer is a circuit model: winding capacitance, saturation and heating of the core are "
         "not in it.",
         0});
    if (x < 3.0 * line.value()) {
        out.notices.add(
            {"transformer_low_inductance", base::Severity::caution,
             "The winding's reactance is below three times the line's impedance: more turns or a core of "
             "higher permeability.",
             3.0 * line.value() / x});
    }
    return out;
}

} // namespace loopwright::coupling
