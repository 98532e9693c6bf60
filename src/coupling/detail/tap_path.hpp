#pragma once
// Where the rod of a tapped match lies.
#include "coupling/partial_inductance.hpp"
#include "design/design.hpp"

#include <vector>

namespace loopwright::coupling::detail {

struct TapPath {
    std::vector<WirePiece> circuit; ///< closed: near link, rod, far link, back along the conductor
    double rod_length_m = 0;        ///< with both links
};

inline constexpr int loop_conductor = 0, tap_rod = 1, tap_links = 2;

/// The rod is the loop's outline made smaller about its centre, so that every side stays parallel, its axis
/// `tap_spacing` inside; from opposite the capacitor onward along the conductor. One turn.
[[nodiscard]] TapPath tap_path(const design::LoopShape& loop, const design::Coupling& coupling,
                               double conductor_radius_m);

/// The loop's whole conductor in straight pieces, from the capacitor round to it.
[[nodiscard]] std::vector<WirePiece> conductor_pieces(const design::LoopShape& loop,
                                                      double conductor_radius_m);

} // namespace loopwright::coupling::detail
