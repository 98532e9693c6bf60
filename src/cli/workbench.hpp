#pragma once
// The sibling program with the window: asked for what only it can paint.
#include <string>
#include <vector>

namespace loopwright::cli {

/// Runs `loopwright` with these arguments and waits for it; without a display. It is looked for beside this
/// program, then on the PATH. Empty where it went well; else one sentence that says what is missing or what
/// it said.
[[nodiscard]] std::string run_workbench(const std::vector<std::string>& arguments);

} // namespace loopwright::cli
