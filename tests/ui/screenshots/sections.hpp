#pragma once
// The Coupling section for each kind of coupling, and the dialogs that belong to files and numbers.
#include "app/main_window.hpp"

#include <QString>

namespace loopwright::test {

/// The Build page with the section open, for every kind, with a feed line, at two sizes.
bool save_coupling(app::MainWindow& window, const QString& folder, const QString& scheme);
/// Explanations, export of charts, texts.
bool save_more_dialogs(app::MainWindow& window, const QString& folder, const QString& scheme);

} // namespace loopwright::test
