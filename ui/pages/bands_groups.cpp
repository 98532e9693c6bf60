// The groups of charts below the band board: a chooser, and one of them at a time.
#include "charts/chart_grid.hpp"
#include "models/model_words.hpp"
#include "pages/bands_board.hpp"
#include "pages/bands_height_view.hpp"
#include "pages/bands_models_view.hpp"
#include "pages/bands_page.hpp"
#include "pages/bands_pattern_view.hpp"
#include "pages/readout_view.hpp"

#include <QStackedWidget>
#include <QTabBar>
#include <QVBoxLayout>

namespace loopwright::pages {

void BandsPage::build_groups(QVBoxLayout& column) {
    tabs_ = new QTabBar(this);
    stack_ = new QStackedWidget(this);
    pattern_ = new PatternView(context_, this);
    height_ = new HeightView(context_, this);
    models_ = new ModelsView(context_, group_, this);
    tabs_->setAccessibleName(tr("Charts"));
    tabs_->setDrawBase(false);
    tabs_->setExpanding(false);
    for (const auto& [text, tip] :
         {std::pair(tr("&Over frequency"), tr("Efficiency, capacitance, voltage, Q, bandwidth, losses")),
          std::pair(tr("&Directions"), tr("Gain over elevation and azimuth at the frequency in focus")),
          std::pair(tr("What hei&ght does"), tr("Where the power goes, over the height of the loop")),
          std::pair(tr("&Two models"), tr("Closed form and full wave beside each other"))}) {
        tabs_->setTabToolTip(tabs_->addTab(text), tip);
    }
    for (QWidget* view : std::initializer_list<QWidget*>{grid_, pattern_, height_, models_}) {
        stack_->addWidget(view);
    }
    column.addWidget(tabs_);
    column.addWidget(readout_view_);
    column.addWidget(stack_, 1);
    connect(tabs_, &QTabBar::currentChanged, this, &BandsPage::show_group);
    for (FocusedView* view : std::initializer_list<FocusedView*>{pattern_, height_}) {
        connect(view, &FocusedView::export_wanted, this, &BandsPage::figure_export_wanted);
        connect(view, &FocusedView::table_export_wanted, this, &BandsPage::figure_table_export_wanted);
        connect(view, &FocusedView::enlarged_changed, this, &BandsPage::give_room);
    }
    for (charts::ChartGrid* grid : {grid_, &models_->grid()}) {
        connect(grid, &charts::ChartGrid::export_wanted, this, &BandsPage::charts_export_wanted);
        connect(grid, &charts::ChartGrid::enlarged_changed, this, &BandsPage::give_room);
    }
    connect(models_, &ModelsView::charts_changed, this, &BandsPage::show_readout_of_group);
}

void BandsPage::show_group(int group) {
    tabs_->setCurrentIndex(group);
    stack_->setCurrentIndex(group);
    readout_view_->setVisible(group == over_frequency || group == two_models);
    show_readout_of_group();
    give_room();
}

/// An enlarged chart has the board's room too.
void BandsPage::give_room() {
    const int group = stack_->currentIndex();
    const bool enlarged = (group == over_frequency && grid_->enlarged() >= 0) ||
                          (group == directions && pattern_->enlarged() >= 0) ||
                          (group == heights && height_->enlarged() >= 0) ||
                          (group == two_models && models_->grid().enlarged() >= 0);
    board_->setVisible(!enlarged);
}

const models::Charts& BandsPage::shown_charts() const {
    return stack_->currentIndex() == two_models ? models_->shown_charts() : charts_;
}

void BandsPage::show_readout_of_group() {
    const auto survey = context_.survey.result();
    if (!survey || !shown_charts()) {
        return;
    }
    if (stack_->currentIndex() == two_models) {
        readout_->set_charts(shown_charts(), models::model_name(loop::Model::full_wave),
                             models::model_name(loop::Model::closed_form));
    } else {
        readout_->set_charts(shown_charts(), title_of(survey->request.design), context_.comparison.name());
    }
    show_readout();
}

} // namespace loopwright::pages
