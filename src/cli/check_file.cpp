#include "cli/check_file.hpp"

#include "base/error.hpp"
#include "base/utf8.hpp"
#include "design/validation.hpp"
#include "document/design_file.hpp"
#include "loop/loop_model.hpp"

#include <algorithm>
#include <fstream>
#include <iterator>
#include <sstream>
#include <string>

namespace loopwright::cli {
namespace {

std::string bytes_of(const std::string& file) {
    std::ifstream stream(file, std::ios::binary);
    std::string bytes{std::istreambuf_iterator<char>(stream), std::istreambuf_iterator<char>()};
    if (!stream) {
        throw base::InputError::sentence(file, "cannot be read");
    }
    return bytes;
}

/// A line without the blanks around it, as it is shown in a sentence.
std::string line_shown(std::istringstream& text) {
    std::string line;
    if (!std::getline(text, line)) {
        return "the end of the file";
    }
    const auto first = line.find_first_not_of(" \t\r");
    if (first == std::string::npos) {
        return "an empty line";
    }
    return "'" + base::quotable(line.substr(first, line.find_last_not_of(" \t\r") + 1 - first)) + "'";
}

/// Refuses a file that is not as saving writes it, with the first line that differs as it is and as it would
/// be.
void require_canonical(const std::string& file, const std::string& bytes, const std::string& canonical) {
    const auto part = std::mismatch(bytes.begin(), bytes.end(), canonical.begin(), canonical.end()).first;
    if (part == bytes.end() && bytes.size() == canonical.size()) {
        return;
    }
    const auto before = std::count(bytes.begin(), part, '\n');
    std::istringstream is(bytes), would_be(canonical);
    std::string skipped;
    for (std::ptrdiff_t i = 0; i < before; ++i) {
        std::getline(is, skipped);
        std::getline(would_be, skipped);
    }
    const std::string now = line_shown(is), then = line_shown(would_be);
    throw base::InputError::sentence(
        file + ":" + std::to_string(before + 1),
        "saving the file would change it, from this line on: " +
            (now == then ? "the blanks or the end of the line " + now : "from " + now + " to " + then));
}

} // namespace

Outcome check_file(const Invocation& asked) {
    const design::Design design = document::load_design(asked.file);
    Outcome outcome;
    for (const base::InputError& refusal : design::refusals(design)) {
        outcome.error += std::string(program) + ": " + refusal.at(asked.file, 0).what() + "\n";
        outcome.status = 1;
    }
    if (outcome.status != 0) {
        return outcome;
    }
    static_cast<void>(loop::make_model(design, loop::Model::closed_form)); // refuses what cannot be computed
    if (asked.has("--strict")) {
        require_canonical(asked.file, bytes_of(asked.file), document::write_design(design));
    }
    outcome.output =
        asked.file + ": accepted" + (asked.has("--strict") ? ", and saving would not change it\n" : "\n");
    return outcome;
}

} // namespace loopwright::cli
