#pragma once
// What people type, brought to ASCII before it is read.
#include <optional>
#include <string>
#include <string_view>

namespace loopwright::units::detail {

/// The text with trade symbols in ASCII (ohm, u, deg, -, *, /, blanks of any width one blank), outer blanks
/// removed. Nothing where the text is no UTF-8 or holds a character that no quantity has.
[[nodiscard]] std::optional<std::string> to_ascii(std::string_view text);

} // namespace loopwright::units::detail
