#pragma once
// What the closed-form model prepares from a design.
#include "loop/design_parts.hpp"
#include "loop/detail/loop_series.hpp"
#include "loop/detail/tuned_loop.hpp"

#include <vector>

namespace loopwright::loop::detail {

/// The loop's inductance and what is known of its error.
struct ExternalInductance {
    double henries = 0; ///< 0: take the sum over the path
    double redistribution_H = 0;
    double relative_error = 0;
    double curvature_factor = 1; ///< thin-skin resistance of the curved conductor over the straight one
};
[[nodiscard]] ExternalInductance external_inductance(const geometry::Winding& winding, double radius_m);

/// How the path of a winding is cut: 24 spans a turn for one turn, 16 a turn for more, cut evenly there.
[[nodiscard]] Cutting cutting_for(const geometry::Winding& winding);

/// Resistance of the whole conductor over that of the straight one alone, from the neighbouring turns; leads
/// add nothing. 1 for one turn.
[[nodiscard]] double proximity_factor(const geometry::Winding& winding, double radius_m, double length_m);

/// Relative error of the loop's own capacitance: charge taken as even round the conductor, which between
/// close turns it is not (error taken as that of the capacitance of two parallel wires).
[[nodiscard]] double own_capacitance_error(const geometry::Winding& winding, double radius_m);

/// Directions in which gain is looked for: the candidates for the best one above the horizon, then a ring at
/// the low elevation.
struct Directions {
    std::vector<geometry::Vector3> all;
    std::size_t best_count = 0; ///< the first ones
};
inline constexpr double low_elevation_deg = 15;
inline constexpr std::size_t ring_azimuths = 12;
[[nodiscard]] Directions gain_directions(const geometry::Frame& frame);

} // namespace loopwright::loop::detail
