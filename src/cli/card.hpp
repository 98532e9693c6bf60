#pragma once
// The retune card, and the dial for one frequency.
#include "cli/command_line.hpp"
#include "cli/execute.hpp"
#include "design/design.hpp"

namespace loopwright::cli {

[[nodiscard]] Outcome card(const Invocation& asked, design::Design design);
[[nodiscard]] Outcome dial(const Invocation& asked, design::Design design);

/// Their options, as far as they can be checked without the file. Throws base::InputError.
void check_card_values(const Invocation& asked);

} // namespace loopwright::cli
