#pragma once
// The keys of a design file's parts: what the reader takes, and where a key belongs that stands elsewhere.
#include <string>
#include <string_view>
#include <vector>

namespace loopwright::document::detail {

/// Of a part by its path ("capacitor.dial"; "" for the document). Throws std::out_of_range for another path.
[[nodiscard]] const std::vector<std::string>& keys_of(const std::string& part);

/// The parts that have the key, in the order of the file: "capacitor.rating".
[[nodiscard]] std::vector<std::string> parts_with(std::string_view key);

} // namespace loopwright::document::detail
