#include "pages/build_page.hpp"

#include "inputs/tab_order.hpp"
#include "pages/build_form.hpp"
#include "pages/drawing_view.hpp"
#include "pages/headline_panel.hpp"

#include <QFrame>
#include <QHBoxLayout>
#include <QScrollArea>
#include <QSplitter>

namespace loopwright::pages {

namespace {

const QString splitter_name = QStringLiteral("build_splitter");

/// A column that scrolls up and down only.
QScrollArea* scrolled(QWidget* content, QWidget* parent) {
    auto* area = new QScrollArea(parent);
    area->setWidget(content);
    area->setWidgetResizable(true);
    area->setFrameShape(QFrame::NoFrame);
    area->setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
    area->setMinimumWidth(content->minimumSizeHint().width() + 20);
    return area;
}

} // namespace

BuildPage::BuildPage(const Context& context, QWidget* parent)
    : QWidget(parent), context_(context), splitter_(new QSplitter(Qt::Horizontal, this)),
      headlines_(new HeadlinePanel(context, this)) {
    auto* row = new QHBoxLayout(this);
    row->setContentsMargins(0, 0, 0, 0);
    row->addWidget(splitter_);
    splitter_->setChildrenCollapsible(false);
    QScrollArea* form = scrolled(new BuildForm(context, this), this);
    form->setObjectName(QStringLiteral("build.form"));
    inputs::tab_in_reading_order(form->widget());
    splitter_->addWidget(form);
    splitter_->addWidget(new DrawingView(context, this));
    splitter_->addWidget(scrolled(headlines_, this));
    splitter_->setStretchFactor(0, 0);
    splitter_->setStretchFactor(1, 1);
    splitter_->setStretchFactor(2, 0);
    splitter_->setSizes({420, 480, 360});
    splitter_->restoreState(context_.settings.window_state(splitter_name));
    connect(headlines_, &HeadlinePanel::explanation_wanted, this, &BuildPage::explanation_wanted);
}

BuildPage::~BuildPage() {
    context_.settings.set_window_state(splitter_name, splitter_->saveState());
}

} // namespace loopwright::pages
