#pragma once
// A toroid transformer on the loop: the loop's conductor runs once through a core that carries the feed's
// turns.
#include "base/notice.hpp"
#include "units/quantities.hpp"

namespace loopwright::coupling {

struct ToroidTransformer {
    int primary_turns = 5;                                            ///< of the feed, around the core
    units::Inductance inductance_per_turn_squared{units::henries(0)}; ///< A_L of the core at the frequency
    double core_q = 50; ///< of the magnetising inductance: w L / R of the core's loss, at the frequency
    double leakage_share = 0.02; ///< leakage inductance over the magnetising inductance, seen from the feed
};

struct TransformerInput {
    units::Impedance impedance{}; ///< what the line sees
    double core_loss_share = 0;   ///< of the accepted power that heats the core
    units::Resistance
        reactance_into_loop{}; ///< series reactance that the magnetising branch puts into the loop
    base::Notices notices;
};

/// Circuit model: leakage in series with the magnetising branch (w N^2 A_L with its loss in parallel) shunted
/// by N^2 Z_loop, Z_loop the series impedance of the loop at the point where the core sits. N from matching:
/// N^2 R = Z0. Source: equivalent circuit of a transformer (E. C. Snelling, Soft Ferrites, 1969, ch. 7; from
/// memory). Limits (notices): core not saturated and not hot, stray capacitance of the winding left out
/// (holds well below the winding's own resonance), magnetising reactance at least 3 times the line's
/// impedance (`transformer_low_inductance`). Throws base::InputError for turns below 1, A_L, Q or leakage out
/// of range.
[[nodiscard]] TransformerInput transformer_input(const ToroidTransformer& transformer,
                                                 units::Impedance loop_series, units::Frequency frequency,
                                                 units::Resistance line);

} // namespace loopwright::coupling
