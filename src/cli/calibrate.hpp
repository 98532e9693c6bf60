#pragma once
#include "cli/execute.hpp"
#include "design/design.hpp"

namespace loopwright::cli {

/// The calibration of the invocation's design, with the points of --points in place of its own; stored with
/// --write.
[[nodiscard]] Outcome calibrate(const Invocation& asked, design::Design design);

/// The options that can be checked without the file. Throws base::InputError.
void check_calibrate_values(const Invocation& asked);

} // namespace loopwright::cli
