// The line above the band board: what the figures are for, and what can be done with them.
#include "models/band_board_model.hpp"
#include "pages/bands_board.hpp"
#include "pages/bands_models_view.hpp"
#include "pages/bands_page.hpp"

#include <QHBoxLayout>
#include <QLabel>
#include <QMenu>
#include <QProgressBar>
#include <QPushButton>
#include <QVBoxLayout>

namespace loopwright::pages {

namespace {
constexpr int progress_px = 120;
} // namespace

void BandsPage::build_head(QVBoxLayout& column) {
    auto* row = new QHBoxLayout;
    conditions_->setTextInteractionFlags(Qt::TextSelectableByMouse);
    row->addWidget(conditions_, 1);
    progress_->setFixedWidth(progress_px);
    progress_->setTextVisible(false);
    progress_->setAccessibleName(tr("Progress of the computation"));
    progress_->hide();
    row->addWidget(progress_);
    auto* compare = new QPushButton(tr("Co&mpare"), this);
    auto* columns = new QPushButton(tr("Co&lumns"), this);
    auto* exports = new QPushButton(tr("Copy and e&xport"), this);
    auto* whole = new QPushButton(tr("&Whole range"), this);
    for (QPushButton* button : {compare, columns, exports, whole}) {
        row->addWidget(button);
    }
    whole->setToolTip(tr("Undo the zoom of the charts"));
    whole->setEnabled(false);
    connect(whole, &QPushButton::clicked, &group_, &charts::ChartGroup::reset_range);
    connect(&group_, &charts::ChartGroup::range_changed, whole,
            [this, whole] { whole->setEnabled(group_.zoomed()); });
    build_menus(*compare, *columns, *exports);
    column.addLayout(row);
    state_->setWordWrap(true);
    state_->hide();
    column.addWidget(state_);
}

void BandsPage::build_menus(QPushButton& compare, QPushButton& columns, QPushButton& exports) {
    compare.setToolTip(tr("Lay a second design over this one"));
    auto* compare_menu = new QMenu(&compare);
    connect(compare_menu, &QMenu::aboutToShow, this,
            [this, compare_menu] { fill_compare_menu(*compare_menu); });
    compare.setMenu(compare_menu);

    exports.setToolTip(tr("Copy the band board, or write board and charts to files"));
    columns.setToolTip(tr("Choose the columns of the band board"));
    auto* columns_menu = new QMenu(&columns);
    connect(columns_menu, &QMenu::aboutToShow, this, [this, columns_menu] {
        columns_menu->clear();
        board_->fill_columns_menu(*columns_menu);
    });
    columns.setMenu(columns_menu);

    auto* menu = new QMenu(&exports);
    menu->addAction(tr("&Copy the selected rows"), board_, &BandsBoard::copy);
    menu->addAction(tr("Export all bands as &CSV…"), this, &BandsPage::table_export_wanted);
    menu->addAction(tr("Export the c&urves as CSV…"), this, &BandsPage::curve_export_wanted);
    QAction* both = menu->addAction(tr("Export the curves of both &models as CSV…"), this, [this] {
        Q_EMIT figure_table_export_wanted(QString::fromStdString(models_->table()), QStringLiteral("models"));
    });
    both->setToolTip(tr("Full wave and closed form row by row, with the reasons where they part; open Two "
                        "models first"));
    menu->setToolTipsVisible(true);
    connect(menu, &QMenu::aboutToShow, both,
            [this, both] { both->setEnabled(models_->shown_charts() != nullptr); });
    menu->addAction(tr("Export c&harts…"), this, [this] { Q_EMIT charts_export_wanted(-1); });
    exports.setMenu(menu);
}

void BandsPage::fill_compare_menu(QMenu& menu) {
    menu.clear();
    menu.addAction(tr("With the design as it is &now"), this,
                   [this] { context_.comparison.set(context_.document.design(), tr("before")); });
    menu.addAction(tr("With a &file…"), this, &BandsPage::comparison_file_wanted);
    QAction* none = menu.addAction(tr("With n&othing"), this, [this] { context_.comparison.clear(); });
    none->setEnabled(context_.comparison.design().has_value());
}

} // namespace loopwright::pages
