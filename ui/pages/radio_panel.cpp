#include "pages/radio_panel.hpp"

#include "base/error.hpp"
#include "inputs/choice_field.hpp"
#include "inputs/text_field.hpp"
#include "models/match_plot.hpp"
#include "pages/refusal.hpp"
#include "settings/measures.hpp"

#include <QComboBox>
#include <QCompleter>
#include <QFormLayout>
#include <QLabel>
#include <QPushButton>
#include <QSpinBox>
#include <QVBoxLayout>

#include <algorithm>
#include <array>

namespace loopwright::pages {

namespace {

constexpr std::array speeds_baud{0, 1200, 2400, 4800, 9600, 19200, 38400, 57600, 115200};

} // namespace

RadioPanel::RadioPanel(const Context& context, QWidget* parent)
    : QWidget(parent), context_(context), form_(new QFormLayout), way_(new inputs::ChoiceField(this)),
      host_(new inputs::TextField(this)), port_(new QSpinBox(this)), driver_(new QComboBox(this)),
      device_(new inputs::TextField(this)), speed_(new inputs::ChoiceField(this)), caution_(new QLabel(this)),
      follow_(new QPushButton(this)), state_(new QLabel(this)) {
    auto* column = new QVBoxLayout(this);
    column->setContentsMargins(2 * unit_px, 0, 0, 0);
    column->setSpacing(unit_px / 2);
    form_->setFieldGrowthPolicy(QFormLayout::AllNonFixedFieldsGrow);
    form_->setVerticalSpacing(unit_px / 2);
    build_fields();
    column->addLayout(form_);
    for (QLabel* label : {caution_, state_}) {
        label->setWordWrap(true);
        label->setTextFormat(Qt::PlainText);
        label->setTextInteractionFlags(Qt::TextSelectableByMouse);
        column->addWidget(label);
    }
    state_->setObjectName(QStringLiteral("radio.state"));
    state_->setAccessibleName(tr("What the radio says"));
    follow_->setObjectName(QStringLiteral("radio.follow"));
    column->insertWidget(1, follow_, 0, Qt::AlignLeft);
    connect(follow_, &QPushButton::clicked, this, &RadioPanel::toggle);
    connect(&radio_, &jobs::RadioJob::changed, this, &RadioPanel::show_state);
    connect(&radio_, &jobs::RadioJob::tuned, this,
            [this](double frequency_Hz) { context_.focus.set_frequency(units::hertz(frequency_Hz)); });
    choose_way();
    show_state();
}

void RadioPanel::build_fields() {
    const radio::Connection& kept = context_.settings.radio();
    const auto add = [&](QWidget* field, const QString& label, const QString& tip, const char* name) {
        field->setObjectName(QLatin1String(name));
        field->setToolTip(tip);
        field->setAccessibleName(QString(label).remove(QLatin1Char('&')));
        field->setAccessibleDescription(tip);
        form_->addRow(label, field);
    };
    way_->addItems({tr("network"), tr("serial line")});
    way_->show_choice(static_cast<int>(kept.way));
    add(way_, tr("Radio by"),
        tr("Network: Hamlib's daemon rigctld, or a program that speaks its protocol. Serial "
           "line: Hamlib's own driver of the radio."),
        "radio.way");
    host_->setText(QString::fromStdString(kept.host));
    add(host_, tr("Host"), tr("Where the daemon runs; 127.0.0.1 is this computer."), "radio.host");
    port_->setRange(1, 65535);
    port_->setValue(kept.port);
    port_->setGroupSeparatorShown(false);
    add(port_, tr("Port"), tr("Of the daemon; 4532 is Hamlib's own."), "radio.port");
    driver_->setEditable(true);
    driver_->setInsertPolicy(QComboBox::NoInsert);
    driver_->setSizeAdjustPolicy(QComboBox::AdjustToMinimumContentsLengthWithIcon);
    driver_->setMinimumContentsLength(10);
    add(driver_, tr("Driver"), tr("Hamlib's driver for this radio, by name or number."), "radio.driver");
    device_->setText(QString::fromStdString(kept.device));
    device_->setPlaceholderText(QStringLiteral("/dev/ttyUSB0"));
    add(device_, tr("Device"), tr("The serial device the radio is on."), "radio.device");
    for (const int speed : speeds_baud) {
        speed_->addItem(speed == 0 ? tr("the driver's own") : tr("%1 baud").arg(speed));
    }
    const auto at = std::find(speeds_baud.begin(), speeds_baud.end(), kept.speed_baud);
    speed_->show_choice(at == speeds_baud.end() ? 0 : static_cast<int>(at - speeds_baud.begin()));
    add(speed_, tr("Speed"), tr("As the radio's menu says."), "radio.speed");
    caution_->setText(
        tr("Caution: opening a serial line can raise its control lines for a moment, and a radio or "
           "an interface that keys by them may send. Switch keying by RTS and DTR off first, and let "
           "nobody be near the loop."));
    connect(way_, &inputs::ChoiceField::chosen, this, [this] {
        choose_way();
        take_fields();
    });
    for (inputs::TextField* field : {host_, device_}) {
        connect(field, &QLineEdit::editingFinished, this, &RadioPanel::take_fields);
    }
    connect(port_, &QSpinBox::editingFinished, this, &RadioPanel::take_fields);
    connect(driver_, &QComboBox::activated, this, &RadioPanel::take_fields);
    connect(speed_, &inputs::ChoiceField::chosen, this, &RadioPanel::take_fields);
}

void RadioPanel::choose_way() {
    const bool serial = way_->currentIndex() == static_cast<int>(radio::Way::serial);
    if (serial) {
        fill_drivers();
    }
    for (QWidget* field : {static_cast<QWidget*>(host_), static_cast<QWidget*>(port_)}) {
        form_->setRowVisible(field, !serial);
    }
    for (QWidget* field :
         {static_cast<QWidget*>(driver_), static_cast<QWidget*>(device_), static_cast<QWidget*>(speed_)}) {
        form_->setRowVisible(field, serial);
    }
    caution_->setVisible(serial);
}

/// Only where it is wanted: Hamlib loads all its drivers for it.
void RadioPanel::fill_drivers() {
    if (driver_->count() > 0) {
        return;
    }
    for (const radio::Driver& one : radio::known_drivers()) {
        driver_->addItem(QStringLiteral("%1 %2 (%3)")
                             .arg(QString::fromStdString(one.maker), QString::fromStdString(one.model))
                             .arg(one.number),
                         one.number);
    }
    driver_->completer()->setFilterMode(Qt::MatchContains);
    driver_->completer()->setCompletionMode(QCompleter::PopupCompletion);
    driver_->setCurrentIndex(driver_->findData(context_.settings.radio().driver));
    if (driver_->currentIndex() < 0) {
        driver_->setEditText({});
    }
}

radio::Connection RadioPanel::typed() const {
    radio::Connection connection = context_.settings.radio();
    connection.way = static_cast<radio::Way>(way_->currentIndex());
    connection.host = host_->text().trimmed().toStdString();
    connection.port = port_->value();
    connection.device = device_->text().trimmed().toStdString();
    connection.speed_baud = speeds_baud.at(static_cast<std::size_t>(std::max(0, speed_->currentIndex())));
    if (connection.way == radio::Way::serial) {
        const int at = driver_->findText(driver_->currentText());
        bool is_number = false;
        const int number = driver_->currentText().trimmed().toInt(&is_number);
        connection.driver = at >= 0 ? driver_->itemData(at).toInt() : is_number ? number : 0;
    }
    return connection;
}

/// Another place than the one followed: it is given up.
void RadioPanel::take_fields() {
    const radio::Connection now = typed();
    const bool other = now != context_.settings.radio();
    context_.settings.set_radio(now);
    if (other) {
        radio_.stop();
    }
    Q_EMIT refreshed();
}

void RadioPanel::toggle() {
    if (radio_.following()) {
        radio_.stop();
        return;
    }
    take_fields();
    try {
        radio_.follow(context_.settings.radio());
    } catch (const base::InputError& error) {
        state_->setText(refusal_sentence(error));
        state_->show();
    }
}

void RadioPanel::show_state() {
    const bool following = radio_.following();
    follow_->setText(following ? tr("Stop &following") : tr("&Follow the radio"));
    follow_->setToolTip(following
                            ? tr("Give up the line to the radio")
                            : tr("Read the radio's frequency again and again; nothing is ever set or keyed"));
    const radio::Report& report = radio_.report();
    const QString trouble = QString::fromStdString(report.trouble);
    QString words;
    switch (report.state) {
    case radio::State::stopped:
        break;
    case radio::State::connecting:
        words =
            trouble.isEmpty() ? tr("Opening the line.") : trouble + QLatin1Char(' ') + tr("Trying again.");
        break;
    case radio::State::reading:
        words = report.frequency
                    ? tr("The radio shows %1.").arg(models::exact_frequency(report.frequency->value()))
                    : tr("The line stands; waiting for the frequency.");
        break;
    case radio::State::waiting:
        words = tr("%1 Next try in %2 s.")
                    .arg(trouble)
                    .arg(QString::number(std::chrono::duration<double>(report.next_try).count(), 'g', 2));
        break;
    }
    if (!report.frequency && radio_.last_read()) {
        words +=
            QLatin1Char(' ') + tr("Last read: %1.").arg(models::exact_frequency(radio_.last_read()->value()));
    }
    state_->setText(words);
    state_->setVisible(!words.isEmpty());
    Q_EMIT refreshed();
}

QString RadioPanel::summary() const {
    return radio_.following() ? state_->text()
                              : tr("not followed: %1")
                                    .arg(QString::fromStdString(radio::place_of(context_.settings.radio())));
}

} // namespace loopwright::pages
