#include "pages/joints_editor.hpp"

#include "inputs/entry.hpp"

#include <QHBoxLayout>
#include <QLabel>
#include <QPushButton>

namespace loopwright::pages {

namespace {

/// What a new kind of joint starts with: a soldered or clamped one; common practice, no source.
constexpr double first_joint_ohm = 0.001;

} // namespace

JointsEditor::JointsEditor(const Context& context, QWidget* parent)
    : PairRows(context,
               {tr("Add &joints"), "joints.add",
                tr("Solder joints, clamps and screws in the conductor that carry the loop's current.")},
               parent) {
    connect(&add_button(), &QPushButton::clicked, this, [this] {
        design::Design next = this->context().document.design();
        next.joints.push_back({1, units::ohms(first_joint_ohm)});
        this->context().document.edit(next, {tr("Add joints"), {}, {}});
        enter_last_row();
    });
    follow_design();
}

QString JointsEditor::summary() const {
    int count = 0;
    units::Resistance sum{};
    for (const design::Joint& joint : context().document.design().joints) {
        count += joint.count;
        sum += joint.resistance.value * static_cast<double>(joint.count);
    }
    return count == 0 ? tr("none")
                      : tr("number: %1, %2 in all").arg(count).arg(QString::fromStdString(units::shown(sum)));
}

void JointsEditor::take(inputs::Entry* entry, std::size_t index, bool is_count, double si,
                        const QString& text) {
    design::Design next = context().document.design();
    design::Joint& joint = next.joints.at(index);
    const design::Joint before = joint;
    if (is_count) {
        joint.count = static_cast<int>(si);
    } else {
        joint.resistance = {units::ohms(si), text.toStdString()};
    }
    const session::EditLabel label =
        is_count ? session::EditLabel{tr("Number of joints"), QString::number(before.count),
                                      QString::number(joint.count)}
                 : session::EditLabel{tr("Joint resistance"), text_of(before.resistance),
                                      text_of(joint.resistance)};
    edit(entry, next, label, QStringLiteral("joints[%1].%2").arg(index).arg(is_count ? 'c' : 'r'));
}

void JointsEditor::remove(std::size_t index) {
    design::Design next = context().document.design();
    next.joints.erase(next.joints.begin() + static_cast<std::ptrdiff_t>(index));
    context().document.edit(next, {tr("Remove joints"), {}, {}});
}

QString JointsEditor::remove_tip() const {
    return tr("Remove these joints");
}

QString JointsEditor::remove_name(std::size_t index) const {
    return tr("Remove joints, kind %1").arg(index + 1);
}

void JointsEditor::fill(Row& row, QHBoxLayout& line, std::size_t index) {
    const std::string path = "joints[" + std::to_string(index) + "]";
    row.first = new inputs::Entry({units::Dimension::number, true}, path + ".count", row.widget);
    row.second = new inputs::Entry({units::Dimension::resistance}, path + ".resistance", row.widget);
    row.first->describe(tr("Number of joints, kind %1").arg(index + 1),
                        tr("How many joints of this kind there are."));
    row.second->describe(
        tr("Resistance of a joint, kind %1").arg(index + 1),
        tr("Resistance of each. A good soldered joint has less than a milliohm, a clamp some."));
    auto* times = new QLabel(tr("of"), row.widget);
    times->setBuddy(&row.second->field());
    line.addWidget(row.first, 1);
    line.addWidget(times);
    line.addWidget(row.second, 2);
    for (inputs::Entry* entry : {row.first, row.second}) {
        connect(&entry->field(), &inputs::QuantityField::edited, this,
                [this, entry, index, is_count = entry == row.first](double si, const QString& text) {
                    take(entry, index, is_count, si, text);
                });
    }
}

void JointsEditor::refresh() {
    const auto& joints = context().document.design().joints;
    fit_rows(joints.size());
    for (std::size_t i = 0; i < joints.size(); ++i) {
        inputs::QuantityField& resistance = rows()[i].second->field();
        resistance.set_unit_system(context().settings.unit_system());
        rows()[i].first->field().set_value(joints[i].count, {});
        resistance.set_value(joints[i].resistance.value.value(),
                             QString::fromStdString(joints[i].resistance.text));
    }
    Q_EMIT refreshed();
}

} // namespace loopwright::pages
