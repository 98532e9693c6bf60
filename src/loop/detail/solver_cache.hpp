#pragma once
// What an edit does not change is not computed again: meshes by geometry, ground matrices by geometry, place
// and soil, solutions by these, conductor and frequency.
#include "geometry/winding.hpp"
#include "loop/detail/solved_frequencies.hpp"
#include "loop/loop_model.hpp"
#include "wire/ground_matrix.hpp"
#include "wire/solver.hpp"

#include <memory>

namespace loopwright::loop::detail {

/// Highest frequency of the series the meshes are filled for.
inline constexpr double highest_series_Hz = 60e6;

/// The solver of a winding in its own frame (vertical, origin at its centre), ports opposite the capacitor
/// and at the capacitor. Shared; the last few stay.
[[nodiscard]] std::shared_ptr<const wire::Solver> solver_of(const geometry::Winding& winding, double radius_m,
                                                            double refinement = 1.0);

/// The ground's matrices for that solver, set up at `stand`. Those of passing designs are kept apart.
[[nodiscard]] std::shared_ptr<const wire::GroundMatrices>
ground_of(const std::shared_ptr<const wire::Solver>& solver, const wire::Underground& underground,
          const geometry::Frame& stand, Workload workload);

/// What is solved for that solver over that ground (null: free space). For a passing design not shared.
[[nodiscard]] std::shared_ptr<const SolvedFrequencies>
solved_frequencies_of(const std::shared_ptr<const wire::Solver>& solver,
                      const std::shared_ptr<const wire::GroundMatrices>& ground, Workload workload);

} // namespace loopwright::loop::detail
