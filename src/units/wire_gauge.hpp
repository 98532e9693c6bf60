#pragma once
// American wire gauge.
#include "units/quantities.hpp"

#include <optional>
#include <string_view>

namespace loopwright::units {

/// Diameter of the bare round wire of a gauge [m]: 0.005 in * 92^((36 - n)/39). Gauge 0 is "1/0", -1 "2/0",
/// -3 "4/0". Source: ASTM B258. Range: -3 to 56; base::ProgramError outside. The standard's table gives four
/// significant digits of this.
[[nodiscard]] Length wire_gauge_diameter(int gauge);

/// The gauge in "14 AWG", "AWG 14", "#14 AWG", "4/0 AWG", "AWG 0000" (ASCII). Nothing where the text does not
/// hold the word AWG, or what stands beside it is no gauge from 4/0 to 56.
[[nodiscard]] std::optional<int> read_wire_gauge(std::string_view text);

/// Whether a text (ASCII) means to be a gauge: it holds the word AWG.
[[nodiscard]] bool mentions_wire_gauge(std::string_view text);

} // namespace loopwright::units
