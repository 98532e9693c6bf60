#include "app/hazard_strip.hpp"

#include "models/voltage_warning.hpp"

#include <QEvent>
#include <QHBoxLayout>
#include <QLabel>

namespace loopwright::app {

namespace {

constexpr int unit_px = 8;

QString symbol(models::VoltageState state) {
    switch (state) {
    case models::VoltageState::unknown:
    case models::VoltageState::no_rating:
        return QStringLiteral("\u25B3 ");
    case models::VoltageState::within:
        return QStringLiteral("\u2713 ");
    case models::VoltageState::exceeded:
        return QStringLiteral("\u25B2 ");
    }
    return {};
}

QLabel* new_cell(QWidget* parent) {
    auto* label = new QLabel(parent);
    label->setTextFormat(Qt::PlainText);
    label->setContentsMargins(unit_px, unit_px / 2, unit_px, unit_px / 2);
    label->setAutoFillBackground(true);
    label->setWordWrap(true);
    return label;
}

} // namespace

HazardStrip::HazardStrip(const pages::Context& context, QWidget* parent)
    : QFrame(parent), context_(context), voltage_(new_cell(this)), distance_(new_cell(this)) {
    setAccessibleName(tr("Hazards"));
    auto* row = new QHBoxLayout(this);
    row->setContentsMargins(0, 0, 0, 0);
    row->setSpacing(unit_px / 2);
    row->addWidget(voltage_, 3);
    row->addWidget(distance_, 2);
    voltage_->setObjectName(QStringLiteral("hazard.voltage"));
    distance_->setObjectName(QStringLiteral("hazard.distance"));
    voltage_->setAccessibleName(tr("Hazard: capacitor voltage"));
    distance_->setAccessibleName(tr("Hazard: distance"));
    distance_->setText(QStringLiteral("\u25B2 ") +
                       tr("Distance: not established, treat the loop as hazardous"));
    distance_->setToolTip(
        tr("How far people must stay away is not computed yet. Keep everybody well away while "
           "transmitting, and follow the exposure rules where you are."));
    distance_->setAccessibleDescription(distance_->toolTip());
    connect(&context_.survey, &jobs::Job::started, this, &HazardStrip::refresh);
    connect(&context_.survey, &jobs::Job::finished, this, &HazardStrip::refresh);
    connect(&context_.survey, &jobs::Job::failed, this, &HazardStrip::refresh);
    refresh();
}

void HazardStrip::refresh() {
    const auto survey = context_.survey.result();
    if (!survey) {
        voltage_->setText(QStringLiteral("\u25B3 ") + tr("Capacitor voltage: not computed yet"));
        return;
    }
    const models::VoltageWarning warning = models::voltage_warning(*survey);
    voltage_->setText(symbol(warning.state) + warning.text);
    voltage_->setToolTip(warning.detail);
    voltage_->setAccessibleDescription(warning.detail);
    voltage_->setEnabled(!context_.survey.stale() || context_.survey.running());
    exceeded_ = warning.state == models::VoltageState::exceeded;
    colour();
}

void HazardStrip::colour() {
    const auto paint = [this](QLabel* cell, bool strong) {
        cell->setBackgroundRole(strong ? QPalette::Text : QPalette::AlternateBase);
        cell->setForegroundRole(strong ? QPalette::Base : QPalette::Text);
    };
    paint(voltage_, exceeded_);
    paint(distance_, false);
}

void HazardStrip::changeEvent(QEvent* event) {
    if (event->type() == QEvent::PaletteChange) {
        colour();
    }
    QFrame::changeEvent(event);
}

} // namespace loopwright::app
