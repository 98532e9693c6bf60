#pragma once
// What the numbers of a design must be read with, whatever the model.
#include "base/notice.hpp"
#include "capacitor/capacitor.hpp"
#include "conductor/conductor.hpp"
#include "design/design.hpp"

namespace loopwright::loop {

/// Codes: capacitor_loss_assumed, braid_factor_interval, stranded_factor_interval, strip_approximation,
/// metal_conductivity_interval, proximity_close_turns, thick_conductor, joints_spread,
/// made_capacitor_computed.
/// proximity_factor and curvature_factor: resistance over that of the straight conductor alone, 1 or more.
[[nodiscard]] base::Notices design_notices(const design::Design& design,
                                           const conductor::Conductor& conductor,
                                           const capacitor::Capacitor& capacitor, double proximity_factor,
                                           double curvature_factor);

} // namespace loopwright::loop
