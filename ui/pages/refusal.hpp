#pragma once
// What a page says when the core refuses a value: the same as a field says.
#include "inputs/refusal.hpp"

namespace loopwright::pages {

using inputs::refusal_sentence;

} // namespace loopwright::pages
