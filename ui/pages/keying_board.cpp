#include "pages/keying_board.hpp"

#include "models/keying_board_model.hpp"
#include "pages/bands_delegate.hpp"
#include "pages/plain_table.hpp"

#include <QClipboard>
#include <QGuiApplication>
#include <QHeaderView>
#include <QKeyEvent>
#include <QScopedValueRollback>

#include <algorithm>

namespace loopwright::pages {

using models::KeyingBoardModel;

KeyingBoard::KeyingBoard(const Context& context, KeyingBoardModel& model, QWidget* parent)
    : QTableView(parent), context_(context), model_(model), delegate_(new BandsDelegate(this)) {
    setObjectName(QStringLiteral("keying.board"));
    setModel(&model_);
    setItemDelegate(delegate_);
    make_plain(
        *this, tr("Before keying: one row a band"),
        tr("Picking a row puts its band in focus and shows its reasons, distances and pictures below."));
    setSelectionMode(SingleSelection);
    setHorizontalScrollMode(ScrollPerPixel);
    connect(&context_.focus, &session::Focus::changed, this, &KeyingBoard::follow_focus);
    connect(&model_, &QAbstractItemModel::modelReset, this, [this] {
        fit_columns(true);
        follow_focus();
    });
    connect(&model_, &QAbstractItemModel::dataChanged, this, [this] { fit_columns(false); });
    connect(selectionModel(), &QItemSelectionModel::currentRowChanged, this, &KeyingBoard::pick_row);
}

void KeyingBoard::fit_columns(bool anew) {
    for (int column = 0; column < model_.columnCount(); ++column) {
        // Never narrower than before: columns do not dance while a person types.
        const int wanted = std::max(sizeHintForColumn(column), horizontalHeader()->sectionSizeHint(column));
        if (anew || wanted > columnWidth(column)) {
            setColumnWidth(column, wanted);
        }
    }
}

void KeyingBoard::set_stale(bool stale) {
    delegate_->set_stale(stale);
    viewport()->update();
}

void KeyingBoard::follow_focus() {
    const int row = model_.row_of(context_.focus.band());
    const QScopedValueRollback guard(following_, true);
    if (row < 0) {
        clearSelection();
        setCurrentIndex({});
    } else if (row != currentIndex().row()) {
        setCurrentIndex(model_.index(row, KeyingBoardModel::band_column));
    }
}

void KeyingBoard::pick_row(const QModelIndex& current) {
    if (const survey::KeyingBand* row = model_.row_at(current.row()); row != nullptr && !following_) {
        context_.focus.set_frequency(row->point.frequency);
    }
}

void KeyingBoard::keyPressEvent(QKeyEvent* event) {
    if (event->matches(QKeySequence::Copy)) {
        QGuiApplication::clipboard()->setText(rows_as_text(*this));
        event->accept();
        return;
    }
    QTableView::keyPressEvent(event);
}

QSize KeyingBoard::sizeHint() const {
    const int height = horizontalHeader()->sizeHint().height() + verticalHeader()->length() + 18;
    return {QTableView::sizeHint().width(), height};
}

} // namespace loopwright::pages
