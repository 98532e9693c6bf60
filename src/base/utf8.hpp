#pragma once
// UTF-8, byte by byte: the form in which all text enters.
#include <cstddef>
#include <optional>
#include <string>
#include <string_view>

namespace loopwright::base {

/// The character at `at`, which moves behind it. Nothing, and `at` unmoved, where the bytes are no UTF-8
/// (also overlong forms and surrogates). at < text.size().
[[nodiscard]] std::optional<char32_t> next_character(std::string_view text, std::size_t& at);

/// Position of the first byte that is no UTF-8, or nothing.
[[nodiscard]] std::optional<std::size_t> first_bad_byte(std::string_view text);

/// The text for a message: at most `longest` characters, control characters and broken bytes as '?'.
[[nodiscard]] std::string quotable(std::string_view text, std::size_t longest = 60);

} // namespace loopwright::base
