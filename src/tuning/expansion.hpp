#pragma once
// How metals grow with warmth.
#include "design/design.hpp"
#include "units/quantities.hpp"

#include <optional>
#include <string>
#include <vector>

namespace loopwright::tuning {

struct Expansion {
    std::string metal;              ///< as in a design file
    units::PerKelvin coefficient{}; ///< linear, near room temperature
    std::string source;             ///< document; every value is from memory until read in a copy
};

/// All metals of the design file that have a handbook value. Range: -40 to 120 degC within 3 %.
[[nodiscard]] const std::vector<Expansion>& expansions();

/// Of a design's metal; nothing for one given by numbers (its composition is not known).
[[nodiscard]] std::optional<Expansion> expansion_of(const design::Metal& metal);

} // namespace loopwright::tuning
