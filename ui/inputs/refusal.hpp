#pragma once
// A refusal as a sentence for beside the field it is about.
#include "base/error.hpp"

#include <QString>

namespace loopwright::inputs {

/// Without the path in the design, which the field itself stands for.
[[nodiscard]] QString refusal_sentence(const base::InputError& error);

} // namespace loopwright::inputs
