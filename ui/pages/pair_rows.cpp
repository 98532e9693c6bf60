#include "pages/pair_rows.hpp"

#include "base/error.hpp"
#include "inputs/entry.hpp"
#include "models/quantity_words.hpp"
#include "pages/refusal.hpp"
#include "settings/measures.hpp"

#include <QHBoxLayout>
#include <QPushButton>
#include <QToolButton>
#include <QVBoxLayout>

namespace loopwright::pages {

PairRows::PairRows(const Context& context, const AddButton& add, QWidget* parent)
    : QWidget(parent), context_(context), column_(new QVBoxLayout(this)),
      add_(new QPushButton(add.text, this)) {
    column_->setContentsMargins(unit_px * 2, 0, 0, 0);
    column_->setSpacing(unit_px / 2);
    add_->setObjectName(QLatin1String(add.name));
    add_->setToolTip(add.tip);
    add_->setAccessibleDescription(add.tip);
    auto* foot = new QHBoxLayout;
    foot->addWidget(add_);
    foot->addStretch();
    column_->addLayout(foot);
}

void PairRows::follow_design() {
    connect(&context_.document, &session::Document::design_changed, this, &PairRows::refresh);
    connect(&context_.settings, &settings::Settings::unit_system_changed, this, &PairRows::refresh);
    refresh();
}

QString PairRows::given(double si, units::Dimension dimension) const {
    return models::given_text(si, dimension, context_.settings.unit_system());
}

void PairRows::fit_rows(std::size_t count) {
    while (rows_.size() > count) {
        rows_.back().widget->hide();
        rows_.back().widget->deleteLater();
        rows_.pop_back();
    }
    while (rows_.size() < count) {
        add_row(rows_.size());
    }
}

void PairRows::add_row(std::size_t index) {
    Row row;
    row.widget = new QWidget(this);
    auto* line = new QHBoxLayout(row.widget);
    line->setContentsMargins(0, 0, 0, 0);
    line->setSpacing(unit_px / 2);
    fill(row, *line, index);
    auto* remove_button = new QToolButton(row.widget);
    remove_button->setText(QStringLiteral("\u2212"));
    remove_button->setFocusPolicy(Qt::StrongFocus);
    remove_button->setToolTip(remove_tip());
    remove_button->setAccessibleName(remove_name(index));
    line->addWidget(remove_button);
    for (inputs::Entry* entry : {row.first, row.second}) {
        connect(&entry->field(), &inputs::QuantityField::finished, &context_.document,
                &session::Document::end_merge);
    }
    connect(remove_button, &QToolButton::clicked, this, [this, index] {
        context_.document.end_merge();
        remove(index);
        add_->setFocus(Qt::TabFocusReason);
    });
    column_->insertWidget(static_cast<int>(index), row.widget);
    setTabOrder(&row.first->field(), &row.second->field());
    setTabOrder(&row.second->field(), remove_button);
    setTabOrder(remove_button, add_);
    rows_.push_back(row);
}

void PairRows::edit(inputs::Entry* entry, const design::Design& next, const session::EditLabel& label,
                    const QString& key) {
    try {
        context_.document.edit(next, label, key);
    } catch (const base::InputError& error) {
        entry->field().refuse(refusal_sentence(error));
    }
}

void PairRows::enter_last_row() {
    rows_.back().first->field().setFocus(Qt::TabFocusReason);
    rows_.back().first->field().selectAll();
}

} // namespace loopwright::pages
