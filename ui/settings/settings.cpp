#include "settings/settings.hpp"

#include "base/error.hpp"

#include <QDir>
#include <QFileInfo>
#include <QSettings>

#include <cmath>

namespace loopwright::settings {

namespace {

constexpr int recent_limit = 10, dials_limit = 20;
const QString key_units = QStringLiteral("units");
const QString key_model = QStringLiteral("model");
const QString word_closed_form = QStringLiteral("closed-form");
const QString key_beside = QStringLiteral("other_model_beside");
const QString key_current = QStringLiteral("current_drawn");
const QString key_compared = QStringLiteral("dipole/compared");
const QString key_dipole_height = QStringLiteral("dipole/height_m");
const QString key_dipole_direction = QStringLiteral("dipole/direction_rad");
const QString key_vertical = QStringLiteral("dipole/vertical");
const QString key_radio_serial = QStringLiteral("radio/serial");
const QString key_radio_host = QStringLiteral("radio/host");
const QString key_radio_port = QStringLiteral("radio/port");
const QString key_radio_driver = QStringLiteral("radio/driver");
const QString key_radio_device = QStringLiteral("radio/device");
const QString key_radio_speed = QStringLiteral("radio/speed_baud");
const QString key_dials = QStringLiteral("dials_left_at"); ///< "reading path", newest first
const QString key_recent = QStringLiteral("recent_files");
const QString key_folder = QStringLiteral("last_folder");
const QString key_caution = QStringLiteral("caution_read");

} // namespace

Settings::Settings(QObject* parent)
    : QObject(parent),
      store_(std::make_unique<QSettings>(QStringLiteral("loopwright"), QStringLiteral("workbench"))) {
    load();
}

Settings::Settings(const QString& file, QObject* parent)
    : QObject(parent), store_(std::make_unique<QSettings>(file, QSettings::IniFormat)) {
    load();
}

Settings::~Settings() = default;

void Settings::load() {
    const bool imperial = store_->value(key_units).toString() == QLatin1String("imperial");
    unit_system_ = imperial ? units::UnitSystem::imperial : units::UnitSystem::metric;
    model_ = store_->value(key_model).toString() == word_closed_form ? loop::Model::closed_form
                                                                     : loop::Model::full_wave;
    other_model_beside_ = store_->value(key_beside, false).toBool();
    current_drawn_ = store_->value(key_current, false).toBool();
    load_dipole();
    load_radio();
}

void Settings::load_radio() {
    const radio::Connection usual;
    radio::Connection read = usual;
    read.way = store_->value(key_radio_serial, false).toBool() ? radio::Way::serial : radio::Way::network;
    read.host = store_->value(key_radio_host, QString::fromStdString(usual.host)).toString().toStdString();
    read.port = store_->value(key_radio_port, usual.port).toInt();
    read.driver = store_->value(key_radio_driver, usual.driver).toInt();
    read.device = store_->value(key_radio_device).toString().toStdString();
    read.speed_baud = store_->value(key_radio_speed, usual.speed_baud).toInt();
    try {
        radio::require_usable(read);
        radio_ = read;
    } catch (const base::InputError&) {
        radio_ = usual;
    }
}

void Settings::set_radio(const radio::Connection& connection) {
    if (connection == radio_) {
        return;
    }
    radio_ = connection;
    store_->setValue(key_radio_serial, connection.way == radio::Way::serial);
    store_->setValue(key_radio_host, QString::fromStdString(connection.host));
    store_->setValue(key_radio_port, connection.port);
    store_->setValue(key_radio_driver, connection.driver);
    store_->setValue(key_radio_device, QString::fromStdString(connection.device));
    store_->setValue(key_radio_speed, connection.speed_baud);
}

void Settings::load_dipole() {
    dipole_.compared = store_->value(key_compared, true).toBool();
    dipole_.dipole.vertical = store_->value(key_vertical, dipole_.dipole.vertical).toBool();
    const double height_m = store_->value(key_dipole_height).toDouble();
    if (height_m >= lowest_dipole_m && height_m <= highest_dipole_m) {
        dipole_.dipole.height = units::metres(height_m);
    }
    const double direction_rad = store_->value(key_dipole_direction).toDouble();
    if (std::abs(direction_rad) <= most_dipole_turn_rad) {
        dipole_.dipole.azimuth = units::radians(direction_rad);
    }
}

void Settings::set_dipole(const DipoleChoice& choice) {
    if (choice == dipole_) {
        return;
    }
    dipole_ = choice;
    store_->setValue(key_compared, choice.compared);
    store_->setValue(key_vertical, choice.dipole.vertical);
    store_->setValue(key_dipole_height, choice.dipole.height.value());
    store_->setValue(key_dipole_direction, choice.dipole.azimuth.value());
}

void Settings::set_model(loop::Model model) {
    if (model != model_) {
        model_ = model;
        store_->setValue(key_model,
                         model == loop::Model::closed_form ? word_closed_form : QStringLiteral("full-wave"));
        Q_EMIT model_changed();
    }
}

void Settings::set_other_model_beside(bool beside) {
    if (beside != other_model_beside_) {
        other_model_beside_ = beside;
        store_->setValue(key_beside, beside);
        Q_EMIT model_changed();
    }
}

void Settings::set_current_drawn(bool drawn) {
    if (drawn != current_drawn_) {
        current_drawn_ = drawn;
        store_->setValue(key_current, drawn);
        Q_EMIT current_drawn_changed();
    }
}

void Settings::set_unit_system(units::UnitSystem system) {
    if (system == unit_system_) {
        return;
    }
    unit_system_ = system;
    const bool imperial = system == units::UnitSystem::imperial;
    store_->setValue(key_units, imperial ? QStringLiteral("imperial") : QStringLiteral("metric"));
    Q_EMIT unit_system_changed();
}

QStringList Settings::recent_files() const {
    QStringList files = store_->value(key_recent).toStringList();
    files.removeIf([](const QString& file) { return !QFileInfo::exists(file); });
    return files;
}

void Settings::add_recent_file(const QString& path) {
    const QString absolute = QFileInfo(path).absoluteFilePath();
    QStringList files = recent_files();
    files.removeAll(absolute);
    files.prepend(absolute);
    store_->setValue(key_recent, files.mid(0, recent_limit));
    Q_EMIT recent_files_changed();
}

void Settings::clear_recent_files() {
    store_->remove(key_recent);
    Q_EMIT recent_files_changed();
}

std::optional<double> Settings::dial_left_at(const QString& path) const {
    const QString absolute = QFileInfo(path).absoluteFilePath();
    for (const QString& entry : store_->value(key_dials).toStringList()) {
        bool is_number = false;
        const double reading = entry.section(QLatin1Char(' '), 0, 0).toDouble(&is_number);
        if (entry.section(QLatin1Char(' '), 1) == absolute && is_number && std::isfinite(reading)) {
            return reading;
        }
    }
    return std::nullopt;
}

void Settings::set_dial_left_at(const QString& path, std::optional<double> reading) {
    if (path.isEmpty() || (reading && !std::isfinite(*reading)) || reading == dial_left_at(path)) {
        return;
    }
    const QString absolute = QFileInfo(path).absoluteFilePath();
    QStringList entries = store_->value(key_dials).toStringList();
    entries.removeIf([&](const QString& entry) { return entry.section(QLatin1Char(' '), 1) == absolute; });
    if (reading) {
        entries.prepend(QString::number(*reading, 'g', 12) + QLatin1Char(' ') + absolute);
    }
    store_->setValue(key_dials, QStringList(entries.mid(0, dials_limit)));
}

QString Settings::last_folder() const {
    const QString folder = store_->value(key_folder).toString();
    return QDir(folder).exists() && !folder.isEmpty() ? folder : QDir::homePath();
}

void Settings::set_last_folder(const QString& folder) {
    store_->setValue(key_folder, folder);
}

QByteArray Settings::window_state(const QString& name) const {
    return store_->value(QStringLiteral("window/") + name).toByteArray();
}

void Settings::set_window_state(const QString& name, const QByteArray& state) {
    store_->setValue(QStringLiteral("window/") + name, state);
}

bool Settings::unfolded(const QString& group, bool otherwise) const {
    return store_->value(QStringLiteral("unfolded/") + group, otherwise).toBool();
}

void Settings::set_unfolded(const QString& group, bool unfolded) {
    store_->setValue(QStringLiteral("unfolded/") + group, unfolded);
}

bool Settings::caution_read() const {
    return store_->value(key_caution, false).toBool();
}

void Settings::set_caution_read(bool read) {
    store_->setValue(key_caution, read);
}

} // namespace loopwright::settings
