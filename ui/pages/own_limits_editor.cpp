#include "pages/own_limits_editor.hpp"

#include "base/error.hpp"
#include "inputs/choice_field.hpp"
#include "inputs/entry.hpp"
#include "inputs/text_field.hpp"
#include "models/quantity_words.hpp"
#include "pages/refusal.hpp"
#include "settings/measures.hpp"

#include <QFormLayout>
#include <QLabel>
#include <QPushButton>
#include <QToolButton>
#include <QVBoxLayout>

namespace loopwright::pages {

namespace {

template <class Quantity>
void show_typed(inputs::QuantityField& field, const units::Typed<Quantity>& typed) {
    field.set_value(typed.value.value(), QString::fromStdString(typed.text));
}

} // namespace

OwnLimitsEditor::OwnLimitsEditor(const Context& context, QWidget* parent)
    : QWidget(parent), context_(context), column_(new QVBoxLayout(this)),
      add_(new QPushButton(tr("Add a limit of your o&wn"), this)) {
    column_->setContentsMargins(2 * unit_px, 0, 0, 0);
    column_->setSpacing(unit_px / 2);
    add_->setObjectName(QStringLiteral("own_limits.add"));
    add_->setToolTip(
        tr("For a local rule that is none of these: its fields, rms, the same at every frequency. "
           "It is checked besides."));
    add_->setAccessibleDescription(add_->toolTip());
    column_->addWidget(add_, 0, Qt::AlignLeft);
    connect(add_, &QPushButton::clicked, this, [this] {
        design::Design next = context_.document.design();
        design::OwnLimit limit;
        const auto number = next.station.own_limits.size() + 1;
        limit.name =
            number == 1 ? tr("Local rule").toStdString() : tr("Local rule %1").arg(number).toStdString();
        next.station.own_limits.push_back(limit);
        try {
            context_.document.edit(next, {tr("Add a limit of your own"), {}, {}});
        } catch (const base::InputError&) {
            return; // as many as there may be
        }
        rows_.back().name->setFocus(Qt::TabFocusReason);
        rows_.back().name->selectAll();
    });
    connect(&context_.document, &session::Document::design_changed, this, &OwnLimitsEditor::refresh);
    connect(&context_.settings, &settings::Settings::unit_system_changed, this, &OwnLimitsEditor::refresh);
    refresh();
}

void OwnLimitsEditor::take(std::size_t index, const QString& what, const QString& before,
                           const QString& after, const char* key, const Change& change,
                           const std::function<void(const QString&)>& refuse) {
    design::Design next = context_.document.design();
    change(next.station.own_limits.at(index));
    try {
        context_.document.edit(next, {what, before, after},
                               QStringLiteral("own_limits[%1].%2").arg(index).arg(QLatin1String(key)));
    } catch (const base::InputError& error) {
        refuse(refusal_sentence(error));
    }
}

void OwnLimitsEditor::remove(std::size_t index) {
    design::Design next = context_.document.design();
    auto& own = next.station.own_limits;
    own.erase(own.begin() + static_cast<std::ptrdiff_t>(index));
    context_.document.end_merge();
    context_.document.edit(next, {tr("Remove a limit of your own"), {}, {}});
    add_->setFocus(Qt::TabFocusReason);
}

void OwnLimitsEditor::add_name(QFormLayout& form, Row& row, std::size_t index) {
    auto* line = new QWidget(row.widget);
    auto* layout = new QHBoxLayout(line);
    layout->setContentsMargins(0, 0, 0, 0);
    layout->setSpacing(unit_px / 2);
    row.name = new inputs::TextField(line);
    row.name->setObjectName(QStringLiteral("own_limits[%1].name").arg(index));
    row.name->setAccessibleName(tr("Name of own limit %1").arg(index + 1));
    row.name->setToolTip(tr("What you call this limit; it stands beside every distance that it asks for."));
    auto* remove_button = new QToolButton(line);
    remove_button->setText(QStringLiteral("\u2212"));
    remove_button->setFocusPolicy(Qt::StrongFocus);
    remove_button->setToolTip(tr("Remove this limit"));
    remove_button->setAccessibleName(tr("Remove own limit %1").arg(index + 1));
    layout->addWidget(row.name, 1);
    layout->addWidget(remove_button);
    auto* label = new QLabel(tr("Name"), row.widget);
    label->setBuddy(row.name);
    form.addRow(label, line);
    connect(row.name, &QLineEdit::textEdited, this, [this, index](const QString& text) {
        const QString before =
            QString::fromStdString(context_.document.design().station.own_limits.at(index).name);
        take(
            index, tr("Name of the limit"), before, text, "name",
            [&text](design::OwnLimit& limit) { limit.name = text.toStdString(); },
            [](const QString&) {}); // an empty name is one that is still being typed
    });
    connect(row.name, &QLineEdit::editingFinished, this, [this] {
        context_.document.end_merge();
        refresh();
    });
    connect(remove_button, &QToolButton::clicked, this, [this, index] { remove(index); });
}

void OwnLimitsEditor::add_tier(QFormLayout& form, Row& row, std::size_t index) {
    row.tier = new inputs::ChoiceField(row.widget);
    row.tier->setObjectName(QStringLiteral("own_limits[%1].tier").arg(index));
    row.tier->addItems({tr("general public"), tr("occupational")});
    row.tier->setAccessibleName(tr("Whom own limit %1 is for").arg(index + 1));
    row.tier->setToolTip(tr("Whom the limit is for. Only those for the general public count for the distance "
                            "that people must keep."));
    auto* label = new QLabel(tr("For"), row.widget);
    label->setBuddy(row.tier);
    form.addRow(label, row.tier);
    connect(row.tier, &inputs::ChoiceField::chosen, this, [this, index, tier = row.tier](int chosen) {
        const auto now = static_cast<int>(context_.document.design().station.own_limits.at(index).tier);
        context_.document.end_merge();
        take(
            index, tr("Whom the limit is for"), tier->itemText(now), tier->itemText(chosen), "tier",
            [chosen](design::OwnLimit& limit) { limit.tier = static_cast<design::LimitTier>(chosen); },
            [](const QString&) {});
    });
}

inputs::Entry*
OwnLimitsEditor::add_entry(QFormLayout& form, std::size_t index, const QString& label, const QString& tooltip,
                           const char* key, units::Dimension dimension,
                           const std::function<void(design::OwnLimit&, double, const std::string&)>& set) {
    const std::string path = "station.own_limits[" + std::to_string(index) + "]." + key;
    auto* entry = new inputs::Entry({dimension}, path, this);
    inputs::QuantityField& field = entry->field();
    field.setObjectName(QStringLiteral("own_limits[%1].%2").arg(index).arg(QLatin1String(key)));
    entry->describe(tr("%1 of own limit %2").arg(label).arg(index + 1), tooltip);
    auto* words = new QLabel(label, this);
    words->setBuddy(&field);
    words->setToolTip(tooltip);
    form.addRow(words, entry);
    connect(&field, &inputs::QuantityField::edited, this,
            [this, index, label, key, set, dimension, &field](double si, const QString& text) {
                const QString before =
                    field.value() ? models::given_text(*field.value(), dimension) : QString();
                take(
                    index, label, before, text, key,
                    [&](design::OwnLimit& limit) { set(limit, si, text.toStdString()); },
                    [&field](const QString& why) { field.refuse(why); });
            });
    connect(&field, &inputs::QuantityField::finished, &context_.document, &session::Document::end_merge);
    return entry;
}

void OwnLimitsEditor::add_row(std::size_t index) {
    Row row;
    row.widget = new QWidget(this);
    auto* form = new QFormLayout(row.widget);
    form->setContentsMargins(0, unit_px / 2, 0, unit_px / 2);
    form->setHorizontalSpacing(unit_px);
    form->setVerticalSpacing(unit_px / 2);
    form->setFieldGrowthPolicy(QFormLayout::AllNonFixedFieldsGrow);
    add_name(*form, row, index);
    row.electric = add_entry(*form, index, tr("Electric field"), tr("Not to be exceeded, rms."), "electric",
                             units::Dimension::electric_field,
                             [](design::OwnLimit& limit, double si, const std::string& text) {
                                 limit.electric = {units::ElectricField::from_value(si), text};
                             });
    row.magnetic = add_entry(*form, index, tr("Magnetic field"), tr("Not to be exceeded, rms."), "magnetic",
                             units::Dimension::magnetic_field,
                             [](design::OwnLimit& limit, double si, const std::string& text) {
                                 limit.magnetic = {units::MagneticField::from_value(si), text};
                             });
    row.averaging = add_entry(
        *form, index, tr("Averaged over"),
        tr("Time that the squares of the fields are averaged over. Empty: the limit holds at every instant."),
        "averaging", units::Dimension::time, [](design::OwnLimit& limit, double si, const std::string& text) {
            limit.averaging = units::Typed<units::Time>(units::seconds(si), text);
        });
    row.averaging->field().set_optional(true, tr("every instant"));
    connect(&row.averaging->field(), &inputs::QuantityField::emptied, this, [this, index] {
        take(
            index, tr("Averaged over"), {}, tr("every instant"), "averaging",
            [](design::OwnLimit& limit) { limit.averaging.reset(); }, [](const QString&) {});
    });
    add_tier(*form, row, index);
    column_->insertWidget(static_cast<int>(index), row.widget);
    rows_.push_back(row);
}

void OwnLimitsEditor::show(const Row& row, const design::OwnLimit& limit) {
    row.name->show_text(QString::fromStdString(limit.name));
    for (inputs::Entry* entry : {row.electric, row.magnetic, row.averaging}) {
        entry->field().set_unit_system(context_.settings.unit_system());
    }
    show_typed(row.electric->field(), limit.electric);
    show_typed(row.magnetic->field(), limit.magnetic);
    if (limit.averaging) {
        show_typed(row.averaging->field(), *limit.averaging);
    } else {
        row.averaging->field().set_nothing();
    }
    row.tier->show_choice(static_cast<int>(limit.tier));
}

void OwnLimitsEditor::refresh() {
    const auto& own = context_.document.design().station.own_limits;
    const std::size_t before = rows_.size();
    while (rows_.size() > own.size()) {
        rows_.back().widget->hide();
        rows_.back().widget->deleteLater();
        rows_.pop_back();
    }
    while (rows_.size() < own.size()) {
        add_row(rows_.size());
    }
    for (std::size_t i = 0; i < own.size(); ++i) {
        show(rows_[i], own[i]);
    }
    if (before != rows_.size()) {
        Q_EMIT rows_changed();
    }
}

} // namespace loopwright::pages
