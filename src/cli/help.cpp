#include "cli/help.hpp"

#include "report/table.hpp"

#include <algorithm>

namespace loopwright::cli {
namespace {

constexpr std::size_t width = 88;

std::string paragraph(std::string_view text, const std::string& indent = "") {
    std::string out;
    for (const std::string& line : report::wrapped(text, width - indent.size())) {
        out += indent + line + "\n";
    }
    return out;
}

/// "  left      meaning", the meaning wrapped in its own column.
std::string entry(const std::string& left, std::string_view meaning, std::size_t column) {
    std::string out = "  " + left;
    const std::string indent(column, ' ');
    if (out.size() >= column) { // no room for a blank between
        return out + "\n" + paragraph(meaning, indent);
    }
    for (const std::string& line : report::wrapped(meaning, width - column)) {
        out.resize(std::max(out.size(), column), ' ');
        out += line + "\n";
        return out + paragraph(meaning.substr(std::min(meaning.size(), line.size() + 1)), indent);
    }
    return out + "\n";
}

std::string shown_option(const Option& option) {
    return std::string(option.name) + (option.value.empty() ? "" : " " + std::string(option.value));
}

std::string statuses() {
    std::string out = "Exit status:\n";
    for (const ExitStatus& status : exit_statuses()) {
        out += entry(std::to_string(status.status), status.meaning, 6);
    }
    return out;
}

} // namespace

std::string synopsis(const Command& command) {
    std::string out = std::string(command.name) + " " + shown_argument(command);
    for (const Option& option : command.options) {
        if (option.name == "--help") {
            continue;
        }
        out += option.required ? " " + shown_option(option) : " [" + shown_option(option) + "]";
    }
    return out;
}

std::string overview_help() {
    std::string out = std::string("Usage: ") + program + " COMMAND FILE [options]\n\n";
    out += paragraph(purpose()) + "\nCommands:\n";
    for (const Command& command : commands()) {
        out += entry(std::string(command.name), command.summary, 15);
    }
    out += "\nOptions:\n";
    out += entry("--help", "Print this help; after a command, the help of that command.", 15);
    out += entry("--version", "Print the version.", 15);
    out += "\n" + paragraph(about_quantities());
    return out + "\n" + statuses();
}

std::string command_help(const Command& command) {
    std::string out = "Usage: ";
    const std::vector<std::string> lines =
        report::wrapped(std::string(program) + " " + synopsis(command), width - 7);
    for (std::size_t i = 0; i < lines.size(); ++i) {
        out += (i > 0 ? "       " : "") + lines[i] + "\n";
    }
    out += "\n" + paragraph(command.text) + "\nOptions:\n";
    for (const Option& option : command.options) {
        out += entry(shown_option(option), option.meaning, 20);
    }
    out += "\nExamples:\n";
    for (const Example& example : command.examples) {
        out += "  " + std::string(example.line) + "\n" + paragraph(example.meaning, "      ");
    }
    return out + "\n" + statuses();
}

} // namespace loopwright::cli
