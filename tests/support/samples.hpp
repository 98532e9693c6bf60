#pragma once
// The invented designs that come with the program.
#include <string>
#include <vector>

namespace loopwright::support {

/// Paths of designs/*.loop, in the order of their names.
[[nodiscard]] std::vector<std::string> samples();

} // namespace loopwright::support
