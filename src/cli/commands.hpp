#pragma once
// The one table of commands: parsing, help, manual page, shell completion and docs/reference/cli.md come from
// it.
#include <string>
#include <string_view>
#include <vector>

namespace loopwright::cli {

inline constexpr const char* program = "loopwright-cli";

struct Option {
    std::string_view name;    ///< "--frequency"
    std::string_view value;   ///< what stands for its value in help ("F"); empty: a flag
    std::string_view meaning; ///< one sentence, with its default
    bool required = false;
    std::vector<std::string_view> choices; ///< the only values, where there are few
    bool repeatable = false;
};

enum class Action {
    bands,
    point,
    sweep,
    report,
    match,
    pattern,
    height,
    field,
    keying,
    card,
    dial,
    limits,
    calibrate,
    drift,
    check_file
};

struct Example {
    std::string_view line;
    std::string_view meaning;
};

struct Command {
    Action action;
    std::string_view name;
    std::string_view summary; ///< one line for lists
    std::string_view text;    ///< a few sentences
    std::vector<Option> options;
    std::vector<Example> examples;
    std::string_view argument = "FILE"; ///< what stands in front of the options
    bool argument_needed = true;
};

/// "FILE", "[ID]".
[[nodiscard]] std::string shown_argument(const Command& command);

[[nodiscard]] const std::vector<Command>& commands();
[[nodiscard]] const Command* find_command(std::string_view name);
[[nodiscard]] const Option* find_option(const Command& command, std::string_view name);

struct ExitStatus {
    int status;
    std::string_view meaning;
};
[[nodiscard]] const std::vector<ExitStatus>& exit_statuses();

/// Paragraphs that help, manual and reference share: what the program is, how values are written, cautions.
[[nodiscard]] std::string_view purpose();
[[nodiscard]] std::string_view about_quantities();
[[nodiscard]] std::string_view about_output();

} // namespace loopwright::cli
