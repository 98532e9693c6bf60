#pragma once
// The parts of a document that decide before keying: ratings, added capacitors, use of the emission, limits.
#include "design/design.hpp"
#include "document/detail/fields.hpp"

#include <vector>

namespace loopwright::document::detail {

void read_rating(const Fields& fields, design::CapacitorRating& rating);
[[nodiscard]] std::vector<design::AddedCapacitor> read_added(const Fields& capacitor);
void read_use(const Fields& fields, design::Use& use);
[[nodiscard]] std::vector<design::OwnLimit> read_own_limits(const Fields& station);

} // namespace loopwright::document::detail
