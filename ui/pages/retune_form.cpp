#include "pages/retune_form.hpp"

#include "inputs/fold.hpp"
#include "inputs/tab_order.hpp"
#include "pages/calibration_editor.hpp"
#include "pages/dial_table_editor.hpp"
#include "pages/form_group.hpp"
#include "pages/radio_panel.hpp"
#include "settings/measures.hpp"

#include <QVBoxLayout>

namespace loopwright::pages {

RetuneForm::RetuneForm(const Context& context, QWidget* parent)
    : QWidget(parent), context_(context), column_(new QVBoxLayout(this)),
      calibration_(new CalibrationEditor(context, this)), radio_(new RadioPanel(context, this)) {
    column_->setContentsMargins(unit_px, unit_px, unit_px, unit_px);
    column_->setSpacing(unit_px);
    auto* dial = new QWidget(this);
    auto* rows = new QVBoxLayout(dial);
    rows->setContentsMargins(0, 0, 0, 0);
    const GroupSpec spec = retune_dial_group();
    auto* group = new FormGroup(context_, spec, dial);
    rows->addWidget(group);
    rows->addWidget(new DialTableEditor(context_, dial));
    auto* dial_fold = add_fold(QString::fromStdString(spec.id), spec.title, dial);
    const auto summarise = [dial_fold, group] { dial_fold->set_summary(group->summary()); };
    connect(group, &FormGroup::refreshed, dial_fold, summarise);
    summarise();
    add_fold(QStringLiteral("retune_calibration"), tr("Calibration"), calibration_);
    auto* radio_fold = add_fold(QStringLiteral("retune_radio"), tr("Radio"), radio_);
    const auto say = [this, radio_fold] { radio_fold->set_summary(radio_->summary()); };
    connect(radio_, &RadioPanel::refreshed, radio_fold, say);
    say();
    column_->addStretch();
    inputs::tab_in_reading_order(this);
}

inputs::Fold* RetuneForm::add_fold(const QString& id, const QString& title, QWidget* content) {
    auto* fold = new inputs::Fold(title, content, this);
    fold->set_strong(true);
    fold->setObjectName(QStringLiteral("group.") + id);
    fold->set_unfolded(context_.settings.unfolded(id, true));
    connect(fold, &inputs::Fold::toggled, this,
            [this, id](bool on) { context_.settings.set_unfolded(id, on); });
    column_->addWidget(fold);
    return fold;
}

} // namespace loopwright::pages
