#pragma once
// Helpers of the search for distances: the ladder of shells, the heights on a person, the loop's moments.
#include "exposure/surroundings.hpp"

#include <array>
#include <vector>

namespace loopwright::exposure::detail {

/// Shell 0 is the axis, then from 0.1 m on each 15 % farther.
inline constexpr int last_shell = 50; ///< 94 m
[[nodiscard]] double shell_distance_m(int index);

/// Clenshaw-Curtis nodes on 0 to 1, ends included, ascending, and their weights (sum 1). count: odd, from 3.
struct HeightRule {
    std::vector<double> shares, weights;
};
[[nodiscard]] HeightRule clenshaw_curtis(int count);

/// Electric and magnetic dipole moment about the loop's middle for 1 W accepted, rms, magnitudes.
struct Moments {
    double electric_C_m = 0, magnetic_A_m2 = 0;
};
[[nodiscard]] Moments moments_of(const loop::SolvedLoop& loop);

/// Twice the fields of the two moments at a distance, three times for the rest: from where the search
/// starts. Not a bound in the strict sense: the search checks that nothing is exceeded there.
[[nodiscard]] double rough_share(const Moments& moments, double k_rad_m, double frequency_Hz,
                                 double distance_m, const Threshold& threshold);

/// Where the capacitor sits [m].
[[nodiscard]] std::array<double, 3> capacitor_place(const loop::SolvedLoop& loop);

} // namespace loopwright::exposure::detail
