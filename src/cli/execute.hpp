#pragma once
// Does what was asked for.
#include "cli/command_line.hpp"

#include <string>

namespace loopwright::cli {

/// What goes to the two outputs, and the exit status (docs/reference/cli.md).
struct Outcome {
    std::string output;
    std::string error; ///< sentences, each with its line feed; empty: none
    int status = 0;
};

/// Never throws for what a person gave; base::ProgramError for our own mistakes.
[[nodiscard]] Outcome execute(const Invocation& asked);
[[nodiscard]] Outcome print(const Print& asked);

} // namespace loopwright::cli
