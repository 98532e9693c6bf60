#pragma once
// The commands about the loop where it stands: pattern, height, field.
#include "cli/command_line.hpp"
#include "cli/execute.hpp"
#include "design/design.hpp"

namespace loopwright::cli {

[[nodiscard]] Outcome pattern(const Invocation& asked, design::Design design);
[[nodiscard]] Outcome height(const Invocation& asked, design::Design design);
[[nodiscard]] Outcome field(const Invocation& asked, design::Design design);

/// Options of these three, as far as they can be checked without the file. Throws base::InputError.
void check_site_values(const Invocation& asked);

} // namespace loopwright::cli
