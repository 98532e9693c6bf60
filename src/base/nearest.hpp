#pragma once
// The word that was meant: for refusals of names and keys.
#include <string>
#include <string_view>
#include <vector>

namespace loopwright::base {

/// The candidate nearest to a word by single-letter changes and exchanges of neighbours, case ignored; empty
/// where none is near (more than a third of the letters, at least two, differ).
[[nodiscard]] std::string nearest(std::string_view word, const std::vector<std::string>& candidates);

/// "a, b or c".
[[nodiscard]] std::string listed(const std::vector<std::string>& words);

} // namespace loopwright::base
