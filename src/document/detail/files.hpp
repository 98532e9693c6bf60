#pragma once
// Files: reading with a limit, replacing in one step.
#include <cstddef>
#include <filesystem>
#include <string>
#include <string_view>

namespace loopwright::document::detail {

/// The content, at most `largest` + 1 bytes of it. Throws base::InputError for what cannot be read.
[[nodiscard]] std::string read_file(const std::filesystem::path& file, std::size_t largest);

/// Replaces or makes the file: a new file beside it is filled, forced to disk and renamed over it; a link is
/// followed, permissions stay. Throws base::InputError; the old file is then as it was and nothing is left
/// behind.
void replace_file(const std::filesystem::path& file, std::string_view content);

} // namespace loopwright::document::detail
