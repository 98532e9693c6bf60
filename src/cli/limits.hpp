#pragma once
// The command that lists the exposure limits; it takes no design.
#include "cli/command_line.hpp"
#include "cli/execute.hpp"

namespace loopwright::cli {

/// Throws base::InputError for an id that is not known.
[[nodiscard]] Outcome limits(const Invocation& asked);

/// The same refusal before anything is done.
void check_limit_values(const Invocation& asked);

} // namespace loopwright::cli
