#pragma once
// Copper tube as it is sold: US water tube and metric tube. Outer diameter and wall, not the nominal name,
// are what counts.
#include "units/quantities.hpp"

#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace loopwright::conductor {

struct TubeSize {
    std::string name;     ///< "3/4 in type L", "22 x 1 mm"; unique
    std::string standard; ///< "ASTM B88", "EN 1057"
    units::Length diameter{};
    units::Length wall{};
    std::string diameter_text; ///< as the standard gives it, for a field or a file: "0.875 in", "22 mm"
    std::string wall_text;
    bool confirmed = true; ///< false: copies of the standard disagree, or the row is from memory
};

/// Sizes up to 4 in and 108 mm. ASTM B88 types K, L and M: outer diameter = nominal size + 1/8 in; walls from
/// its table. EN 1057: the common pairs of outer diameter and wall. Nominal values: the standards' tolerances
/// are a few hundredths of a millimetre in diameter and some 10 % in wall.
[[nodiscard]] const std::vector<TubeSize>& tube_sizes();

/// A size by its name, or nothing.
[[nodiscard]] std::optional<TubeSize> find_tube_size(std::string_view name);

} // namespace loopwright::conductor
