#pragma once
#include "cli/execute.hpp"
#include "design/design.hpp"

namespace loopwright::cli {

/// The match at one frequency, or with --design-coupling the sizes of coupling that match. `design` is that
/// of the invocation's file.
[[nodiscard]] Outcome match(const Invocation& asked, design::Design design);

} // namespace loopwright::cli
