#pragma once
// What an edit of power, rating, capacitor range or station does not change is not solved again.
#include "loop/loop_model.hpp"

#include <memory>

namespace loopwright::loop::detail {

/// The full-wave model of a design whose points are kept (a few designs, some thousand points each) by all
/// that they depend on: loop, conductor, joints, loss and stray of the capacitor, place and ground, mesh.
/// workload: as FullWave's; the two keep apart. Points are solved for 1 W and scaled, whether they were kept
/// or not, so that an answer never depends on what was asked before. Throws what FullWave throws.
[[nodiscard]] std::unique_ptr<LoopModel> remembering_full_wave(const design::Design& design,
                                                               Workload workload, double mesh_refinement);

/// The point for another power: currents and voltages go with its root.
[[nodiscard]] OperatingPoint scaled_to(OperatingPoint point, units::Power power);

} // namespace loopwright::loop::detail
