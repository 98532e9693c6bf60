#pragma once
// The catalog of generic capacitors that comes with the program.
#include "document/capacitor_catalog.hpp"

#include <vector>

namespace loopwright::pages {

/// Empty where it cannot be read (a test reads it).
[[nodiscard]] const std::vector<document::CatalogCapacitor>& capacitor_catalog();

} // namespace loopwright::pages
