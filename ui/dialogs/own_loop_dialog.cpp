#include "dialogs/own_loop_dialog.hpp"

#include "design/validation.hpp"
#include "inputs/choice_field.hpp"
#include "inputs/entry.hpp"
#include "settings/measures.hpp"

#include <QDialogButtonBox>
#include <QFormLayout>
#include <QLabel>
#include <QPushButton>
#include <QVBoxLayout>

#include <utility>

namespace loopwright::dialogs {

namespace {

using design::ConductorForm;
using design::Design;
using design::Outline;

/// What a new loop starts with: a common loop for a table or a balcony, invented.
Design first_design() {
    Design design;
    design.station.power = units::watts(5);
    design.site.ground.kind = design::GroundKind::soil;
    design.site.ground.class_name = "average ground";
    return design;
}

} // namespace

OwnLoopDialog::OwnLoopDialog(units::UnitSystem system, QWidget* parent)
    : QDialog(parent), system_(system), design_(first_design()), form_(new QFormLayout),
      refusal_(new QLabel(this)),
      buttons_(new QDialogButtonBox(QDialogButtonBox::Ok | QDialogButtonBox::Cancel, this)) {
    setWindowTitle(tr("Describe my loop"));
    auto* column = new QVBoxLayout(this);
    column->setContentsMargins(unit_px * 2, unit_px * 2, unit_px * 2, unit_px * 2);
    column->setSpacing(unit_px);
    column->addWidget(
        new QLabel(tr("Five things matter most. Everything else can be typed on the Build page."), this));
    form_->setHorizontalSpacing(unit_px);
    column->addLayout(form_);
    add_loop();
    add_conductor();
    add_rest();
    refusal_->setWordWrap(true);
    column->addWidget(refusal_);
    column->addStretch();
    column->addWidget(buttons_);
    buttons_->button(QDialogButtonBox::Ok)->setText(tr("Open Build"));
    connect(buttons_, &QDialogButtonBox::accepted, this, &OwnLoopDialog::accept_if_read);
    connect(buttons_, &QDialogButtonBox::rejected, this, &QDialog::reject);
    show_applicable();
    check();
}

template <class Access>
inputs::Entry* OwnLoopDialog::quantity(const QString& label, const QString& tooltip, const std::string& where,
                                       Access access) {
    using Typed = std::remove_cvref_t<decltype(access(design_))>;
    using Quantity = decltype(Typed::value);
    auto* entry = new inputs::Entry({units::DimensionOf<Quantity>::value}, where, this);
    inputs::QuantityField& field = entry->field();
    entry->describe(label, tooltip);
    field.set_unit_system(system_);
    field.set_value(access(design_).value.value(), {});
    auto* text = new QLabel(label, this);
    text->setBuddy(&field);
    form_->addRow(text, entry);
    connect(&field, &inputs::QuantityField::edited, this,
            [this, access, &field](double si, const QString& typed) {
                change([&](Design& d) { access(d) = Typed(Quantity::from_value(si), typed.toStdString()); });
                field.set_value(si, typed);
            });
    return entry;
}

inputs::ChoiceField* OwnLoopDialog::choice(const QString& label, const QString& tooltip,
                                           const QStringList& options, int current,
                                           std::function<void(Design&, int)> set) {
    auto* field = new inputs::ChoiceField(this);
    field->addItems(options);
    field->show_choice(current);
    field->setAccessibleName(label);
    field->setToolTip(tooltip);
    auto* text = new QLabel(label, this);
    text->setBuddy(field);
    form_->addRow(text, field);
    connect(field, &inputs::ChoiceField::chosen, this, [this, set = std::move(set)](int index) {
        change([&](Design& d) { set(d, index); });
        show_applicable();
    });
    return field;
}

void OwnLoopDialog::add_loop() {
    choice(tr("Outline"), tr("Shape of the loop."), {tr("Circle"), tr("Octagon"), tr("Square or rectangle")},
           0, [](Design& d, int index) {
               d.loop.outline = static_cast<Outline>(index);
               d.loop.size_is = d.loop.outline == Outline::polygon ? design::SizeMeaning::across_flats
                                                                   : design::SizeMeaning::diameter;
           });
    size_ = quantity(
        tr("Size across"),
        tr("Diameter of the circle, or across the flats of the octagon, of the "
           "conductor's centre line."),
        "loop.size", [](auto& d) -> auto& { return d.loop.size; });
    width_ = quantity(
        tr("Width"), tr("Width of the rectangle."), "loop.width",
        [](auto& d) -> auto& { return d.loop.width; });
    height_ = quantity(
        tr("Height"), tr("Height of the rectangle."), "loop.height",
        [](auto& d) -> auto& { return d.loop.height; });
}

void OwnLoopDialog::add_conductor() {
    choice(tr("Conductor"), tr("What the loop is made of, of copper to begin with."),
           {tr("Solid wire"), tr("Tube"), tr("Flat strip"), tr("Coaxial cable's braid")},
           static_cast<int>(ConductorForm::tube),
           [](Design& d, int index) { d.conductor.form = static_cast<ConductorForm>(index); });
    diameter_ = quantity(
        tr("Conductor diameter"), tr("Outer diameter, without insulation."), "conductor.diameter",
        [](auto& d) -> auto& { return d.conductor.diameter; });
    wall_ = quantity(
        tr("Wall"), tr("Wall thickness of the tube."), "conductor.wall",
        [](auto& d) -> auto& { return d.conductor.wall; });
    strip_width_ = quantity(
        tr("Strip width"), tr("Width of the flat strip."), "conductor.width",
        [](auto& d) -> auto& { return d.conductor.width; });
    strip_thickness_ = quantity(
        tr("Strip thickness"), tr("Thickness of the flat strip."), "conductor.thickness",
        [](auto& d) -> auto& { return d.conductor.thickness; });
}

void OwnLoopDialog::add_rest() {
    quantity(
        tr("Capacitor from"), tr("Least capacitance, fully open."), "capacitor.minimum",
        [](auto& d) -> auto& { return d.capacitor.minimum; });
    quantity(
        tr("to"), tr("Greatest capacitance, fully closed."), "capacitor.maximum",
        [](auto& d) -> auto& { return d.capacitor.maximum; });
    quantity(
        tr("Power"), tr("Peak envelope power that the loop accepts."), "station.power",
        [](auto& d) -> auto& { return d.station.power; });
    choice(tr("Stands"), tr("Where the loop stands: what the ground below takes depends on it."),
           {tr("vertical, above ground"), tr("horizontal, above ground"), tr("in free space, to compare")}, 0,
           [](Design& d, int index) {
               d.site.plane = index == 1 ? design::Plane::horizontal : design::Plane::vertical;
               d.site.ground = {};
               if (index < 2) {
                   d.site.ground.kind = design::GroundKind::soil;
                   d.site.ground.class_name = "average ground";
               }
           });
    lowest_ = quantity(
        tr("Lowest point"), tr("Height of the loop's lowest point above the ground."), "site.lowest_point",
        [](auto& d) -> auto& { return d.site.lowest_point; });
}

void OwnLoopDialog::change(const Change& change) {
    change(design_);
    check();
}

void OwnLoopDialog::check() {
    const auto refusals = design::refusals(design_);
    refusal_->setText(refusals.empty() ? QString() : QString::fromUtf8(refusals.front().what()));
    buttons_->button(QDialogButtonBox::Ok)->setEnabled(refusals.empty());
}

/// A text that was refused is not in the design: the person is led to it instead.
void OwnLoopDialog::accept_if_read() {
    for (inputs::QuantityField* field : findChildren<inputs::QuantityField*>()) {
        if (field->isVisible() && !field->refusal().isEmpty()) {
            field->setFocus(Qt::OtherFocusReason);
            return;
        }
    }
    accept();
}

void OwnLoopDialog::show_applicable() {
    const bool rectangle = design_.loop.outline == Outline::rectangle;
    const ConductorForm form = design_.conductor.form;
    form_->setRowVisible(size_, !rectangle);
    form_->setRowVisible(width_, rectangle);
    form_->setRowVisible(height_, rectangle);
    form_->setRowVisible(diameter_, form != ConductorForm::strip);
    form_->setRowVisible(wall_, form == ConductorForm::tube);
    form_->setRowVisible(strip_width_, form == ConductorForm::strip);
    form_->setRowVisible(strip_thickness_, form == ConductorForm::strip);
    form_->setRowVisible(lowest_, design_.site.ground.kind != design::GroundKind::free_space);
}

} // namespace loopwright::dialogs
