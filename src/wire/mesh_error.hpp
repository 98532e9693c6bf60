#pragma once
// How far a mesh is from the converged answer, by a second mesh.
#include "wire/solver.hpp"

namespace loopwright::wire {

/// Estimated relative errors of a tuned loop on the mesh in question, signed: (value - converged)/converged.
struct MeshError {
    double capacitance = 0; ///< that resonates it
    double resistance = 0;  ///< opposite the capacitor, without the capacitor's own
    std::size_t unknowns = 0;
    std::size_t unknowns_of_coarser = 0;
};

/// Compares with a mesh of elements twice as long. The error falls with the square of their length (a test),
/// so it is a third of the difference. The model has two ports: opposite the capacitor, and the capacitor's.
/// Cost: that of a Solver and a quarter. Throws base::ProgramError for another number of ports,
/// base::InputError where no capacitance resonates the loop.
[[nodiscard]] MeshError estimate_mesh_error(const WireModel& model, const MeshOptions& options,
                                            units::Frequency frequency, const Loading& loading);

} // namespace loopwright::wire
