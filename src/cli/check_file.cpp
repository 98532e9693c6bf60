#include "cli/check_file.hpp"

#include "base/error.hpp"
#include "design/validation.hpp"
#include "document/design_file.hpp"
#include "loop/loop_model.hpp"

#include <algorithm>
#include <fstream>
#include <iterator>
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

/// The line, from 1, where two texts that are not equal part.
std::ptrdiff_t differing_line(const std::string& a, const std::string& b) {
    const auto part = std::mismatch(a.begin(), a.end(), b.begin(), b.end()).first;
    return 1 + std::count(a.begin(), part, '\n');
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
        const std::string canonical = document::write_design(design);
        const std::string bytes = bytes_of(asked.file);
        if (bytes != canonical) {
            throw base::InputError::sentence(asked.file + ":" +
                                                 std::to_string(differing_line(bytes, canonical)),
                                             "saving the file would change it, from this line on");
        }
    }
    outcome.output =
        asked.file + ": accepted" + (asked.has("--strict") ? ", and saving would not change it\n" : "\n");
    return outcome;
}

} // namespace loopwright::cli
