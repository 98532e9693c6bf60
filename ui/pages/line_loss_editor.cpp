#include "pages/line_loss_editor.hpp"

#include "base/error.hpp"
#include "inputs/entry.hpp"
#include "pages/refusal.hpp"

#include <QHBoxLayout>
#include <QLabel>
#include <QPushButton>
#include <QToolButton>
#include <QVBoxLayout>

#include <algorithm>

namespace loopwright::pages {

namespace {

constexpr int unit_px = 8;

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

template <class Quantity>
QString text_of(const units::Typed<Quantity>& typed, units::UnitSystem system) {
    return typed.text.empty()
               ? models::given_text(typed.value.value(), units::DimensionOf<Quantity>::value, system)
               : QString::fromStdString(typed.text);
}

} // namespace

LineLossEditor::LineLossEditor(const Context& context, QWidget* parent)
    : QWidget(parent), context_(context), column_(new QVBoxLayout(this)),
      add_(new QPushButton(tr("Add loss at a frequency"), this)) {
    column_->setContentsMargins(unit_px * 2, 0, 0, 0);
    column_->setSpacing(unit_px / 2);
    add_->setObjectName(QStringLiteral("feed_line.add_loss"));
    add_->setToolTip(tr("Matched loss of the line per length, as its data sheet prints it (dB/m, dB/100m, "
                        "dB/100ft). One frequency is enough, two are better; between them it follows skin "
                        "effect and dielectric. None: a line without loss."));
    add_->setAccessibleDescription(add_->toolTip());
    auto* foot = new QHBoxLayout;
    foot->addWidget(add_);
    foot->addStretch();
    column_->addLayout(foot);
    connect(add_, &QPushButton::clicked, this, &LineLossEditor::add_point);
    connect(&context_.document, &session::Document::design_changed, this, &LineLossEditor::refresh);
    connect(&context_.settings, &settings::Settings::unit_system_changed, this, &LineLossEditor::refresh);
    refresh();
}

void LineLossEditor::add_point() {
    design::Design next = context_.document.design();
    if (!next.feed_line) {
        return;
    }
    next.feed_line->loss.push_back(next_point(next.feed_line->loss));
    context_.document.end_merge();
    context_.document.edit(next, {tr("Add loss of the line"), {}, {}});
    rows_.back().loss->field().setFocus(Qt::TabFocusReason);
    rows_.back().loss->field().selectAll();
}

void LineLossEditor::take(inputs::Entry* entry, std::size_t index, bool is_loss, double si,
                          const QString& text) {
    design::Design next = context_.document.design();
    design::LineLoss& point = next.feed_line->loss.at(index);
    const design::LineLoss before = point;
    const units::UnitSystem system = context_.settings.unit_system();
    session::EditLabel label;
    if (is_loss) {
        point.loss = {units::DecibelPerMetre{si}, text.toStdString()};
        label = {tr("Loss of the line"), text_of(before.loss, system), text_of(point.loss, system)};
    } else {
        point.frequency = {units::hertz(si), text.toStdString()};
        label = {tr("Frequency of the loss"), text_of(before.frequency, system),
                 text_of(point.frequency, system)};
    }
    const QString key = QStringLiteral("feed_line.loss[%1].%2").arg(index).arg(is_loss ? 'l' : 'f');
    try {
        context_.document.edit(next, label, key);
    } catch (const base::InputError& error) {
        entry->field().refuse(refusal_sentence(error));
    }
}

void LineLossEditor::remove(std::size_t index) {
    design::Design next = context_.document.design();
    auto& points = next.feed_line->loss;
    points.erase(points.begin() + static_cast<std::ptrdiff_t>(index));
    context_.document.end_merge();
    context_.document.edit(next, {tr("Remove loss of the line"), {}, {}});
    add_->setFocus(Qt::TabFocusReason);
}

void LineLossEditor::add_row(std::size_t index) {
    Row row;
    row.widget = new QWidget(this);
    auto* line = new QHBoxLayout(row.widget);
    line->setContentsMargins(0, 0, 0, 0);
    line->setSpacing(unit_px / 2);
    const std::string path = "feed_line.loss[" + std::to_string(index) + "]";
    row.loss = new inputs::Entry({units::Dimension::loss_per_length}, path + ".loss", row.widget);
    row.frequency = new inputs::Entry({units::Dimension::frequency}, path + ".frequency", row.widget);
    const auto add = [&](inputs::Entry* entry, const QString& label, const QString& name, const QString& tip,
                         bool is_loss) {
        entry->field().setObjectName(QString::fromStdString(entry->field().where()));
        entry->describe(name, tip);
        auto* text = new QLabel(label, row.widget);
        text->setBuddy(&entry->field());
        line->addWidget(text);
        line->addWidget(entry, 1);
        connect(&entry->field(), &inputs::QuantityField::edited, this,
                [this, entry, index, is_loss](double si, const QString& typed) {
                    take(entry, index, is_loss, si, typed);
                });
        connect(&entry->field(), &inputs::QuantityField::finished, &context_.document,
                &session::Document::end_merge);
    };
    add(row.loss, tr("Loss"), tr("Loss of the line, row %1").arg(index + 1),
        tr("Matched loss per length at the frequency beside it."), true);
    add(row.frequency, tr("at"), tr("Frequency of the loss, row %1").arg(index + 1),
        tr("The frequency that the data sheet gives this loss for."), false);
    auto* remove_button = new QToolButton(row.widget);
    remove_button->setText(QStringLiteral("\u2212"));
    remove_button->setFocusPolicy(Qt::StrongFocus);
    remove_button->setToolTip(tr("Remove this loss"));
    remove_button->setAccessibleName(tr("Remove loss of the line, row %1").arg(index + 1));
    line->addWidget(remove_button);
    connect(remove_button, &QToolButton::clicked, this, [this, index] { remove(index); });
    column_->insertWidget(static_cast<int>(index), row.widget);
    setTabOrder(&row.loss->field(), &row.frequency->field());
    setTabOrder(&row.frequency->field(), remove_button);
    setTabOrder(remove_button, add_);
    rows_.push_back(row);
}

void LineLossEditor::refresh() {
    const auto& line = context_.document.design().feed_line;
    setVisible(line.has_value());
    const std::vector<design::LineLoss> points = line ? line->loss : std::vector<design::LineLoss>{};
    while (rows_.size() > points.size()) {
        rows_.back().widget->hide();
        rows_.back().widget->deleteLater();
        rows_.pop_back();
    }
    while (rows_.size() < points.size()) {
        add_row(rows_.size());
    }
    for (std::size_t i = 0; i < points.size(); ++i) {
        inputs::QuantityField& loss = rows_[i].loss->field();
        inputs::QuantityField& frequency = rows_[i].frequency->field();
        loss.set_unit_system(context_.settings.unit_system());
        loss.set_value(points[i].loss.value.dB_per_m, QString::fromStdString(points[i].loss.text));
        frequency.set_value(points[i].frequency.value.value(),
                            QString::fromStdString(points[i].frequency.text));
    }
}

} // namespace loopwright::pages
