#include "base/version.hpp"
#include "cli/help.hpp"

#include <cctype>

namespace loopwright::cli {
namespace {

/// Text as troff wants it: a hyphen that is a minus, no line that begins like a request.
std::string escaped(std::string_view text) {
    std::string out;
    for (const char c : text) {
        if (c == '-' || c == '\\') {
            out += '\\';
            out += c == '\\' ? 'e' : '-';
        } else {
            out += c;
        }
    }
    if (!out.empty() && (out.front() == '.' || out.front() == '\'')) {
        out.insert(0, "\\&");
    }
    return out;
}

std::string section(std::string_view title) {
    return ".SH " + std::string(title) + "\n";
}

std::string term(const std::string& bold, const std::string& italic, std::string_view meaning) {
    std::string out = ".TP\n\\fB" + escaped(bold) + "\\fR";
    if (!italic.empty()) {
        out += " \\fI" + escaped(italic) + "\\fR";
    }
    return out + "\n" + escaped(meaning) + "\n";
}

std::string synopsis_line(const Command& command) {
    std::string out = "\\fB" + escaped(program) + " " + escaped(command.name) + "\\fR " +
                      (command.argument_needed ? "" : "[") + "\\fI" + escaped(command.argument) + "\\fR" +
                      (command.argument_needed ? "" : "]");
    for (const Option& option : command.options) {
        if (option.name == "--help") {
            continue;
        }
        std::string text = "\\fB" + escaped(option.name) + "\\fR";
        text += option.value.empty() ? "" : " \\fI" + escaped(option.value) + "\\fR";
        out += option.required ? " " + text : " [" + text + "]";
    }
    return out + "\n";
}

std::string command_section(const Command& command) {
    std::string out = ".SS " + escaped(command.name) + "\n" + escaped(command.text) + "\n";
    for (const Option& option : command.options) {
        out += term(std::string(option.name), std::string(option.value), option.meaning);
    }
    return out;
}

} // namespace

std::string manual_page() {
    std::string out =
        ".TH LOOPWRIGHT\\-CLI 1 \"\" \"Loopwright " + std::string(base::version) + "\" \"User commands\"\n";
    out += section("NAME") + "loopwright\\-cli \\- judge small transmitting loop antennas\n" +
           section("SYNOPSIS");
    for (const Command& command : commands()) {
        out += (&command == &commands().front() ? "" : ".br\n") + synopsis_line(command);
    }
    out += ".br\n\\fBloopwright\\-cli\\fR [\\fICOMMAND\\fR] \\fB\\-\\-help\\fR | \\fB\\-\\-version\\fR\n";
    out += section("DESCRIPTION") + escaped(purpose()) + "\n.PP\n" + escaped(about_quantities()) + "\n.PP\n" +
           escaped(about_output()) + "\n";
    out += section("COMMANDS");
    for (const Command& command : commands()) {
        out += command_section(command);
    }
    out += section("EXIT STATUS");
    for (const ExitStatus& status : exit_statuses()) {
        out += term(std::to_string(status.status), "", status.meaning);
    }
    out += section("EXAMPLES");
    for (const Command& command : commands()) {
        for (const Example& example : command.examples) {
            out += ".PP\n" + escaped(example.meaning) + "\n.PP\n.RS\n.nf\n" + escaped(example.line) +
                   "\n.fi\n.RE\n";
        }
    }
    return out;
}

std::string bash_completion() {
    std::string names;
    std::string cases;
    for (const Command& command : commands()) {
        names += (names.empty() ? "" : " ") + std::string(command.name);
        std::string options;
        for (const Option& option : command.options) {
            options += (options.empty() ? "" : " ") + std::string(option.name);
        }
        cases += "        " + std::string(command.name) + ") options=\"" + options + "\" ;;\n";
    }
    std::string values;
    std::string free;
    for (const Command& command : commands()) {
        for (const Option& option : command.options) {
            const std::string name(option.name);
            if (!option.choices.empty() && values.find(name + ")") == std::string::npos) {
                std::string words;
                for (const std::string_view choice : option.choices) {
                    words += (words.empty() ? "" : " ") + std::string(choice);
                }
                values.append("        ").append(name).append(") COMPREPLY=($(compgen -W \"");
                values.append(words).append("\" -- \"$current\")); return ;;\n");
            } else if (!option.value.empty() && option.choices.empty() &&
                       free.find(name) == std::string::npos) {
                free += (free.empty() ? "" : " | ") + name;
            }
        }
    }
    return "# Completion of loopwright-cli for bash, written by the program from its table of commands.\n"
           "_loopwright_cli() {\n"
           "    local current=\"${COMP_WORDS[COMP_CWORD]}\" previous=\"${COMP_WORDS[COMP_CWORD - 1]}\" "
           "options=\"\"\n"
           "    COMPREPLY=()\n"
           "    if [ \"$COMP_CWORD\" -eq 1 ]; then\n"
           "        COMPREPLY=($(compgen -W \"" +
           names +
           " --help --version\" -- \"$current\"))\n"
           "        return\n"
           "    fi\n"
           "    case \"$previous\" in\n" +
           values + "        " + free +
           ") return ;;\n"
           "    esac\n"
           "    case \"${COMP_WORDS[1]}\" in\n" +
           cases +
           "        *) return ;;\n"
           "    esac\n"
           "    if [[ \"$current\" == -* ]]; then\n"
           "        COMPREPLY=($(compgen -W \"$options\" -- \"$current\"))\n"
           "        return\n"
           "    fi\n"
           "    local name\n"
           "    while IFS= read -r name; do\n"
           "        if [ -d \"$name\" ]; then COMPREPLY+=(\"$name/\"); else COMPREPLY+=(\"$name\"); fi\n"
           "    done < <(compgen -d -- \"$current\"; compgen -f -X '!*.loop' -- \"$current\")\n"
           "    compopt -o filenames -o nospace 2>/dev/null\n"
           "}\n"
           "complete -F _loopwright_cli loopwright-cli\n";
}

} // namespace loopwright::cli
