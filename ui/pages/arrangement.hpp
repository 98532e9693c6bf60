#pragma once
// How pages are put together: a column that scrolls, a board above what belongs to its row.
#include <QSplitter>

class QScrollArea;
class QVBoxLayout;

namespace loopwright::pages {

/// A column that scrolls up and down only.
[[nodiscard]] QScrollArea* scrolled(QWidget* content, QWidget* parent);

/// The column of a page, with its margins.
[[nodiscard]] QVBoxLayout* page_column(QWidget& page);

/// Board above, details below; the details take the room that is left.
void stack(QSplitter& splitter, QWidget* board, QWidget* details);

/// The whole board, unless it takes more than `most` of the height.
void share_height(QSplitter& splitter, const QWidget& board, double most);

} // namespace loopwright::pages
