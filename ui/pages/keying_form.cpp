#include "pages/keying_form.hpp"

#include "inputs/fold.hpp"
#include "inputs/tab_order.hpp"
#include "pages/form_group.hpp"
#include "pages/limits_choice.hpp"
#include "pages/own_limits_editor.hpp"
#include "settings/measures.hpp"

#include <QLabel>
#include <QVBoxLayout>

namespace loopwright::pages {

KeyingForm::KeyingForm(const Context& context, QWidget* parent)
    : QWidget(parent), context_(context), column_(new QVBoxLayout(this)) {
    column_->setContentsMargins(unit_px, unit_px, unit_px, unit_px);
    column_->setSpacing(unit_px);
    add_group(keying_use_group());
    add_group(keying_people_group());
    add_group(keying_tuning_group());
    add_limits();
    column_->addStretch();
    inputs::tab_in_reading_order(this);
}

void KeyingForm::add_fold(const QString& id, const QString& title, QWidget* content) {
    auto* fold = new inputs::Fold(title, content, this);
    fold->set_strong(true);
    fold->setObjectName(QStringLiteral("group.") + id);
    fold->set_unfolded(context_.settings.unfolded(id, true));
    connect(fold, &inputs::Fold::toggled, this,
            [this, id](bool on) { context_.settings.set_unfolded(id, on); });
    column_->addWidget(fold);
    if (auto* group = qobject_cast<FormGroup*>(content)) {
        const auto summarise = [fold, group] { fold->set_summary(group->summary()); };
        connect(group, &FormGroup::refreshed, fold, summarise);
        summarise();
    }
}

void KeyingForm::add_group(const GroupSpec& spec) {
    add_fold(QString::fromStdString(spec.id), spec.title, new FormGroup(context_, spec, this));
}

void KeyingForm::add_limits() {
    auto* limits = new QWidget(this);
    auto* column = new QVBoxLayout(limits);
    column->setContentsMargins(0, 0, 0, 0);
    column->setSpacing(unit_px / 2);
    auto* words = new QLabel(tr("Check those that apply where you are. Electric and magnetic field are held "
                                "against each."),
                             limits);
    words->setWordWrap(true);
    words->setContentsMargins(2 * unit_px, 0, 0, 0);
    auto* own = new OwnLimitsEditor(context_, limits);
    column->addWidget(words);
    column->addWidget(new LimitsChoice(context_, limits));
    column->addWidget(own);
    connect(own, &OwnLimitsEditor::rows_changed, this, [this] { inputs::tab_in_reading_order(this); });
    add_fold(QStringLiteral("keying_limits"), tr("Limits"), limits);
}

} // namespace loopwright::pages
