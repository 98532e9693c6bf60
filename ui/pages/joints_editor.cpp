#include "pages/joints_editor.hpp"

#include "base/error.hpp"
#include "inputs/entry.hpp"
#include "pages/refusal.hpp"

#include <QHBoxLayout>
#include <QLabel>
#include <QPushButton>
#include <QToolButton>
#include <QVBoxLayout>

namespace loopwright::pages {

namespace {

constexpr int unit_px = 8;
/// What a new kind of joint starts with: a soldered or clamped one; common practice, no source.
constexpr double first_resistance_ohm = 0.001;

QString count_text(const design::Joint& joint) {
    return QString::number(joint.count);
}

QString resistance_text(const design::Joint& joint) {
    return joint.resistance.text.empty() ? QString::fromStdString(units::canonical(joint.resistance.value))
                                         : QString::fromStdString(joint.resistance.text);
}

} // namespace

JointsEditor::JointsEditor(const Context& context, QWidget* parent)
    : QWidget(parent), context_(context), column_(new QVBoxLayout(this)),
      add_(new QPushButton(tr("Add &joints"), this)) {
    column_->setContentsMargins(unit_px * 2, 0, 0, 0);
    column_->setSpacing(unit_px / 2);
    add_->setObjectName(QStringLiteral("joints.add"));
    add_->setToolTip(tr("Solder joints, clamps and screws in the conductor that carry the loop's current."));
    add_->setAccessibleDescription(add_->toolTip());
    auto* foot = new QHBoxLayout;
    foot->addWidget(add_);
    foot->addStretch();
    column_->addLayout(foot);
    connect(add_, &QPushButton::clicked, this, [this] {
        design::Design next = context_.document.design();
        next.joints.push_back({1, units::ohms(first_resistance_ohm)});
        context_.document.edit(next, {tr("Add joints"), {}, {}});
        rows_.back().count->field().setFocus(Qt::TabFocusReason);
        rows_.back().count->field().selectAll();
    });
    connect(&context_.document, &session::Document::design_changed, this, &JointsEditor::refresh);
    connect(&context_.settings, &settings::Settings::unit_system_changed, this, &JointsEditor::refresh);
    refresh();
}

QString JointsEditor::summary() const {
    int count = 0;
    units::Resistance sum{};
    for (const design::Joint& joint : context_.document.design().joints) {
        count += joint.count;
        sum += joint.resistance.value * static_cast<double>(joint.count);
    }
    return count == 0 ? tr("none")
                      : tr("number: %1, %2 in all").arg(count).arg(QString::fromStdString(units::shown(sum)));
}

void JointsEditor::take(inputs::Entry* entry, std::size_t index, bool is_count, double si,
                        const QString& text) {
    design::Design next = context_.document.design();
    design::Joint& joint = next.joints.at(index);
    const design::Joint before = joint;
    if (is_count) {
        joint.count = static_cast<int>(si);
    } else {
        joint.resistance = {units::ohms(si), text.toStdString()};
    }
    const session::EditLabel label =
        is_count
            ? session::EditLabel{tr("Number of joints"), count_text(before), count_text(joint)}
            : session::EditLabel{tr("Joint resistance"), resistance_text(before), resistance_text(joint)};
    const QString key = QStringLiteral("joints[%1].%2").arg(index).arg(is_count ? 'c' : 'r');
    try {
        context_.document.edit(next, label, key);
    } catch (const base::InputError& error) {
        entry->field().refuse(refusal_sentence(error));
    }
}

void JointsEditor::remove(std::size_t index) {
    design::Design next = context_.document.design();
    next.joints.erase(next.joints.begin() + static_cast<std::ptrdiff_t>(index));
    context_.document.edit(next, {tr("Remove joints"), {}, {}});
    add_->setFocus(Qt::TabFocusReason);
}

void JointsEditor::add_row(std::size_t index) {
    Row row;
    row.widget = new QWidget(this);
    auto* line = new QHBoxLayout(row.widget);
    line->setContentsMargins(0, 0, 0, 0);
    line->setSpacing(unit_px / 2);
    const std::string path = "joints[" + std::to_string(index) + "]";
    row.count = new inputs::Entry({units::Dimension::number, true}, path + ".count", row.widget);
    row.resistance = new inputs::Entry({units::Dimension::resistance}, path + ".resistance", row.widget);
    row.count->describe(tr("Number of joints, kind %1").arg(index + 1),
                        tr("How many joints of this kind there are."));
    row.resistance->describe(
        tr("Resistance of a joint, kind %1").arg(index + 1),
        tr("Resistance of each. A good soldered joint has less than a milliohm, a clamp some."));
    auto* times = new QLabel(tr("of"), row.widget);
    times->setBuddy(&row.resistance->field());
    auto* remove_button = new QToolButton(row.widget);
    remove_button->setText(QStringLiteral("\u2212"));
    remove_button->setFocusPolicy(Qt::StrongFocus);
    remove_button->setToolTip(tr("Remove these joints"));
    remove_button->setAccessibleName(tr("Remove joints, kind %1").arg(index + 1));
    line->addWidget(row.count, 1);
    line->addWidget(times);
    line->addWidget(row.resistance, 2);
    line->addWidget(remove_button);
    connect(&row.count->field(), &inputs::QuantityField::edited, this,
            [this, entry = row.count, index](double si, const QString& text) {
                take(entry, index, true, si, text);
            });
    connect(&row.resistance->field(), &inputs::QuantityField::edited, this,
            [this, entry = row.resistance, index](double si, const QString& text) {
                take(entry, index, false, si, text);
            });
    for (inputs::Entry* entry : {row.count, row.resistance}) {
        connect(&entry->field(), &inputs::QuantityField::finished, &context_.document,
                &session::Document::end_merge);
    }
    connect(remove_button, &QToolButton::clicked, this, [this, index] { remove(index); });
    column_->insertWidget(static_cast<int>(index), row.widget);
    setTabOrder(&row.count->field(), &row.resistance->field());
    setTabOrder(&row.resistance->field(), remove_button);
    setTabOrder(remove_button, add_);
    rows_.push_back(row);
}

void JointsEditor::refresh() {
    const auto& joints = context_.document.design().joints;
    while (rows_.size() > joints.size()) {
        rows_.back().widget->hide();
        rows_.back().widget->deleteLater();
        rows_.pop_back();
    }
    while (rows_.size() < joints.size()) {
        add_row(rows_.size());
    }
    for (std::size_t i = 0; i < joints.size(); ++i) {
        inputs::QuantityField& resistance = rows_[i].resistance->field();
        resistance.set_unit_system(context_.settings.unit_system());
        rows_[i].count->field().set_value(joints[i].count, {});
        resistance.set_value(joints[i].resistance.value.value(),
                             QString::fromStdString(joints[i].resistance.text));
    }
    Q_EMIT refreshed();
}

} // namespace loopwright::pages
