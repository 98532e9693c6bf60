#include "pages/build_form.hpp"

#include "inputs/fold.hpp"
#include "inputs/tab_order.hpp"
#include "inputs/text_field.hpp"
#include "pages/added_capacitors_editor.hpp"
#include "pages/bands_choice.hpp"
#include "pages/coupling_panel.hpp"
#include "pages/form_group.hpp"
#include "pages/joints_editor.hpp"
#include "pages/line_loss_editor.hpp"
#include "settings/measures.hpp"

#include <QFormLayout>
#include <QLabel>
#include <QVBoxLayout>

namespace loopwright::pages {

BuildForm::BuildForm(const Context& context, QWidget* parent)
    : QWidget(parent), context_(context), column_(new QVBoxLayout(this)) {
    column_->setContentsMargins(unit_px, unit_px, unit_px, unit_px);
    column_->setSpacing(unit_px);
    add_title();
    add_group(loop_group(), true);
    add_group(conductor_group(), true);
    add_joints();
    add_group(capacitor_group(), true);
    add_made_capacitor();
    add_fixed_capacitors();
    add_coupling();
    add_group(site_group(), true);
    FormGroup* station = add_group(station_group(), true);
    auto* bands = new BandsChoice(context_, station);
    station->add_row(tr("Bands"), bands, [](const design::Design&) {});
    column_->addStretch();
}

void BuildForm::add_title() {
    auto* form = new QFormLayout;
    form->setContentsMargins(0, 0, 0, 0);
    form->setHorizontalSpacing(unit_px);
    column_->addLayout(form);
    const auto add = [&](const QString& label, const QString& tooltip, std::string design::Design::*member) {
        auto* field = new inputs::TextField(this);
        field->setAccessibleName(QString(label).remove(QLatin1Char('&')));
        field->setToolTip(tooltip);
        field->setAccessibleDescription(tooltip);
        form->addRow(label, field);
        connect(field, &QLineEdit::textEdited, this, [this, member, label](const QString& text) {
            design::Design next = context_.document.design();
            const QString before = QString::fromStdString(next.*member);
            next.*member = text.toStdString();
            context_.document.edit(next, {QString(label).remove(QLatin1Char('&')), before, text}, label);
        });
        connect(field, &QLineEdit::editingFinished, &context_.document, &session::Document::end_merge);
        const auto show = [this, field, member] {
            field->show_text(QString::fromStdString(context_.document.design().*member));
        };
        connect(&context_.document, &session::Document::design_changed, field, show);
        show();
    };
    add(tr("&Title"), tr("Name of the design, on every printed page and exported picture."),
        &design::Design::title);
    add(tr("Note"), tr("A line of your own about this design."), &design::Design::note);
}

inputs::Fold* BuildForm::add_fold(const std::string& id, const QString& title, QWidget* content,
                                  bool unfolded) {
    auto* fold = new inputs::Fold(title, content, this);
    const QString name = QString::fromStdString(id);
    fold->set_strong(true);
    fold->setObjectName(QStringLiteral("group.") + name);
    fold->set_unfolded(context_.settings.unfolded(name, unfolded));
    connect(fold, &inputs::Fold::toggled, this,
            [this, name](bool on) { context_.settings.set_unfolded(name, on); });
    column_->addWidget(fold);
    return fold;
}

FormGroup* BuildForm::add_group(const GroupSpec& spec, bool unfolded) {
    auto* group = new FormGroup(context_, spec, this);
    inputs::Fold* fold = add_fold(spec.id, spec.title, group, unfolded);
    const auto summarise = [fold, group] { fold->set_summary(group->summary()); };
    connect(group, &FormGroup::refreshed, fold, summarise);
    summarise();
    return group;
}

/// Coupling and feed line are one section: the match depends on both.
void BuildForm::add_coupling() {
    auto* section = new QWidget(this);
    auto* column = new QVBoxLayout(section);
    column->setContentsMargins(0, 0, 0, 0);
    column->setSpacing(unit_px / 2);
    auto* coupling = new FormGroup(context_, coupling_group(), section);
    auto* line = new FormGroup(context_, feed_line_group(), section);
    match_ = new CouplingPanel(context_, section);
    column->addWidget(coupling);
    column->addWidget(line);
    column->addWidget(new LineLossEditor(context_, section));
    column->addWidget(match_);
    inputs::Fold* fold = add_fold("coupling", tr("Coupling and feed line"), section, false);
    const auto show = [this, fold, coupling, line] {
        match_->setVisible(context_.document.design().coupling.has_value());
        fold->set_summary(coupling->summary() + QStringLiteral(", ") + line->summary());
    };
    connect(line, &FormGroup::refreshed, fold, show);
    show();
}

void BuildForm::add_made_capacitor() {
    auto* section = new QWidget(this);
    auto* column = new QVBoxLayout(section);
    column->setContentsMargins(0, 0, 0, 0);
    column->setSpacing(unit_px / 2);
    const GroupSpec spec = made_group();
    auto* group = new FormGroup(context_, spec, section);
    auto* range = new QLabel(section);
    range->setObjectName(QStringLiteral("capacitor.made.range"));
    range->setAccessibleName(tr("Range computed from the dimensions"));
    range->setWordWrap(true);
    range->setContentsMargins(2 * unit_px, 0, 0, 0);
    range->setTextFormat(Qt::PlainText);
    range->setTextInteractionFlags(Qt::TextSelectableByMouse);
    column->addWidget(group);
    column->addWidget(range);
    inputs::Fold* fold =
        add_fold(spec.id, spec.title, section, context_.document.design().capacitor.made.has_value());
    const auto show = [this, fold, group, range] {
        const QString words = made_range_words(context_.document.design());
        range->setText(words);
        range->setVisible(!words.isEmpty());
        fold->set_summary(words.isEmpty() ? group->summary() : words);
    };
    connect(group, &FormGroup::refreshed, fold, show);
    show();
}

void BuildForm::add_fixed_capacitors() {
    auto* editor = new AddedCapacitorsEditor(context_, this);
    const bool unfolded = !context_.document.design().capacitor.added.empty();
    inputs::Fold* fold = add_fold("added", tr("Fixed capacitors"), editor, unfolded);
    const auto summarise = [fold, editor] { fold->set_summary(editor->summary()); };
    connect(editor, &AddedCapacitorsEditor::refreshed, fold, summarise);
    connect(editor, &AddedCapacitorsEditor::rows_changed, this,
            [this] { inputs::tab_in_reading_order(this); });
    summarise();
}

void BuildForm::add_joints() {
    auto* editor = new JointsEditor(context_, this);
    inputs::Fold* fold = add_fold("joints", tr("Joints"), editor, !context_.document.design().joints.empty());
    const auto summarise = [fold, editor] { fold->set_summary(editor->summary()); };
    connect(editor, &JointsEditor::refreshed, fold, summarise);
    summarise();
}

} // namespace loopwright::pages
