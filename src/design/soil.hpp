#pragma once
// The soil that a design's ground stands for.
#include "design/design.hpp"
#include "ground/soil.hpp"

namespace loopwright::design {

/// The two constants of the soil: of the class where the ground names one, else as entered. A class name
/// decides over whatever stands in the two fields beside it. Meaningless where the ground is not soil. Throws
/// base::InputError for an unknown class.
[[nodiscard]] ground::Soil soil_of(const Ground& ground);

} // namespace loopwright::design
