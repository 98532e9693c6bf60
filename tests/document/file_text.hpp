#pragma once
// What a file holds, and what reading a text says of it.
#include "base/error.hpp"
#include "document/design_file.hpp"

#include <filesystem>
#include <fstream>
#include <sstream>
#include <string>

namespace loopwright::document {

inline std::string content_of(const std::filesystem::path& file) {
    std::ifstream stream(file, std::ios::binary);
    std::ostringstream content;
    content << stream.rdbuf();
    return content.str();
}

/// The one message, or "accepted".
inline std::string refusal_of(const std::string& text) {
    try {
        (void)read_design(text, "my.loop");
        return "accepted";
    } catch (const base::InputError& error) {
        return error.what();
    }
}

} // namespace loopwright::document
