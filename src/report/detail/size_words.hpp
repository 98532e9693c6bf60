#pragma once
// How the size of each kind of coupling is called.
#include "design/design.hpp"

namespace loopwright::report::detail {

struct SizeWords {
    const char* key;      ///< end of a JSON key
    const char* best;     ///< head of a column
    const char* title;    ///< of a section
    const char* coupling; ///< in a sentence
};

[[nodiscard]] SizeWords size_words(design::CouplingKind kind);

} // namespace loopwright::report::detail
