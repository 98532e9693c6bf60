#pragma once
// Proximity between parallel turns: the added loss from the current crowding that neighbours cause.
#include <vector>

namespace loopwright::conductor {

/// N equal parallel round wires side by side in one line, equal currents in the same direction, thin skin.
/// Prepared once; immutable.
/// Method: two-dimensional harmonic (multipole) expansion, (C.20)-(C.24); Smith, "Radiation efficiency of
/// electrically small multiturn loop antennas", IEEE Trans. AP 20 (1972) 656, states the problem. Straight
/// wires: the curvature of a loop is left out (+4 % of the added part for 4 turns of 10 mm at 20 mm on a
/// radius of 0.4 m).
class ProximityLoss {
public:
    /// turns 1 to 64; spacing_over_diameter (centre to centre) from 1.02 up. Relative accuracy of Rp/R0:
    /// 1e-6. Throws base::ProgramError outside.
    ProximityLoss(int turns, double spacing_over_diameter);

    /// Rp/R0 [1], the mean over the turns: total resistance = N R_single (1 + Rp/R0).
    [[nodiscard]] double thin_skin() const { return added_; }
    /// Of each turn, in order along the line: its resistance over that of a single wire, >= 1.
    [[nodiscard]] const std::vector<double>& turn_factors() const { return factors_; }

private:
    double added_ = 0;
    std::vector<double> factors_;
};

} // namespace loopwright::conductor
