#pragma once
// Soil by its class name, as design files name it.
#include "ground/soil.hpp"

#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace loopwright::ground {

struct GroundClass {
    std::string name; ///< lower case, as in a design file
    Soil soil;
    std::string source; ///< document, and what in it is from memory
};

/// The classes of ITU-R P.527 at HF, best conductor first, and the customary "average ground" last.
[[nodiscard]] const std::vector<GroundClass>& ground_classes();

/// A class by its name (case and outer blanks ignored), or nothing.
[[nodiscard]] std::optional<GroundClass> find_ground_class(std::string_view name);

[[nodiscard]] std::vector<std::string> ground_class_names();

} // namespace loopwright::ground
