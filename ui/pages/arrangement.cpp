#include "pages/arrangement.hpp"

#include "settings/measures.hpp"

#include <QScrollArea>
#include <QScrollBar>
#include <QVBoxLayout>

#include <algorithm>

namespace loopwright::pages {

QScrollArea* scrolled(QWidget* content, QWidget* parent) {
    auto* area = new QScrollArea(parent);
    area->setWidget(content);
    area->setWidgetResizable(true);
    area->setFrameShape(QFrame::NoFrame);
    area->setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
    area->setMinimumWidth(content->minimumSizeHint().width() + area->verticalScrollBar()->sizeHint().width());
    return area;
}

QVBoxLayout* page_column(QWidget& page) {
    auto* column = new QVBoxLayout(&page);
    column->setContentsMargins(unit_px, unit_px / 2, unit_px, unit_px / 2);
    column->setSpacing(unit_px / 2);
    return column;
}

void stack(QSplitter& splitter, QWidget* board, QWidget* details) {
    splitter.setChildrenCollapsible(false);
    splitter.addWidget(board);
    splitter.addWidget(details);
    splitter.setStretchFactor(0, 0);
    splitter.setStretchFactor(1, 1);
}

void share_height(QSplitter& splitter, const QWidget& board, double most) {
    const int height = splitter.height();
    const int wanted = std::min(board.sizeHint().height(), static_cast<int>(most * height));
    splitter.setSizes({wanted, height - wanted});
}

} // namespace loopwright::pages
