#pragma once
// What the report before keying says against a board or a card that stands beside it.
#include "cli/execute.hpp"
#include "cli/outcomes.hpp"
#include "survey/keying.hpp"

namespace loopwright::cli {

/// Refuses an outcome that is still done: for what is exceeded, else for what is not established. A design
/// without any rating asked for no verdict on volts: only `keying` refuses that.
void judge_beside(Outcome& outcome, const survey::Keying& keying);

} // namespace loopwright::cli
