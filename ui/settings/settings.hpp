#pragma once
// What the program remembers between two starts, apart from designs: units, recent files, window state,
// whether the caution has been read. One object for the whole program; every change is signalled at once.
#include "loop/dipole.hpp"
#include "loop/operating_point.hpp"
#include "radio/connection.hpp"
#include "units/text.hpp"

#include <QByteArray>
#include <QObject>
#include <QString>
#include <QStringList>

#include <memory>
#include <numbers>
#include <optional>

class QSettings;

namespace loopwright::settings {

/// The dipole that patterns are compared with. One that is switched off keeps its height and direction.
struct DipoleChoice {
    bool compared = true;
    loop::ComparisonDipole dipole{};
    bool operator==(const DipoleChoice&) const = default;
};

/// What a dipole's height and direction may be.
inline constexpr double lowest_dipole_m = 0.1, highest_dipole_m = 100.0;
inline constexpr double most_dipole_turn_rad = 2.0 * std::numbers::pi;

class Settings : public QObject {
    Q_OBJECT
public:
    /// The user's own settings.
    explicit Settings(QObject* parent = nullptr);
    /// Settings in a file of their own (tests).
    explicit Settings(const QString& file, QObject* parent = nullptr);
    ~Settings() override;

    /// Units that results are shown in and that fields offer first. What a person typed stays as typed.
    [[nodiscard]] units::UnitSystem unit_system() const { return unit_system_; }
    void set_unit_system(units::UnitSystem system);

    /// The model that all figures of the window come from; full wave unless chosen otherwise.
    [[nodiscard]] loop::Model model() const { return model_; }
    void set_model(loop::Model model);
    /// Whether the headline numbers show the other model's beside them.
    [[nodiscard]] bool other_model_beside() const { return other_model_beside_; }
    void set_other_model_beside(bool beside);
    /// Whether the drawing shows the current around the loop.
    [[nodiscard]] bool current_drawn() const { return current_drawn_; }
    void set_current_drawn(bool drawn);

    /// What a file holds that cannot be is taken as the usual dipole.
    [[nodiscard]] const DipoleChoice& dipole() const { return dipole_; }
    void set_dipole(const DipoleChoice& choice);

    /// Where the radio is looked for. What a file holds that cannot be tried is taken as the usual one.
    [[nodiscard]] const radio::Connection& radio() const { return radio_; }
    void set_radio(const radio::Connection& connection);

    /// Newest first, at most ten, absolute paths; files that are gone are left out.
    [[nodiscard]] QStringList recent_files() const;
    void add_recent_file(const QString& path);
    void clear_recent_files();

    /// Where the dial of a design file's loop stood when it was last said; of the twenty files said last.
    [[nodiscard]] std::optional<double> dial_left_at(const QString& path) const;
    /// Nothing: not known any more. Does nothing for an empty path or a value that is not finite.
    void set_dial_left_at(const QString& path, std::optional<double> reading);

    /// Folder that file dialogs start in.
    [[nodiscard]] QString last_folder() const;
    void set_last_folder(const QString& folder);

    /// Size, place and splitters of a window, by name; empty when never kept.
    [[nodiscard]] QByteArray window_state(const QString& name) const;
    void set_window_state(const QString& name, const QByteArray& state);

    /// Whether a group of fields is unfolded, by name.
    [[nodiscard]] bool unfolded(const QString& group, bool otherwise) const;
    void set_unfolded(const QString& group, bool unfolded);

    /// True once the caution of the first start has been acknowledged.
    [[nodiscard]] bool caution_read() const;
    void set_caution_read(bool read);

Q_SIGNALS:
    void unit_system_changed();
    /// Model, or whether the other one is shown beside it.
    void model_changed();
    void current_drawn_changed();
    void recent_files_changed();

private:
    void load();
    void load_dipole();
    void load_radio();
    std::unique_ptr<QSettings> store_;
    units::UnitSystem unit_system_ = units::UnitSystem::metric;
    loop::Model model_ = loop::Model::full_wave;
    bool other_model_beside_ = false;
    bool current_drawn_ = false;
    DipoleChoice dipole_;
    radio::Connection radio_;
};

} // namespace loopwright::settings
