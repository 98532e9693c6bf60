#pragma once
// Inductance between straight pieces of round wire, current even along them: what the tapped match is summed
// from.
#include "geometry/vector3.hpp"
#include "units/quantities.hpp"

#include <vector>

namespace loopwright::coupling {

/// A straight piece from `from` to `to` [m]. Pieces of one conductor carry the same number: their distance is
/// then taken as no less than radius_m, the geometric mean distance of a thin tube from itself.
struct WirePiece {
    geometry::Vector3 from, to;
    double radius_m = 0;
    int conductor = 0;
};

/// Neumann's integral mu0/(4 pi) times the double integral of t1.t2/R over both pieces [H], positive for
/// currents in the same direction; of a piece with itself its partial self-inductance, current on the
/// surface. Parallel pieces in closed form (F. W. Grover, Inductance Calculations, 1946, ch. 6, from memory;
/// A. E. Ruehli, IBM J. Res. Develop. 16 (1972) 470, from memory), others by quadrature, within 1e-4 where
/// they are longer than a third of their distance. Range: radius below the length of the piece, quasi-static.
[[nodiscard]] units::Inductance partial_inductance(const WirePiece& one, const WirePiece& other);

/// Sum over all pairs of two lists: of a closed circuit with itself its self-inductance.
[[nodiscard]] units::Inductance partial_inductance(const std::vector<WirePiece>& one,
                                                   const std::vector<WirePiece>& other);

} // namespace loopwright::coupling
