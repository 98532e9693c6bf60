#pragma once
// Proximity between parallel turns: the added loss from the current crowding that neighbours cause.
#include <vector>

namespace loopwright::conductor {

/// N equal parallel round wires side by side in one line (a stack or a flat spiral seen in cross-section),
/// equal currents in the same direction. Prepared once; immutable. Method: two-dimensional harmonic
/// (multipole) expansion, (C22) to (C28). Source of the problem: Smith, "Radiation efficiency of electrically
/// small multiturn loop antennas", IEEE Trans. Antennas Propag. 20 (1972) 656. Straight wires: the curvature
/// of the loop is left out (in an independent case of 4 turns of 10 mm wire at 20 mm on a radius of 0.4 m it
/// adds 4 % to the added part). A tube counts as solid while its wall is three skin depths or more; for
/// thinner walls and for strips the added loss is not established.
class ProximityLoss {
public:
    /// turns 1 to 64; spacing_over_diameter (centre to centre) from 1.02 up. Throws base::ProgramError
    /// outside. Cost: 2 turns at 2 diameters about 2 us; 12 turns at 1.05 diameters some milliseconds.
    ProximityLoss(int turns, double spacing_over_diameter);

    /// Thin-skin limit of Rp/R0 [1], the mean over the turns: total resistance = N R_single (1 + Rp/R0).
    /// Relative accuracy 1e-6 or better.
    [[nodiscard]] double thin_skin() const { return added_; }
    /// In that limit, of each turn in order along the line: its resistance over that of a single wire, >= 1.
    [[nodiscard]] const std::vector<double>& turn_factors() const { return factors_; }

    /// Rp/R0 at any ratio of wire radius to skin depth, R0 the alternating-current resistance of the single
    /// wire at that frequency, (C28): exact in both limits and to first order in skin depth over radius, a
    /// fitted bridge between. Within 3 % of thin_skin() of the exact solution for 2 to 12 turns and spacings
    /// from 1.05 (2 % from 1.5); radius over skin depth from 5 up at spacings from 1.5: 1 %. Cost: some 100
    /// ns.
    [[nodiscard]] double added(double radius_over_skin_depth) const;

private:
    double added_ = 0;
    double thick_limit_ = 1; ///< the bridge g at low frequency
    double bend_ = 0;        ///< radius over skin depth where the bridge bends; 0: no bridge
    double sharpness_ = 3;
    std::vector<double> factors_;
};

/// The exact two-dimensional solution that ProximityLoss::added approximates, solved anew at each call,
/// (C27): for checks and for figures where the cost (microseconds to tens of milliseconds) does not matter.
/// radius_over_skin_depth from 1e-3 to 1e5. Throws base::ProgramError outside the ranges.
[[nodiscard]] double proximity_added_exact(int turns, double spacing_over_diameter,
                                           double radius_over_skin_depth);

} // namespace loopwright::conductor
