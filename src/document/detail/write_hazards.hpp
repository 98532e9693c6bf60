#pragma once
// Ratings, added capacitors, use of the emission and own limits as parts of a design's text.
#include "design/design.hpp"
#include "document/detail/part.hpp"

#include <vector>

namespace loopwright::document::detail {

[[nodiscard]] Json rating_part(const design::CapacitorRating& rating);
[[nodiscard]] Json added_part(const std::vector<design::AddedCapacitor>& added);
[[nodiscard]] Json use_part(const design::Use& use);
[[nodiscard]] Json own_limits_part(const std::vector<design::OwnLimit>& own);

} // namespace loopwright::document::detail
