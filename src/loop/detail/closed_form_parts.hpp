#pragma once
// What the closed-form model prepares from a design.
#include "loop/design_parts.hpp"
#include "loop/detail/loop_series.hpp"
#include "loop/detail/tuned_loop.hpp"

#include <array>
#include <cstddef>
#include <string>
#include <vector>

namespace loopwright::loop::detail {

/// Why the closed form cannot compute a valid design at all: a gap over a quarter of the conductor, a
/// conductor over a third of the loop's width, turns that nearly touch, leads that do not clear them. Empty:
/// it can.
[[nodiscard]] std::string not_modelled(const geometry::Winding& winding, double length_m, double radius_m);

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

/// What part of the conductor lies beside other turns: all but leads and link.
[[nodiscard]] double share_of_turns(const geometry::Winding& winding, double length_m);

/// Relative error of the loop's own capacitance: charge taken as even round the conductor, which between
/// close turns it is not (error taken as that of the capacitance of two parallel wires).
[[nodiscard]] double own_capacitance_error(const geometry::Winding& winding, double radius_m);

/// In which directions a loop sends alike: a half turn about its axis z (capacitor to opposite point) maps a
/// reversible path on itself, a mirror in its plane y = 0 a plane one.
struct Symmetry {
    bool half_turn = false, mirror = false;
};
[[nodiscard]] Symmetry symmetry_of(const geometry::Winding& winding) noexcept;

/// Directions in which gain is looked for: the candidates for the best one above the horizon, and a ring at
/// the low elevation; all in the coordinates of the upright loop about its centre (x right, y rise, z up). Of
/// directions alike one stands in `all`.
inline constexpr std::size_t ring_azimuths = 12;
struct Directions {
    std::vector<geometry::Vector3> all;
    std::size_t best_count = 0;                    ///< the first ones are the candidates
    std::array<std::size_t, ring_azimuths> ring{}; ///< places in `all`
};
[[nodiscard]] Directions gain_directions(const geometry::Frame& frame, const Symmetry& symmetry);

} // namespace loopwright::loop::detail
