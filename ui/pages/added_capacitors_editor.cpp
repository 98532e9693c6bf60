#include "pages/added_capacitors_editor.hpp"

#include "inputs/quantity_field.hpp"
#include "models/quantity_words.hpp"
#include "pages/form_group.hpp"
#include "settings/measures.hpp"

#include <QHBoxLayout>
#include <QLabel>
#include <QPushButton>
#include <QToolButton>
#include <QVBoxLayout>

namespace loopwright::pages {

namespace {
constexpr std::size_t most = 20; ///< as the design allows
} // namespace

AddedCapacitorsEditor::AddedCapacitorsEditor(const Context& context, QWidget* parent)
    : QWidget(parent), context_(context), column_(new QVBoxLayout(this)),
      add_(new QPushButton(tr("Add fi&xed capacitor"), this)) {
    column_->setContentsMargins(2 * unit_px, 0, 0, 0);
    column_->setSpacing(unit_px / 2);
    add_->setObjectName(QStringLiteral("added.add"));
    add_->setToolTip(tr("A fixed capacitor across the loop's ends reaches lower bands, one in series spreads "
                        "the range and shares the voltage. Each has a rating and a loss of its own."));
    add_->setAccessibleDescription(add_->toolTip());
    column_->addWidget(add_, 0, Qt::AlignLeft);
    connect(add_, &QPushButton::clicked, this, &AddedCapacitorsEditor::add_capacitor);
    connect(&context_.document, &session::Document::design_changed, this, &AddedCapacitorsEditor::refresh);
    refresh();
}

QString AddedCapacitorsEditor::summary() const {
    QStringList parts;
    for (const design::AddedCapacitor& each : context_.document.design().capacitor.added) {
        parts << (each.connection == design::AddedConnection::parallel ? tr("%1 across the loop's ends")
                                                                       : tr("%1 in series"))
                     .arg(models::short_text(each.capacitance));
    }
    return parts.isEmpty() ? tr("none") : parts.join(QStringLiteral(", "));
}

void AddedCapacitorsEditor::add_capacitor() {
    design::Design next = context_.document.design();
    const std::size_t index = next.capacitor.added.size();
    next.capacitor.added.emplace_back();
    context_.document.end_merge();
    context_.document.edit(next, {tr("Add fixed capacitor"), {}, {}});
    auto* first =
        findChild<inputs::QuantityField*>(QStringLiteral("capacitor.added[%1].capacitance").arg(index));
    if (first != nullptr) {
        first->setFocus(Qt::TabFocusReason);
        first->selectAll();
    }
}

void AddedCapacitorsEditor::remove(std::size_t index) {
    design::Design next = context_.document.design();
    auto& added = next.capacitor.added;
    added.erase(added.begin() + static_cast<std::ptrdiff_t>(index));
    context_.document.end_merge();
    context_.document.edit(next, {tr("Remove fixed capacitor"), {}, {}});
    add_->setFocus(Qt::TabFocusReason);
}

void AddedCapacitorsEditor::add_row() {
    const std::size_t index = rows_.size();
    auto* row = new QWidget(this);
    auto* column = new QVBoxLayout(row);
    column->setContentsMargins(0, 0, 0, unit_px / 2);
    column->setSpacing(unit_px / 2);
    auto* head = new QHBoxLayout;
    head->addWidget(new QLabel(tr("Fixed capacitor %1").arg(index + 1), row));
    head->addStretch();
    auto* button = new QToolButton(row);
    button->setText(QStringLiteral("\u2212"));
    button->setFocusPolicy(Qt::StrongFocus);
    button->setObjectName(QStringLiteral("added.remove[%1]").arg(index));
    button->setToolTip(tr("Remove this capacitor"));
    button->setAccessibleName(tr("Remove fixed capacitor %1").arg(index + 1));
    connect(button, &QToolButton::clicked, this, [this, index] { remove(index); });
    head->addWidget(button);
    column->addLayout(head);
    column->addWidget(new FormGroup(context_, added_capacitor_group(index), row));
    column_->insertWidget(static_cast<int>(index), row);
    row->show(); // now, so that a field of it can take the focus
    rows_.push_back(row);
}

void AddedCapacitorsEditor::refresh() {
    const std::size_t wanted = context_.document.design().capacitor.added.size();
    const std::size_t before = rows_.size();
    while (rows_.size() > wanted) {
        rows_.back()->hide();
        rows_.back()->deleteLater();
        rows_.pop_back();
    }
    while (rows_.size() < wanted) {
        add_row();
    }
    add_->setEnabled(wanted < most);
    if (before != wanted) {
        Q_EMIT rows_changed();
    }
    Q_EMIT refreshed();
}

} // namespace loopwright::pages
