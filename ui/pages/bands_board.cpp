#include "pages/bands_board.hpp"

#include "models/band_board_model.hpp"
#include "pages/plain_table.hpp"

#include <QAction>
#include <QHeaderView>
#include <QMenu>

namespace loopwright::pages {

namespace {
using models::BandBoardModel;
const QString header_name = QStringLiteral("bands_columns_3");
} // namespace

BandsBoard::BandsBoard(const Context& context, BandBoardModel& model, QWidget* parent)
    : FocusBoard(context, model, parent), model_(model) {
    make_plain(*this, tr("Band board: one row a band"),
               tr("Picking a row puts its band in focus and marks it in the charts."));
    setSelectionMode(ExtendedSelection);
    setWordWrap(true); // rows are as high as their words need
    connect(horizontalHeader(), &QHeaderView::sectionResized, this, [this](int column) {
        if (column == BandBoardModel::words) {
            QMetaObject::invokeMethod(this, &QTableView::resizeRowsToContents, Qt::QueuedConnection);
        }
    });
    horizontalHeader()->setStretchLastSection(false);
    horizontalHeader()->setContextMenuPolicy(Qt::CustomContextMenu);
    restore_columns();
    connect(horizontalHeader(), &QWidget::customContextMenuRequested, this, [this](const QPoint& at) {
        QMenu menu;
        fill_columns_menu(menu);
        menu.exec(horizontalHeader()->mapToGlobal(at));
    });
    connect(&model_, &QAbstractItemModel::modelReset, this, [this] {
        fit_columns(!own_widths_);
        follow_focus();
    });
    connect(&model_, &QAbstractItemModel::dataChanged, this, [this] { fit_columns(); });
}

BandsBoard::~BandsBoard() {
    context().settings.set_window_state(header_name, horizontalHeader()->saveState());
}

void BandsBoard::restore_columns() {
    for (const int column : {BandBoardModel::gain, BandBoardModel::current, BandBoardModel::frequency}) {
        setColumnHidden(column, true);
    }
    own_widths_ = horizontalHeader()->restoreState(context().settings.window_state(header_name));
    horizontalHeader()->setSectionResizeMode(QHeaderView::Interactive);
    horizontalHeader()->setSectionResizeMode(BandBoardModel::words, QHeaderView::Stretch);
    fit_columns();
}

/// anew: narrower too, so that the words have what the figures do not need.
void BandsBoard::fit_columns(bool anew) {
    for (const int column : {BandBoardModel::compared_efficiency, BandBoardModel::compared_verdict}) {
        setColumnHidden(column, !model_.has_comparison());
    }
    for (int column = 0; column < model_.columnCount(); ++column) {
        // Never narrower than before: columns do not dance while a person types.
        const int wanted = wanted_width(column);
        if (column != BandBoardModel::words && !isColumnHidden(column) &&
            (anew || wanted > columnWidth(column))) {
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

int BandsBoard::row_of(const QString& band) const {
    return model_.row_of(band);
}

std::optional<units::Frequency> BandsBoard::frequency_at(int row) const {
    const survey::BandRow* band = model_.row_at(row);
    return band == nullptr ? std::nullopt : std::optional(band->point.frequency);
}

QSize BandsBoard::sizeHint() const {
    const int height = horizontalHeader()->sizeHint().height() + verticalHeader()->length() + 4;
    return {FocusBoard::sizeHint().width(), height};
}

} // namespace loopwright::pages
