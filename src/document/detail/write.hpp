#pragma once
// A design as canonical text.
#include "design/design.hpp"

#include <string>

namespace loopwright::document::detail {

[[nodiscard]] std::string document_text(const design::Design& design);

} // namespace loopwright::document::detail
