#pragma once
// The design's loop in the terms of geometry/.
#include "design/design.hpp"
#include "geometry/winding.hpp"

namespace loopwright::design {

/// The same loop for geometry/; no check.
[[nodiscard]] geometry::Winding as_winding(const LoopShape& shape);

} // namespace loopwright::design
