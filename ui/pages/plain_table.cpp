#include "pages/plain_table.hpp"

#include <QAbstractButton>
#include <QClipboard>
#include <QGuiApplication>
#include <QHeaderView>
#include <QKeyEvent>

#include <set>

namespace loopwright::pages {

void make_plain(QTableView& table, const QString& name, const QString& description) {
    table.setAccessibleName(name);
    table.setAccessibleDescription(description);
    for (auto* corner : table.findChildren<QAbstractButton*>()) {
        corner->setAccessibleName(QTableView::tr("Select the whole table"));
        corner->setToolTip(corner->accessibleName());
    }
    table.setSelectionBehavior(QAbstractItemView::SelectRows);
    table.setEditTriggers(QAbstractItemView::NoEditTriggers);
    table.setTabKeyNavigation(false);
    table.setShowGrid(false);
    table.setAlternatingRowColors(true);
    table.setWordWrap(false);
    table.setFrameShape(QFrame::NoFrame);
    table.verticalHeader()->hide();
    table.verticalHeader()->setSectionResizeMode(QHeaderView::ResizeToContents);
    table.horizontalHeader()->setHighlightSections(false);
}

QString rows_as_text(const QTableView& table) {
    const QAbstractItemModel& model = *table.model();
    std::set<int> rows;
    for (const QModelIndex& index : table.selectionModel()->selectedRows()) {
        rows.insert(index.row());
    }
    const bool none_selected = rows.empty();
    for (int row = 0; none_selected && row < model.rowCount(); ++row) {
        rows.insert(row);
    }
    QStringList lines;
    const auto line_of = [&](const auto& cell) {
        QStringList cells;
        for (int column = 0; column < model.columnCount(); ++column) {
            if (!table.isColumnHidden(column)) {
                cells << QString(cell(column)).replace(QLatin1Char('\n'), QStringLiteral(", "));
            }
        }
        lines << cells.join(QLatin1Char('\t'));
    };
    line_of([&](int column) { return model.headerData(column, Qt::Horizontal).toString(); });
    for (const int row : rows) {
        line_of([&](int column) { return model.index(row, column).data().toString(); });
    }
    return lines.join(QLatin1Char('\n')) + QLatin1Char('\n');
}

PlainTable::PlainTable(models::TextTableModel& model, const QString& name, const QString& description,
                       QWidget* parent)
    : QTableView(parent) {
    setModel(&model);
    make_plain(*this, name, description);
    connect(&model, &QAbstractItemModel::modelReset, this, &QTableView::resizeColumnsToContents);
}

void PlainTable::keyPressEvent(QKeyEvent* event) {
    if (event->matches(QKeySequence::Copy)) {
        QGuiApplication::clipboard()->setText(rows_as_text(*this));
        event->accept();
        return;
    }
    QTableView::keyPressEvent(event);
}

} // namespace loopwright::pages
