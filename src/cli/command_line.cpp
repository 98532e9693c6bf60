#include "cli/command_line.hpp"

#include "base/nearest.hpp"

#include <CLI/App.hpp>
#include <CLI/Config.hpp>
#include <CLI/Formatter.hpp>

#include <algorithm>
#include <memory>

namespace loopwright::cli {
namespace {

using Result = std::variant<Invocation, Print, UsageError>;

/// What CLI11 collects for one command: every value as it was written.
struct Collected {
    const Command* command = nullptr;
    CLI::App* app = nullptr;
    std::vector<std::string> files;
    std::map<std::string, std::vector<std::string>, std::less<>> values;
};

std::string in_quotes(std::string_view text) {
    return "'" + std::string(text) + "'";
}

UsageError wrong(const Command* command, const std::string& sentence) {
    const std::string help = command != nullptr ? " " + std::string(command->name) : "";
    return {sentence + "; see '" + program + help + " --help'"};
}

std::string suggestion(const std::string& mistyped, const std::vector<std::string>& names) {
    const std::string name = base::nearest(mistyped, names);
    return name.empty() ? "" : ", perhaps " + in_quotes(name) + " is meant";
}

/// Flags get an empty value for every time they are given.
void declare(CLI::App& app, Collected& collected) {
    collected.app = &app;
    app.set_help_flag();
    app.allow_extras();
    app.add_option("FILE", collected.files)
        ->expected(1)
        ->multi_option_policy(CLI::MultiOptionPolicy::TakeAll);
    for (const Option& option : collected.command->options) {
        std::vector<std::string>& values = collected.values[std::string(option.name)];
        if (option.value.empty()) {
            const std::string names = option.name == "--help" ? "-h,--help" : std::string(option.name);
            app.add_flag_callback(
                   names, [&values] { values.emplace_back(); }, "")
                ->trigger_on_parse()
                ->disable_flag_override();
        } else {
            app.add_option(std::string(option.name), values)
                ->expected(1)
                ->allow_extra_args(false)
                ->multi_option_policy(CLI::MultiOptionPolicy::TakeAll);
        }
    }
}

bool looks_like_option(const std::string& argument) {
    return argument.size() > 1 && argument.front() == '-' && argument != "--";
}

UsageError no_option(const Command& command, const std::string& argument) {
    const std::string name = argument.substr(0, argument.find('='));
    std::vector<std::string> names;
    std::transform(command.options.begin(), command.options.end(), std::back_inserter(names),
                   [](const Option& option) { return std::string(option.name); });
    return wrong(&command, "there is no option " + in_quotes(name) + " for " + in_quotes(command.name) +
                               suggestion(name, names));
}

UsageError unknown_command(const std::string& argument) {
    std::vector<std::string> names;
    std::transform(commands().begin(), commands().end(), std::back_inserter(names),
                   [](const Command& command) { return std::string(command.name); });
    const bool option = looks_like_option(argument);
    return wrong(nullptr, std::string("there is no ") + (option ? "option " : "command ") +
                              in_quotes(argument) + (option ? "" : suggestion(argument, names)));
}

bool one_of(const std::vector<std::string_view>& choices, const std::string& value) {
    return choices.empty() || std::find(choices.begin(), choices.end(), value) != choices.end();
}

/// What is still wrong with an option, or an empty sentence.
std::string problem(const Option& option, const std::vector<std::string>& values) {
    const std::string name(option.name);
    if (values.empty()) {
        return option.required ? name + " is needed" : "";
    }
    if (values.size() > 1 && !option.repeatable) {
        return name + " is given more than once";
    }
    if (!one_of(option.choices, values.front())) {
        std::string accepted;
        for (const std::string_view choice : option.choices) {
            accepted += (accepted.empty() ? "" : " or ") + std::string(choice);
        }
        return name + ": " + in_quotes(values.front()) + " is not accepted; " + accepted;
    }
    return "";
}

Result invocation(const Collected& collected) {
    const Command& command = *collected.command;
    if (!collected.values.find("--help")->second.empty()) {
        return Print{Print::What::command_help, &command};
    }
    const std::vector<std::string> extra = collected.app->remaining();
    const auto option = std::find_if(extra.begin(), extra.end(), looks_like_option);
    if (option != extra.end()) {
        return no_option(command, *option);
    }
    if (collected.files.size() > 1) {
        return wrong(&command, in_quotes(collected.files[1]) +
                                   " is one argument too many; a value with a blank needs quotes");
    }
    if (collected.files.empty() && command.argument_needed) {
        return wrong(&command, in_quotes(command.name) + " needs a design file");
    }
    Invocation asked{&command, collected.files.empty() ? "" : collected.files.front(), {}, {}};
    for (const Option& each : command.options) {
        const std::vector<std::string>& values = collected.values.find(each.name)->second;
        if (const std::string sentence = problem(each, values); !sentence.empty()) {
            return wrong(&command, sentence);
        }
        if (!values.empty()) {
            asked.values[std::string(each.name)] = values.front();
            if (each.repeatable) {
                asked.repeated[std::string(each.name)] = values;
            }
        }
    }
    if (asked.has("--json") && asked.has("--csv")) {
        return wrong(&command, "--json and --csv exclude each other");
    }
    return asked;
}

/// CLI11 begins its messages with the option. Two kinds are left to it: a value that is missing, and one that
/// a flag cannot have.
std::string said_of(const CLI::ParseError& error) {
    const std::string text = error.what();
    const std::string option = text.substr(0, text.find_first_of(": "));
    const bool flag = text.find("flag override") != std::string::npos;
    return (option.front() == '-' ? option : "--" + option) + (flag ? " takes no value" : " needs a value");
}

/// Options of the program itself; those that print generated texts are for the build and are not in the help.
struct Global {
    const char* names;
    Print::What what;
};
constexpr Global globals[] = {{"-h,--help", Print::What::overview},
                              {"--version", Print::What::version},
                              {"--print-manual", Print::What::manual},
                              {"--print-completion", Print::What::completion},
                              {"--print-reference", Print::What::reference}};

} // namespace

Result parse(const std::vector<std::string>& arguments) {
    CLI::App app;
    app.set_help_flag();
    app.allow_extras();
    app.require_subcommand(0, 1);
    std::vector<Print::What> prints;
    for (const Global& global : globals) {
        app.add_flag_callback(global.names, [&prints, &global] { prints.push_back(global.what); })
            ->disable_flag_override();
    }
    std::vector<std::unique_ptr<Collected>> all;
    for (const Command& command : commands()) {
        all.push_back(std::make_unique<Collected>());
        all.back()->command = &command;
        declare(*app.add_subcommand(std::string(command.name)), *all.back());
    }
    const auto chosen = [&all] {
        const auto found =
            std::find_if(all.begin(), all.end(), [](const auto& each) { return each->app->parsed(); });
        return found == all.end() ? nullptr : found->get();
    };
    try {
        std::vector<std::string> reversed(arguments.rbegin(), arguments.rend());
        app.parse(reversed);
    } catch (const CLI::ParseError& error) {
        return wrong(chosen() != nullptr ? chosen()->command : nullptr, said_of(error));
    }
    if (!prints.empty()) {
        return Print{prints.front(), nullptr};
    }
    if (const Collected* collected = chosen()) {
        return invocation(*collected);
    }
    const std::vector<std::string> extra = app.remaining();
    return extra.empty() ? wrong(nullptr, "a command is needed") : unknown_command(extra.front());
}

} // namespace loopwright::cli
