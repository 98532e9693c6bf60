#pragma once
// Whether a design can exist: ranges of the fields and the geometry between them.
#include "base/error.hpp"
#include "design/design.hpp"

#include <vector>

namespace loopwright::design {

/// Every refusal of the design, in the order of the document, each with the field's path ("loop.size"), the
/// value and what is accepted. Empty: the design can be computed. Throws nothing.
[[nodiscard]] std::vector<base::InputError> refusals(const Design& design);

/// The same for a capacitor alone ("capacitor.minimum"), as a catalog holds it.
[[nodiscard]] std::vector<base::InputError> refusals(const Capacitor& capacitor);

/// Throws the first of refusals(), if any.
void require_valid(const Design& design);

} // namespace loopwright::design
