#pragma once
#include "cli/execute.hpp"

namespace loopwright::cli {

/// Reads the file of the invocation; --strict: refuses one that saving would change. Throws base::InputError
/// where the file cannot be read as a design.
[[nodiscard]] Outcome check_file(const Invocation& asked);

} // namespace loopwright::cli
