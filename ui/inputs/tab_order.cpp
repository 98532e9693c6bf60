#include "inputs/tab_order.hpp"

#include <QGridLayout>
#include <QLayout>
#include <QWidget>

#include <algorithm>
#include <utility>
#include <vector>

namespace loopwright::inputs {

namespace {

void collect(QWidget* widget, QList<QWidget*>& chain);

void collect(QLayoutItem* item, QList<QWidget*>& chain) {
    if (item->widget() != nullptr) {
        collect(item->widget(), chain);
    } else if (QLayout* layout = item->layout()) {
        std::vector<std::pair<int, QLayoutItem*>> items;
        auto* grid = qobject_cast<QGridLayout*>(layout);
        for (int i = 0; i < layout->count(); ++i) {
            int row = i, column = 0, rows = 0, columns = 0;
            if (grid != nullptr) {
                grid->getItemPosition(i, &row, &column, &rows, &columns);
            }
            items.emplace_back(row * 100 + column, layout->itemAt(i));
        }
        std::stable_sort(items.begin(), items.end(),
                         [](const auto& a, const auto& b) { return a.first < b.first; });
        for (const auto& [place, child] : items) {
            collect(child, chain);
        }
    }
}

void collect(QWidget* widget, QList<QWidget*>& chain) {
    if ((widget->focusPolicy() & Qt::TabFocus) != 0) {
        chain << widget;
    }
    if (widget->layout() != nullptr) {
        collect(static_cast<QLayoutItem*>(widget->layout()), chain);
    }
}

} // namespace

void tab_in_reading_order(QWidget* form) {
    QList<QWidget*> chain;
    collect(form, chain);
    for (qsizetype i = 1; i < chain.size(); ++i) {
        QWidget::setTabOrder(chain[i - 1], chain[i]);
    }
}

} // namespace loopwright::inputs
