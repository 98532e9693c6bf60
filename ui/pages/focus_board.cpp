#include "pages/focus_board.hpp"

#include "pages/bands_delegate.hpp"
#include "pages/plain_table.hpp"

#include <QClipboard>
#include <QGuiApplication>
#include <QHeaderView>
#include <QKeyEvent>
#include <QScopedValueRollback>

#include <algorithm>

namespace loopwright::pages {

FocusBoard::FocusBoard(const Context& context, QAbstractItemModel& model, QWidget* parent)
    : QTableView(parent), context_(context), delegate_(new BandsDelegate(this)) {
    setModel(&model);
    setItemDelegate(delegate_);
    connect(&context_.focus, &session::Focus::changed, this, &FocusBoard::follow_focus);
    connect(selectionModel(), &QItemSelectionModel::currentRowChanged, this, &FocusBoard::pick_row);
}

void FocusBoard::set_stale(bool stale) {
    delegate_->set_stale(stale);
    viewport()->update();
}

void FocusBoard::follow_focus() {
    const int row = row_of(context_.focus.band());
    const QScopedValueRollback guard(following_, true);
    if (row < 0) {
        clearSelection();
        setCurrentIndex({});
    } else if (row != currentIndex().row()) {
        setCurrentIndex(model()->index(row, 0));
    }
}

void FocusBoard::pick_row(const QModelIndex& current) {
    if (const auto frequency = frequency_at(current.row()); frequency && !following_) {
        context_.focus.set_frequency(*frequency);
    }
}

int FocusBoard::wanted_width(int column) const {
    return std::max(sizeHintForColumn(column), horizontalHeader()->sectionSizeHint(column));
}

QString FocusBoard::selected_text() const {
    return rows_as_text(*this);
}

void FocusBoard::copy() {
    QGuiApplication::clipboard()->setText(selected_text());
}

void FocusBoard::keyPressEvent(QKeyEvent* event) {
    if (event->matches(QKeySequence::Copy)) {
        copy();
        event->accept();
        return;
    }
    QTableView::keyPressEvent(event);
}

} // namespace loopwright::pages
