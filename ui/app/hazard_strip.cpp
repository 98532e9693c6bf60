#include "app/hazard_strip.hpp"

#include "models/keying_warning.hpp"
#include "settings/measures.hpp"

#include <QEvent>
#include <QHBoxLayout>
#include <QLabel>

#include <algorithm>

namespace loopwright::app {

namespace {

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

QString before_words() {
    return HazardStrip::tr(" (of before the last change)");
}

QString computing_words() {
    return HazardStrip::tr(" (worst case still computing)");
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
    row->addWidget(voltage_, 1);
    row->addWidget(distance_, 1);
    voltage_->setObjectName(QStringLiteral("hazard.voltage"));
    distance_->setObjectName(QStringLiteral("hazard.distance"));
    voltage_->setAccessibleName(tr("Hazard: capacitor voltage"));
    distance_->setAccessibleName(tr("Hazard: distance"));
    patience_.setSingleShot(true);
    patience_.setInterval(patience_ms);
    const jobs::KeyingJob* keying = &context_.keying;
    connect(keying, &jobs::KeyingJob::started, this, [this] {
        failed_ = false;
        if (!patience_.isActive()) { // edits that follow each other do not keep an old tick standing
            patience_.start();
        }
        if (!context_.keying.soon()) { // else the tick would go and come again
            refresh();
        }
    });
    connect(keying, &jobs::KeyingJob::updated, this, [this] {
        failed_ = false;
        refresh();
    });
    connect(keying, &jobs::KeyingJob::cancelled, this, &HazardStrip::refresh);
    connect(keying, &jobs::KeyingJob::failed, this, [this] {
        failed_ = true;
        refresh();
    });
    connect(&patience_, &QTimer::timeout, this, &HazardStrip::refresh);
    connect(&context_.settings, &settings::Settings::unit_system_changed, this, &HazardStrip::refresh);
    refresh();
}

/// What stands there in words while the figures are not those of the design as it is.
QString HazardStrip::state_words() const {
    const jobs::KeyingJob& keying = context_.keying;
    if (keying.stale()) {
        return patience_.isActive() ? QString() : before_words();
    }
    return keying.settled() ? QString() : computing_words();
}

void HazardStrip::say(QLabel* cell, const QString& text, const QString& detail, const QString& state) {
    settled_[cell] = text;
    cell->setText(text + state);
    cell->setToolTip(detail);
    cell->setAccessibleDescription(detail);
}

/// The words of a state that passes find room beside or below the others: they never move the page.
void HazardStrip::keep_room() {
    constexpr int unbounded_px = 1 << 20;
    for (auto it = settled_.cbegin(); it != settled_.cend(); ++it) {
        QLabel& cell = *it.key();
        const QMargins margins = cell.contentsMargins();
        const QRect room(0, 0, cell.width() - margins.left() - margins.right(), unbounded_px);
        int height = 0;
        for (const QString& state : {before_words(), computing_words()}) {
            height = std::max(height, cell.fontMetrics()
                                          .boundingRect(room, Qt::AlignLeft | Qt::TextWordWrap, *it + state)
                                          .height());
        }
        cell.setMinimumHeight(height + margins.top() + margins.bottom());
    }
}

void HazardStrip::resizeEvent(QResizeEvent* event) {
    QFrame::resizeEvent(event);
    keep_room();
}

void HazardStrip::refresh() {
    const jobs::KeyingJob& keying = context_.keying;
    if (!keying.result() || (failed_ && keying.stale())) {
        const models::DistanceWarning none = models::no_distance();
        say(voltage_,
            QStringLiteral("\u25B3 ") + (failed_ ? tr("Capacitor voltage: not established, treat the "
                                                      "loop as hazardous")
                                                 : tr("Capacitor voltage: not computed yet")),
            none.detail);
        say(distance_, QStringLiteral("\u25B2 ") + none.text, none.detail);
        exceeded_ = too_near_ = false;
        keep_room();
        colour();
        return;
    }
    const models::VoltageWarning volts = models::keying_voltage(*keying.result());
    const models::DistanceWarning people =
        models::keying_distance(*keying.result(), context_.settings.unit_system());
    // A tick only where the unfavourable ends are in.
    const bool doubtful = !keying.settled() && volts.state == models::VoltageState::within;
    say(voltage_, (doubtful ? QStringLiteral("\u25B3 ") : symbol(volts.state)) + volts.text, volts.detail,
        state_words());
    say(distance_,
        (people.established && !people.exceeded ? QStringLiteral("\u25B3 ") : QStringLiteral("\u25B2 ")) +
            people.text,
        people.detail, state_words());
    keep_room();
    exceeded_ = volts.state == models::VoltageState::exceeded;
    too_near_ = people.exceeded;
    colour();
}

void HazardStrip::colour() {
    const auto paint = [](QLabel* cell, bool strong) {
        cell->setBackgroundRole(strong ? QPalette::Text : QPalette::AlternateBase);
        cell->setForegroundRole(strong ? QPalette::Base : QPalette::Text);
    };
    paint(voltage_, exceeded_);
    paint(distance_, too_near_);
}

void HazardStrip::changeEvent(QEvent* event) {
    if (event->type() == QEvent::PaletteChange) {
        colour();
    } else if (event->type() == QEvent::FontChange) {
        keep_room();
    }
    QFrame::changeEvent(event);
}

} // namespace loopwright::app
