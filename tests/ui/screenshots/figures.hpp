#pragma once
// Figures of a sample by themselves, at their smallest and at a usual size.
#include <QString>

namespace loopwright::test {

/// In light and dark colours whatever the palette; false where a file cannot be written.
[[nodiscard]] bool save_figures(const QString& folder, const QString& scheme);

} // namespace loopwright::test
