#include "pages/line_loss_editor.hpp"

#include "inputs/entry.hpp"

#include <QHBoxLayout>
#include <QLabel>
#include <QPushButton>

#include <algorithm>

namespace loopwright::pages {

namespace {

/// Where the next row starts: a frequency that has none yet; the loss of the row before, which the person
/// replaces.
design::LineLoss next_point(const std::vector<design::LineLoss>& points) {
    design::LineLoss next;
    if (!points.empty()) {
        const auto highest = std::max_element(points.begin(), points.end(), [](const auto& a, const auto& b) {
            return a.frequency.value < b.frequency.value;
        });
        next.frequency = 2.0 * highest->frequency.value;
        next.loss = highest->loss.value;
    }
    return next;
}

} // namespace

LineLossEditor::LineLossEditor(const Context& context, QWidget* parent)
    : PairRows(context,
               {tr("Add loss at a frequency"), "feed_line.add_loss",
                tr("Matched loss of the line per length, as its data sheet prints it (dB/m, dB/100m, "
                   "dB/100ft). One frequency is enough, two are better; between them it follows skin "
                   "effect and dielectric. None: a line without loss.")},
               parent) {
    connect(&add_button(), &QPushButton::clicked, this, &LineLossEditor::add_point);
    follow_design();
}

void LineLossEditor::add_point() {
    design::Design next = context().document.design();
    if (!next.feed_line) {
        return;
    }
    next.feed_line->loss.push_back(next_point(next.feed_line->loss));
    context().document.end_merge();
    context().document.edit(next, {tr("Add loss of the line"), {}, {}});
    enter_last_row();
}

void LineLossEditor::take(inputs::Entry* entry, std::size_t index, bool is_loss, double si,
                          const QString& text) {
    design::Design next = context().document.design();
    design::LineLoss& point = next.feed_line->loss.at(index);
    const design::LineLoss before = point;
    session::EditLabel label;
    if (is_loss) {
        point.loss = {units::DecibelPerMetre{si}, text.toStdString()};
        label = {tr("Loss of the line"), text_of(before.loss), text_of(point.loss)};
    } else {
        point.frequency = {units::hertz(si), text.toStdString()};
        label = {tr("Frequency of the loss"), text_of(before.frequency), text_of(point.frequency)};
    }
    edit(entry, next, label, QStringLiteral("feed_line.loss[%1].%2").arg(index).arg(is_loss ? 'l' : 'f'));
}

void LineLossEditor::remove(std::size_t index) {
    design::Design next = context().document.design();
    auto& points = next.feed_line->loss;
    points.erase(points.begin() + static_cast<std::ptrdiff_t>(index));
    context().document.edit(next, {tr("Remove loss of the line"), {}, {}});
}

QString LineLossEditor::remove_tip() const {
    return tr("Remove this loss");
}

QString LineLossEditor::remove_name(std::size_t index) const {
    return tr("Remove loss of the line, row %1").arg(index + 1);
}

void LineLossEditor::fill(Row& row, QHBoxLayout& line, std::size_t index) {
    const std::string path = "feed_line.loss[" + std::to_string(index) + "]";
    row.first = new inputs::Entry({units::Dimension::loss_per_length}, path + ".loss", row.widget);
    row.second = new inputs::Entry({units::Dimension::frequency}, path + ".frequency", row.widget);
    const auto add = [&](inputs::Entry* entry, const QString& label, const QString& name, const QString& tip,
                         bool is_loss) {
        entry->field().setObjectName(QString::fromStdString(entry->field().where()));
        entry->describe(name, tip);
        auto* text = new QLabel(label, row.widget);
        text->setBuddy(&entry->field());
        line.addWidget(text);
        line.addWidget(entry, 1);
        connect(&entry->field(), &inputs::QuantityField::edited, this,
                [this, entry, index, is_loss](double si, const QString& typed) {
                    take(entry, index, is_loss, si, typed);
                });
    };
    add(row.first, tr("Loss"), tr("Loss of the line, row %1").arg(index + 1),
        tr("Matched loss per length at the frequency beside it."), true);
    add(row.second, tr("at"), tr("Frequency of the loss, row %1").arg(index + 1),
        tr("The frequency that the data sheet gives this loss for."), false);
}

void LineLossEditor::refresh() {
    const auto& line = context().document.design().feed_line;
    setVisible(line.has_value());
    const std::vector<design::LineLoss> points = line ? line->loss : std::vector<design::LineLoss>{};
    fit_rows(points.size());
    for (std::size_t i = 0; i < points.size(); ++i) {
        inputs::QuantityField& loss = rows()[i].first->field();
        inputs::QuantityField& frequency = rows()[i].second->field();
        loss.set_unit_system(context().settings.unit_system());
        loss.set_value(points[i].loss.value.dB_per_m, QString::fromStdString(points[i].loss.text));
        frequency.set_value(points[i].frequency.value.value(),
                            QString::fromStdString(points[i].frequency.text));
    }
}

} // namespace loopwright::pages
