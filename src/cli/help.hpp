#pragma once
// Everything that is written from the table of commands.
#include "cli/commands.hpp"

#include <string>

namespace loopwright::cli {

[[nodiscard]] std::string overview_help();
[[nodiscard]] std::string command_help(const Command& command);
/// "point FILE --frequency F [--power P] ..."
[[nodiscard]] std::string synopsis(const Command& command);

/// The manual page loopwright-cli(1), troff with man macros.
[[nodiscard]] std::string manual_page();
/// Completion for bash.
[[nodiscard]] std::string bash_completion();
/// docs/reference/cli.md
[[nodiscard]] std::string reference_markdown();

} // namespace loopwright::cli
