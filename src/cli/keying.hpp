#pragma once
// The command before keying.
#include "cli/command_line.hpp"
#include "cli/execute.hpp"
#include "design/design.hpp"

namespace loopwright::cli {

[[nodiscard]] Outcome keying(const Invocation& asked, design::Design design);

/// Its options, as far as they can be checked without the file. Throws base::InputError.
void check_keying_values(const Invocation& asked);

} // namespace loopwright::cli
