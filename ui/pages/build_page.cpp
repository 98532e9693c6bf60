#include "pages/build_page.hpp"

#include "inputs/tab_order.hpp"
#include "pages/arrangement.hpp"
#include "pages/build_form.hpp"
#include "pages/drawing_view.hpp"
#include "pages/headline_panel.hpp"
#include "settings/measures.hpp"

#include <QCheckBox>
#include <QFrame>
#include <QHBoxLayout>
#include <QScrollArea>
#include <QSplitter>
#include <QVBoxLayout>

namespace loopwright::pages {

namespace {

const QString build_splitter_name = QStringLiteral("build_splitter");

} // namespace

BuildPage::BuildPage(const Context& context, QWidget* parent)
    : QWidget(parent), context_(context), splitter_(new QSplitter(Qt::Horizontal, this)),
      headlines_(new HeadlinePanel(context, this)) {
    auto* row = new QHBoxLayout(this);
    row->setContentsMargins(0, 0, 0, 0);
    row->addWidget(splitter_);
    splitter_->setChildrenCollapsible(false);
    auto* fields = new BuildForm(context, this);
    match_ = &fields->match();
    QScrollArea* form = scrolled(fields, this);
    form->setObjectName(QStringLiteral("build.form"));
    inputs::tab_in_reading_order(form->widget());
    splitter_->addWidget(form);
    splitter_->addWidget(build_drawing());
    splitter_->addWidget(scrolled(headlines_, this));
    splitter_->setStretchFactor(0, 0);
    splitter_->setStretchFactor(1, 1);
    splitter_->setStretchFactor(2, 0);
    splitter_->setSizes({420, 480, 360});
    splitter_->restoreState(context_.settings.window_state(build_splitter_name));
    connect(headlines_, &HeadlinePanel::explanation_wanted, this, &BuildPage::explanation_wanted);
}

QWidget* BuildPage::build_drawing() {
    auto* middle = new QWidget(this);
    auto* column = new QVBoxLayout(middle);
    column->setContentsMargins(0, 0, 0, 0);
    column->setSpacing(0);
    column->addWidget(new DrawingView(context_, middle), 1);
    auto* current = new QCheckBox(tr("Current aroun&d the loop"), middle);
    current->setObjectName(QStringLiteral("drawing.current"));
    current->setAccessibleName(tr("Current around the loop"));
    current->setToolTip(
        tr("Draws the current along the conductor at the frequency in focus: strokes as long as "
           "the current is strong, with numbers. From the full-wave model only."));
    current->setAccessibleDescription(current->toolTip());
    current->setContentsMargins(unit_px, 0, 0, 0);
    column->addWidget(current);
    connect(current, &QCheckBox::clicked, &context_.settings, &settings::Settings::set_current_drawn);
    const auto show = [this, current] {
        current->setChecked(context_.settings.current_drawn());
        current->setEnabled(context_.settings.model() == loop::Model::full_wave);
    };
    connect(&context_.settings, &settings::Settings::current_drawn_changed, current, show);
    connect(&context_.settings, &settings::Settings::model_changed, current, show);
    show();
    return middle;
}

BuildPage::~BuildPage() {
    context_.settings.set_window_state(build_splitter_name, splitter_->saveState());
}

} // namespace loopwright::pages
