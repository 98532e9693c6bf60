#pragma once
// Where the rod of a tapped match runs, for those who draw it.
#include "design/design.hpp"
#include "geometry/vector3.hpp"

#include <vector>

namespace loopwright::coupling {

/// Corners of the rod with both its links [m], in the loop's own coordinates (geometry::wire_path without a
/// placement): from the conductor opposite the capacitor, along the rod, to the conductor where it is joined.
/// The line is fed in the first link. Throws base::InputError for more than one turn.
[[nodiscard]] std::vector<geometry::Vector3> tap_rod(const design::LoopShape& loop,
                                                     const design::Coupling& coupling);

} // namespace loopwright::coupling
