#pragma once
// Short names for the rows of the limits' tables.
#include "exposure/limits.hpp"

namespace loopwright::exposure {

inline constexpr auto gen = Tier::general_public;
inline constexpr auto occ = Tier::occupational;

} // namespace loopwright::exposure
