#pragma once
// From arguments to what was asked for.
#include "cli/commands.hpp"

#include <map>
#include <string>
#include <variant>
#include <vector>

namespace loopwright::cli {

/// A command with its file and the options that were given; flags have an empty value.
struct Invocation {
    const Command* command = nullptr;
    std::string file; ///< or the command's other argument; empty where it is left out
    std::map<std::string, std::string, std::less<>> values; ///< of a repeatable option: the first
    std::map<std::string, std::vector<std::string>, std::less<>> repeated; ///< of repeatable options: all
    [[nodiscard]] bool has(std::string_view option) const { return values.find(option) != values.end(); }
};

/// What is printed instead of working on a design.
struct Print {
    enum class What { overview, command_help, version, manual, completion, reference };
    What what = What::overview;
    const Command* command = nullptr; ///< for command_help
};

/// One sentence about arguments that make no sense.
struct UsageError {
    std::string sentence;
};

/// Reads the arguments without the program's name. Throws nothing but std::bad_alloc.
[[nodiscard]] std::variant<Invocation, Print, UsageError> parse(const std::vector<std::string>& arguments);

} // namespace loopwright::cli
