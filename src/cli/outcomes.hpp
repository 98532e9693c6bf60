#pragma once
// Exit statuses and sentences on the error output.
#include "cli/commands.hpp"
#include "report/words.hpp"

#include <cstddef>
#include <string>

namespace loopwright::cli {

inline constexpr int done = 0;
inline constexpr int refused = 1;
inline constexpr int usage = 2;

/// Characters in a line of pages whose tables need more than the usual width.
inline constexpr std::size_t wide_page = 130;

[[nodiscard]] inline std::string error_sentence(const std::string& text) {
    return std::string(program) + ": " + report::with_plain_blanks(text) + "\n";
}

} // namespace loopwright::cli
