#pragma once
// Capacitances by the moment method, point matching with even charge on each piece: an independent check of
// closed formulas. Two bodies, one against the other.
#include <vector>

namespace loopwright::test {

/// Plates of a stack, cross-section, [F per metre of width over eps0]. Lengths in any one unit. pieces: of
/// each face of a plate.
double stack_2d(double length, double overlap, double spacing, double thickness, int plates, int pieces);

/// Two thin rectangles, one shifted by (length - overlap) along its length [F], sizes in metres.
double plates_3d_F(double width_m, double length_m, double overlap_m, double spacing_m, int pieces);

/// Two thin coaxial tubes of one length, overlapping [F], sizes in metres.
double tubes_F(double inner_radius_m, double outer_radius_m, double length_m, double overlap_m, int pieces);

} // namespace loopwright::test
