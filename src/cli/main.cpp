// loopwright-cli: the same answers as the workbench, for a terminal and for scripts. Links no Qt.
#include "cli/execute.hpp"

#include <cstdio>
#include <exception>
#include <string>
#include <variant>
#include <vector>

namespace {

using namespace loopwright::cli;

Outcome answer(const std::vector<std::string>& arguments) {
    const auto asked = parse(arguments);
    if (const auto* error = std::get_if<UsageError>(&asked)) {
        return {"", std::string(program) + ": " + error->sentence + "\n", 2};
    }
    if (const auto* page = std::get_if<Print>(&asked)) {
        return print(*page);
    }
    return execute(std::get<Invocation>(asked));
}

bool written(const std::string& text, std::FILE* stream) {
    return std::fwrite(text.data(), 1, text.size(), stream) == text.size() && std::fflush(stream) == 0;
}

} // namespace

int main(int count, char** values) {
    try {
        const Outcome outcome =
            answer(std::vector<std::string>(values + (count > 0 ? 1 : 0), values + count));
        if (!written(outcome.output, stdout)) {
            std::fputs("loopwright-cli: the output could not be written.\n", stderr);
            return 1;
        }
        static_cast<void>(written(outcome.error, stderr));
        return outcome.status;
    } catch (const std::exception& error) {
        std::fprintf(stderr, "loopwright-cli: this is a mistake of the program, please report it: %s\n",
                     error.what());
        return 1;
    }
}
