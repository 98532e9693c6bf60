#pragma once
// The printed retune card without a display: what `loopwright-cli card FILE --pdf` asks for.
#include <optional>

namespace loopwright::printing {

/// `loopwright --card OUT.pdf FILE [--paper a4|letter] [--pocket] [--region N] [--vswr S] [--power P]`: does
/// it all, application object included, and returns the exit status (0 done, 1 refused, 2 usage). Nothing
/// where the arguments do not ask for it. To be called first in main.
[[nodiscard]] std::optional<int> run_headless_card(int argc, char** argv);

} // namespace loopwright::printing
