#include "pages/headline_panel.hpp"

#include "band/band.hpp"
#include "base/error.hpp"
#include "inputs/choice_field.hpp"
#include "inputs/entry.hpp"
#include "jobs/keying_job.hpp"
#include "loop/loop_model.hpp"
#include "models/model_words.hpp"
#include "models/quantity_words.hpp"
#include "pages/refusal.hpp"
#include "settings/measures.hpp"
#include "survey/site_voltage.hpp"

#include <QCheckBox>
#include <QGridLayout>
#include <QHBoxLayout>
#include <QLabel>
#include <QVBoxLayout>

namespace loopwright::pages {

namespace {

/// What takes less is not worth a sign that it is under way.

} // namespace

HeadlinePanel::HeadlinePanel(const Context& context, QWidget* parent)
    : QWidget(parent), context_(context),
      frequency_(new inputs::Entry({units::Dimension::frequency}, "frequency", this)),
      band_(new inputs::ChoiceField(this)), model_(new inputs::ChoiceField(this)),
      beside_(new QCheckBox(this)), numbers_(new QWidget(this)), grid_(new QGridLayout),
      head_(new QLabel(numbers_)), other_head_(new QLabel(numbers_)), model_name_(new QLabel(this)),
      notices_(new QLabel(numbers_)) {
    auto* column = new QVBoxLayout(this);
    column->setContentsMargins(unit_px, unit_px, unit_px, unit_px);
    column->setSpacing(unit_px);
    build_focus_row(column);
    build_model_row(column);
    model_name_->setWordWrap(true);
    model_name_->setForegroundRole(QPalette::PlaceholderText);
    model_name_->setObjectName(QStringLiteral("headline.model"));
    column->addWidget(model_name_);
    auto* inner = new QVBoxLayout(numbers_);
    inner->setContentsMargins(0, 0, 0, 0);
    inner->setSpacing(unit_px);
    grid_->setHorizontalSpacing(unit_px);
    grid_->setVerticalSpacing(0);
    grid_->setColumnStretch(0, 1);
    for (QLabel* head : {head_, other_head_}) {
        head->setAlignment(Qt::AlignRight | Qt::AlignVCenter);
        head->setForegroundRole(QPalette::PlaceholderText);
    }
    grid_->addWidget(head_, 0, 1);
    grid_->addWidget(other_head_, 0, 2);
    inner->addLayout(grid_);
    notices_->setWordWrap(true);
    notices_->setTextFormat(Qt::PlainText);
    notices_->setTextInteractionFlags(Qt::TextSelectableByMouse);
    notices_->setAccessibleName(tr("Notices"));
    notices_->setObjectName(QStringLiteral("headline.notices"));
    inner->addWidget(notices_);
    column->addWidget(numbers_);
    column->addStretch();
    connect_context();
    refresh_focus();
    refresh_model();
    refresh();
}

void HeadlinePanel::connect_context() {
    patience_.setSingleShot(true);
    patience_.setInterval(patience_ms);
    connect(&patience_, &QTimer::timeout, this, &HeadlinePanel::show_stale);
    connect(&context_.point, &jobs::PointJob::started, this, [this] {
        if (!patience_.isActive()) {
            patience_.start();
        }
    });
    connect(&context_.point, &jobs::PointJob::finished, this, &HeadlinePanel::refresh);
    connect(&context_.keying, &jobs::KeyingJob::updated, this, &HeadlinePanel::refresh);
    connect(&context_.point, &jobs::PointJob::failed, this, &HeadlinePanel::show_failure);
    connect(&context_.focus, &session::Focus::changed, this, &HeadlinePanel::refresh_focus);
    connect(&context_.settings, &settings::Settings::unit_system_changed, this, &HeadlinePanel::refreshed);
    connect(&context_.settings, &settings::Settings::model_changed, this, &HeadlinePanel::refresh_model);
}

void HeadlinePanel::build_focus_row(QVBoxLayout* column) {
    auto* row = new QHBoxLayout;
    row->setSpacing(unit_px);
    auto* label = new QLabel(tr("Fre&quency"), this);
    inputs::QuantityField& field = frequency_->field();
    label->setBuddy(&field);
    field.setObjectName(QStringLiteral("focus.frequency"));
    frequency_->describe(tr("Frequency in focus"),
                         tr("The one frequency that the whole window looks at. Type any, or pick a band."));
    band_->setAccessibleName(tr("Band in focus"));
    band_->setToolTip(tr("Look at the usual working frequency of a band."));
    band_->setObjectName(QStringLiteral("focus.band"));
    row->addWidget(label);
    row->addWidget(frequency_, 1);
    row->addWidget(band_);
    column->addLayout(row);
    connect(&field, &inputs::QuantityField::edited, this, &HeadlinePanel::take_frequency);
    connect(band_, &inputs::ChoiceField::chosen, this,
            [this](int index) { context_.focus.set_band(band_->itemData(index).toString()); });
}

void HeadlinePanel::build_model_row(QVBoxLayout* column) {
    auto* row = new QHBoxLayout;
    row->setSpacing(unit_px);
    auto* label = new QLabel(tr("En&gine"), this);
    label->setBuddy(model_);
    model_->addItems({tr("Full wave"), tr("Closed form")});
    model_->setObjectName(QStringLiteral("engine"));
    model_->setAccessibleName(tr("Engine"));
    model_->setToolTip(tr(
        "What computes all figures of the window. Full wave: the fields of the loop as it stands, over its "
        "ground. Closed form: published formulas for a small loop in free space."));
    model_->setAccessibleDescription(model_->toolTip());
    beside_->setObjectName(QStringLiteral("engine.beside"));
    row->addWidget(label);
    row->addWidget(model_);
    row->addWidget(beside_, 1);
    column->addLayout(row);
    connect(model_, &inputs::ChoiceField::chosen, this, [this](int index) {
        context_.settings.set_model(index == 0 ? loop::Model::full_wave : loop::Model::closed_form);
    });
    connect(beside_, &QCheckBox::clicked, &context_.settings, &settings::Settings::set_other_model_beside);
}

void HeadlinePanel::refresh_model() {
    const bool full = context_.settings.model() == loop::Model::full_wave;
    model_->show_choice(full ? 0 : 1);
    beside_->setText(full ? tr("closed form beside it") : tr("full wave beside i&t"));
    beside_->setToolTip(tr("Shows the figures of the other model beside those of the engine."));
    beside_->setChecked(context_.settings.other_model_beside());
}

void HeadlinePanel::take_frequency(double hertz) {
    try { // the closed form knows as well as any model which frequencies are taken
        const design::Design& design = context_.document.design();
        (void)loop::make_model(design, loop::Model::closed_form)
            ->at(units::hertz(hertz), design.station.power.value, 2.0);
        context_.focus.set_frequency(units::hertz(hertz));
    } catch (const base::InputError& error) {
        frequency_->field().refuse(refusal_sentence(error));
    }
}

void HeadlinePanel::refresh_focus() {
    const int region = context_.focus.region();
    band_->clear();
    for (const band::Band& band : band::bands_of(region)) {
        const QString name = QString::fromStdString(band.name);
        band_->addItem(name, name);
    }
    band_->addItem(tr("between bands"), QString());
    band_->show_choice(band_->findData(context_.focus.band()));
    const units::Frequency frequency = context_.focus.frequency();
    frequency_->field().set_value(frequency.value(), {});
}

std::optional<loop::OperatingPoint> HeadlinePanel::point() const {
    const auto result = context_.point.result();
    return result ? std::optional(result->point) : std::nullopt;
}

const design::Design& HeadlinePanel::design() const {
    const auto result = context_.point.result();
    return result ? result->request.design : context_.document.design();
}

void HeadlinePanel::refresh() {
    const auto result = context_.point.result();
    loop::OperatingPoint shown;
    shown.model = context_.settings.model();
    if (result) {
        shown = result->point;
    }
    const auto& keying = context_.keying.result();
    if (keying && context_.keying.settled() && keying->request.design == design()) {
        shown = survey::with_keying(std::move(shown), context_.focus.band().toStdString(), *keying);
    }
    const bool both = result && result->other;
    model_name_->setText(tr("Figures: %1, at %2")
                             .arg(models::model_and_ground(shown.model, design().site.ground),
                                  models::short_text(design().station.power)));
    head_->setText(models::model_name(shown.model));
    head_->setVisible(both);
    other_head_->setText(both ? models::model_name(result->other->model) : QString());
    other_head_->setVisible(both);
    const auto headlines = models::headlines(shown, design());
    const auto others = both ? models::headlines(*result->other, design()) : std::vector<models::Headline>{};
    while (lines_.size() < headlines.size()) {
        add_line();
    }
    for (std::size_t i = 0; i < headlines.size(); ++i) {
        show_line(i, headlines[i]);
        show_other(i, i < others.size() ? &others[i] : nullptr);
    }
    show_notices(result ? std::optional(result->point) : std::nullopt);
    if (!context_.point.stale()) {
        patience_.stop();
    }
    show_stale();
    Q_EMIT refreshed();
}

void HeadlinePanel::show_failure(const QString& message) {
    patience_.stop();
    show_stale();
    model_name_->setText(
        tr("Not computed: %1 The figures below are those of the last design that could be.").arg(message));
}

/// Greys what belongs to an older state, once that has lasted a moment.
void HeadlinePanel::show_stale() {
    greyed_ = context_.point.stale() && !patience_.isActive();
    numbers_->setEnabled(!greyed_);
}

} // namespace loopwright::pages
