#pragma once
// The design file (docs/reference/design-file.md): strict reading, canonical writing, atomic saving.
#include "design/design.hpp"

#include <filesystem>
#include <string>
#include <string_view>

namespace loopwright::document {

/// The design in a text. `name` (file name or "input") stands in front of the messages.
/// Throws base::InputError, one message with path in the document, line, value and what is accepted.
[[nodiscard]] design::Design read_design(std::string_view text, const std::string& name = "input");

/// Canonical text: two-space JSON, fixed order of keys, quantities as typed where they were typed.
[[nodiscard]] std::string write_design(const design::Design& design);

/// Reads a file (at most 1 MiB). Throws base::InputError, also where the file cannot be read.
[[nodiscard]] design::Design load_design(const std::filesystem::path& file);

/// Writes a file so that at every moment either the old or the new content is complete on disk.
/// Throws base::InputError where it cannot; the old file is then untouched.
void save_design(const design::Design& design, const std::filesystem::path& file);

} // namespace loopwright::document
