#pragma once
// The series of one circular turn by Fourier series round it.
#include "loop/detail/loop_series.hpp"

#include <vector>

namespace loopwright::loop::detail {

/// One turn of a round conductor, the middle of its capacitor's gap on +z, the circle round the origin in the
/// plane y = 0, as geometry::wire_path puts it. Lengths in m.
struct CircularTurn {
    double radius_m = 0; ///< of the centre line
    double wire_radius_m = 0;
    double gap_m = 0; ///< along the centre line
};

/// What prepare_loop() gives for that path, in the limit of fine cuts: the same equations (L.7) to (L.13),
/// which fall apart into one for each order of the Fourier series, (L.26) to (L.29). Accuracy 1e-5 of each
/// element (2e-4 where the wire's radius is a quarter of the circle's). inductance_H: the external
/// inductance. Holds for a wire up to 0.3 of the circle's radius and a gap up to a quarter of the circle.
[[nodiscard]] PreparedLoop prepare_circle(const CircularTurn& turn, double inductance_H,
                                          const std::vector<geometry::Vector3>& directions);

} // namespace loopwright::loop::detail
