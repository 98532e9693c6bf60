#include "pages/bands_board.hpp"

#include "models/band_board_model.hpp"
#include "pages/bands_delegate.hpp"

#include <QAbstractButton>
#include <QAction>
#include <QClipboard>
#include <QGuiApplication>
#include <QHeaderView>
#include <QKeyEvent>
#include <QMenu>
#include <QScopedValueRollback>

#include <algorithm>
#include <set>

namespace loopwright::pages {

namespace {
using models::BandBoardModel;
const QString header_name = QStringLiteral("bands_columns");
} // namespace

BandsBoard::BandsBoard(const Context& context, BandBoardModel& model, QWidget* parent)
    : QTableView(parent), context_(context), model_(model), delegate_(new BandsDelegate(this)) {
    setModel(&model_);
    setItemDelegate(delegate_);
    setAccessibleName(tr("Band board: one row a band"));
    setAccessibleDescription(tr("Picking a row puts its band in focus and marks it in the charts."));
    for (auto* corner : findChildren<QAbstractButton*>()) {
        corner->setAccessibleName(tr("Select the whole table"));
        corner->setToolTip(corner->accessibleName());
    }
    setSelectionBehavior(SelectRows);
    setSelectionMode(ExtendedSelection);
    setEditTriggers(NoEditTriggers);
    setTabKeyNavigation(false);
    setShowGrid(false);
    setAlternatingRowColors(true);
    setWordWrap(false);
    setFrameShape(NoFrame);
    verticalHeader()->hide();
    verticalHeader()->setSectionResizeMode(QHeaderView::ResizeToContents);
    horizontalHeader()->setHighlightSections(false);
    horizontalHeader()->setStretchLastSection(false);
    horizontalHeader()->setContextMenuPolicy(Qt::CustomContextMenu);
    restore_columns();
    connect(horizontalHeader(), &QWidget::customContextMenuRequested, this, [this](const QPoint& at) {
        QMenu menu;
        fill_columns_menu(menu);
        menu.exec(horizontalHeader()->mapToGlobal(at));
    });
    connect(&context_.focus, &session::Focus::changed, this, &BandsBoard::follow_focus);
    connect(&model_, &QAbstractItemModel::modelReset, this, [this] {
        fit_columns();
        follow_focus();
    });
    connect(&model_, &QAbstractItemModel::dataChanged, this, &BandsBoard::fit_columns);
    connect(selectionModel(), &QItemSelectionModel::currentRowChanged, this, &BandsBoard::pick_row);
}

BandsBoard::~BandsBoard() {
    context_.settings.set_window_state(header_name, horizontalHeader()->saveState());
}

void BandsBoard::restore_columns() {
    for (const int column : {BandBoardModel::current, BandBoardModel::frequency}) {
        setColumnHidden(column, true);
    }
    horizontalHeader()->restoreState(context_.settings.window_state(header_name));
    horizontalHeader()->setSectionResizeMode(QHeaderView::Interactive);
    horizontalHeader()->setSectionResizeMode(BandBoardModel::words, QHeaderView::Stretch);
    fit_columns();
}

void BandsBoard::fit_columns() {
    for (const int column : {BandBoardModel::compared_efficiency, BandBoardModel::compared_verdict}) {
        setColumnHidden(column, !model_.has_comparison());
    }
    for (int column = 0; column < model_.columnCount(); ++column) {
        // Never narrower than before: columns do not dance while a person types.
        const int wanted = std::max(sizeHintForColumn(column), horizontalHeader()->sectionSizeHint(column));
        if (column != BandBoardModel::words && !isColumnHidden(column) && wanted > columnWidth(column)) {
            setColumnWidth(column, wanted);
        }
    }
}

void BandsBoard::fill_columns_menu(QMenu& menu) {
    for (int column = BandBoardModel::verdict; column < model_.columnCount(); ++column) {
        const bool compared =
            column == BandBoardModel::compared_efficiency || column == BandBoardModel::compared_verdict;
        if (compared && !model_.has_comparison()) {
            continue;
        }
        QAction* action = menu.addAction(model_.column_name(column));
        action->setCheckable(true);
        action->setChecked(!isColumnHidden(column));
        connect(action, &QAction::toggled, this, [this, column](bool shown) {
            setColumnHidden(column, !shown);
            resizeColumnToContents(column);
        });
    }
}

void BandsBoard::set_stale(bool stale) {
    delegate_->set_stale(stale);
    viewport()->update();
}

void BandsBoard::follow_focus() {
    const int row = model_.row_of(context_.focus.band());
    const QScopedValueRollback guard(following_, true);
    if (row < 0) {
        clearSelection();
        setCurrentIndex({});
    } else if (row != currentIndex().row()) {
        setCurrentIndex(model_.index(row, BandBoardModel::band));
    }
}

void BandsBoard::pick_row(const QModelIndex& current) {
    if (const survey::BandRow* row = model_.row_at(current.row()); row != nullptr && !following_) {
        // Not the dial frequency but the one the row is of, so that every page shows the row's numbers.
        context_.focus.set_frequency(row->point.frequency);
    }
}

QString BandsBoard::selected_text() const {
    std::set<int> rows;
    for (const QModelIndex& index : selectionModel()->selectedRows()) {
        rows.insert(index.row());
    }
    if (rows.empty()) {
        for (int row = 0; row < model_.rowCount(); ++row) {
            rows.insert(row);
        }
    }
    QStringList lines;
    const auto line_of = [this](const auto& cell) {
        QStringList cells;
        for (int column = 0; column < model_.columnCount(); ++column) {
            if (!isColumnHidden(column)) {
                cells << cell(column);
            }
        }
        return cells.join(QLatin1Char('\t'));
    };
    lines << line_of([this](int column) { return model_.column_name(column); });
    for (const int row : rows) {
        lines << line_of([&](int column) { return model_.index(row, column).data().toString(); });
    }
    return lines.join(QLatin1Char('\n')) + QLatin1Char('\n');
}

void BandsBoard::copy() {
    QGuiApplication::clipboard()->setText(selected_text());
}

void BandsBoard::keyPressEvent(QKeyEvent* event) {
    if (event->matches(QKeySequence::Copy)) {
        copy();
        event->accept();
        return;
    }
    QTableView::keyPressEvent(event);
}

QSize BandsBoard::sizeHint() const {
    const int height = horizontalHeader()->sizeHint().height() + verticalHeader()->length() + 4;
    return {QTableView::sizeHint().width(), height};
}

} // namespace loopwright::pages
