#pragma once
#include "cli/execute.hpp"
#include "design/design.hpp"

namespace loopwright::cli {

/// What moves the resonance of the tuned loop, at --frequency or in every planned band.
[[nodiscard]] Outcome drift(const Invocation& asked, design::Design design);

/// Throws base::InputError.
void check_drift_values(const Invocation& asked);

} // namespace loopwright::cli
