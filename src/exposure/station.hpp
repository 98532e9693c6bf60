#pragma once
// What a design's station says about exposure, in the terms of this folder.
#include "design/design.hpp"
#include "exposure/duty.hpp"
#include "exposure/limits.hpp"

#include <vector>

namespace loopwright::exposure {

/// The station's use, else usual_use() of its emission.
[[nodiscard]] Use use_of(const design::Station& station);

/// schedule_of() the station's emission and use. Throws base::InputError for an unknown emission or a habit
/// it cannot have.
[[nodiscard]] Schedule schedule_of(const design::Station& station);

/// A limit of the user's own as a limit table: id "own_1" for the first, the name as its standard, the same
/// at every frequency, one tier.
[[nodiscard]] Limit own_limit(const design::OwnLimit& own, std::size_t index);

/// Every limit the station is held against: those chosen (design::chosen_limits), then its own. Throws
/// base::InputError for an unknown id.
[[nodiscard]] std::vector<Limit> limits_of(const design::Station& station);

} // namespace loopwright::exposure
