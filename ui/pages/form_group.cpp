#include "pages/form_group.hpp"

#include "base/error.hpp"
#include "inputs/choice_field.hpp"
#include "inputs/entry.hpp"
#include "inputs/fold.hpp"
#include "pages/refusal.hpp"
#include "settings/measures.hpp"

#include <QCheckBox>
#include <QFormLayout>
#include <QLabel>
#include <QToolButton>
#include <QVBoxLayout>

#include <utility>

namespace loopwright::pages {

namespace {

QFormLayout* new_form(QWidget* parent) {
    auto* form = new QFormLayout(parent);
    form->setContentsMargins(unit_px * 2, 0, 0, 0);
    form->setHorizontalSpacing(unit_px);
    form->setVerticalSpacing(unit_px / 2);
    form->setFieldGrowthPolicy(QFormLayout::AllNonFixedFieldsGrow);
    form->setLabelAlignment(Qt::AlignLeft | Qt::AlignVCenter);
    return form;
}

} // namespace

FormGroup::FormGroup(const Context& context, const GroupSpec& spec, QWidget* parent)
    : QWidget(parent), context_(context), id_(spec.id) {
    auto* column = new QVBoxLayout(this);
    column->setContentsMargins(0, 0, 0, 0);
    column->setSpacing(unit_px / 2);
    auto* main = new QWidget(this);
    main_ = new_form(main);
    column->addWidget(main);
    auto* rare = new QWidget(this);
    rare_ = new_form(rare);
    fold_ = new inputs::Fold(tr("More"), rare, this);
    fold_->header().setAccessibleName(tr("More of %1").arg(spec.title));
    column->addWidget(fold_);
    for (const auto& field : spec.fields) {
        std::visit([this](const auto& one) { add(one); }, field);
    }
    fold_->set_unfolded(
        context_.settings.unfolded(QString::fromStdString(id_) + QStringLiteral("/more"), false));
    connect(fold_, &inputs::Fold::toggled, this, [this](bool on) {
        context_.settings.set_unfolded(QString::fromStdString(id_) + QStringLiteral("/more"), on);
    });
    connect(&context_.document, &session::Document::design_changed, this, &FormGroup::refresh);
    connect(&context_.settings, &settings::Settings::unit_system_changed, this, &FormGroup::refresh);
    refresh();
}

void FormGroup::add_row(const QString& label, QWidget* widget,
                        std::function<void(const design::Design&)> refresh) {
    main_->addRow(label, widget);
    refresh(context_.document.design());
    refreshes_.push_back(std::move(refresh));
}

QString FormGroup::plain_label(const FieldWords& words) const {
    QString label = words.label_for ? words.label_for(context_.document.design()) : words.label;
    return label.remove(QLatin1Char('&'));
}

QString FormGroup::spoken(const FieldWords& words) const {
    return words.spoken.isEmpty() ? plain_label(words) : words.spoken;
}

QString FormGroup::shown_text(const QuantitySpec& spec, const design::Design& design) const {
    const auto reading = spec.get(design);
    if (!reading) {
        return spec.placeholder;
    }
    return reading->text.isEmpty()
               ? models::given_text(reading->si, spec.kind.dimension, context_.settings.unit_system())
               : reading->text;
}

void FormGroup::apply(const design::Design& next, const session::EditLabel& label, const std::string& path,
                      const std::function<void(const QString&)>& refuse) {
    try {
        context_.document.edit(next, label, QString::fromStdString(path));
    } catch (const base::InputError& error) {
        refuse(refusal_sentence(error));
    }
}

void FormGroup::take(inputs::QuantityField& field, const QuantitySpec& spec, double si, const QString& text) {
    design::Design next = context_.document.design();
    spec.set(next, si, text.toStdString());
    const session::EditLabel label{plain_label(spec.words), shown_text(spec, context_.document.design()),
                                   shown_text(spec, next)};
    apply(next, label, spec.words.path, [&field](const QString& why) { field.refuse(why); });
}

void FormGroup::add(const QuantitySpec& spec) {
    auto* entry = new inputs::Entry(spec.kind, spec.words.path, this);
    inputs::QuantityField& field = entry->field();
    field.setObjectName(QString::fromStdString(spec.words.path));
    entry->describe(spoken(spec.words), spec.words.tooltip);
    field.set_optional(static_cast<bool>(spec.unset), spec.placeholder);
    connect(&field, &inputs::QuantityField::edited, this,
            [this, spec, &field](double si, const QString& text) { take(field, spec, si, text); });
    connect(&field, &inputs::QuantityField::finished, &context_.document, &session::Document::end_merge);
    if (spec.unset) {
        connect(&field, &inputs::QuantityField::emptied, this, [this, spec] {
            design::Design next = context_.document.design();
            const QString before = shown_text(spec, next);
            spec.unset(next);
            apply(next, {plain_label(spec.words), before, shown_text(spec, next)}, spec.words.path,
                  [](const QString&) {});
        });
    }
    Row row{nullptr, entry, nullptr, spec.words, {}, {}};
    row.show = [this, entry, spec](const design::Design& design) {
        entry->describe(spoken(spec.words), spec.words.tooltip);
        entry->field().set_unit_system(context_.settings.unit_system());
        if (const auto reading = spec.get(design)) {
            entry->field().set_value(reading->si, reading->text);
        } else {
            entry->field().set_nothing();
        }
    };
    row.summary = [this, spec](const design::Design& design) { return shown_text(spec, design); };
    place(std::move(row), &field);
}

void FormGroup::add(const ChoiceSpec& spec) {
    auto* field = new QWidget(this);
    auto* choice = new inputs::ChoiceField(field);
    auto* refusal = new QLabel(field);
    auto* column = new QVBoxLayout(field);
    column->setContentsMargins(0, 0, 0, 0);
    column->setSpacing(2);
    column->addWidget(choice);
    column->addWidget(refusal);
    refusal->setWordWrap(true);
    refusal->setTextFormat(Qt::PlainText);
    refusal->setTextInteractionFlags(Qt::TextSelectableByMouse);
    refusal->hide();
    choice->setObjectName(QString::fromStdString(spec.words.path));
    connect(choice, &inputs::ChoiceField::chosen, this, [this, spec, choice, refusal](int index) {
        const design::Design& now = context_.document.design();
        design::Design next = now;
        spec.set(next, index);
        const session::EditLabel label{plain_label(spec.words), spec.options(now).value(spec.get(now)),
                                       spec.options(next).value(spec.get(next))};
        context_.document.end_merge();
        choice->show_choice(spec.get(now)); // until the design says otherwise
        refusal->hide();
        apply(next, label, {}, [this, spec, choice, refusal](const QString& why) {
            choice->show_choice(spec.get(context_.document.design()));
            refusal->setText(why);
            refusal->show();
        });
    });
    Row row{nullptr, field, nullptr, spec.words, {}, {}};
    row.show = [choice, refusal, spec](const design::Design& design) {
        refusal->hide(); // it was of another state
        const QStringList options = spec.options(design);
        if (choice->count() != options.size() || choice->itemText(0) != options.value(0)) {
            choice->clear();
            choice->addItems(options);
        }
        choice->show_choice(spec.get(design));
        choice->setToolTip(spec.words.tooltip);
    };
    row.summary = [spec](const design::Design& design) {
        return spec.options(design).value(spec.get(design));
    };
    place(std::move(row), choice);
}

void FormGroup::add(const CheckSpec& spec) {
    auto* check = new QCheckBox(spec.words.label, this);
    check->setObjectName(QString::fromStdString(spec.words.path));
    connect(check, &QCheckBox::clicked, this, [this, spec](bool on) {
        design::Design next = context_.document.design();
        spec.set(next, on);
        context_.document.end_merge();
        apply(next, {plain_label(spec.words), on ? tr("no") : tr("yes"), on ? tr("yes") : tr("no")}, {},
              [this](const QString& /*why*/) { refresh(); });
    });
    Row row{nullptr, check, nullptr, spec.words, {}, {}};
    row.show = [check, spec](const design::Design& design) { check->setChecked(spec.get(design)); };
    row.summary = [spec](const design::Design& design) { return spec.get(design) ? tr("yes") : tr("no"); };
    place(std::move(row), check);
}

void FormGroup::place(Row row, QWidget* buddy) {
    row.form = row.words.rare ? rare_ : main_;
    buddy->setToolTip(row.words.tooltip);
    buddy->setAccessibleName(spoken(row.words));
    buddy->setAccessibleDescription(row.words.tooltip);
    if (qobject_cast<QCheckBox*>(buddy) != nullptr) {
        row.form->addRow(QString(), row.field);
    } else {
        row.label = new QLabel(row.words.label, this);
        row.label->setBuddy(buddy);
        row.label->setToolTip(row.words.tooltip);
        row.form->addRow(row.label, row.field);
    }
    rows_.push_back(std::move(row));
}

QString FormGroup::summary() const {
    const design::Design& design = context_.document.design();
    QStringList parts;
    for (const Row& row : rows_) {
        if (!row.words.rare && (!row.words.applies || row.words.applies(design))) {
            parts << QStringLiteral("%1: %2").arg(plain_label(row.words), row.summary(design));
        }
    }
    return parts.join(QStringLiteral(", "));
}

void FormGroup::refresh() {
    const design::Design& design = context_.document.design();
    QStringList folded;
    for (Row& row : rows_) {
        const bool applies = !row.words.applies || row.words.applies(design);
        row.form->setRowVisible(row.field, applies);
        if (!applies) {
            continue;
        }
        if (row.label != nullptr && row.words.label_for) {
            row.label->setText(row.words.label_for(design));
        }
        row.show(design);
        if (row.words.rare) {
            folded << QStringLiteral("%1: %2").arg(plain_label(row.words), row.summary(design));
        }
    }
    for (const auto& refresh : refreshes_) {
        refresh(design);
    }
    fold_->setVisible(!folded.isEmpty());
    fold_->set_summary(folded.join(QStringLiteral(", ")));
    Q_EMIT refreshed();
}

} // namespace loopwright::pages
