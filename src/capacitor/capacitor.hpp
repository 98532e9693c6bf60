#pragma once
// The tuning capacitor: its range with stray, its loss as a series resistance, its rating.
// docs/theory/capacitor.md has the equations (Kn).
#include "base/notice.hpp"
#include "units/quantities.hpp"

#include <cstddef>
#include <optional>
#include <vector>

namespace loopwright::capacitor {

/// Loss of the capacitor itself, contacts apart. One of the two, or neither: then the class value below, with
/// the notice `capacitor_loss_assumed`.
struct LossLaw {
    /// Of the capacitance with its stray, the same at every frequency. 10 to 1e12.
    std::optional<double> q;
    /// Series resistance at the frequency `at`; R(f) = R (f / at)^exponent. Exponent 0.5 is skin effect in
    /// the plates and leads, -1 a constant loss tangent, 0 a constant resistance.
    std::optional<units::Resistance> series_resistance;
    units::Frequency at = units::megahertz(10);
    double exponent = 0.5; ///< -2 to 2
};

/// parallel: across the loop's ends, like the stray. series: in series with the variable capacitor.
enum class Connection { parallel, series };

/// A fixed capacitor beside the variable one.
struct FixedCapacitor {
    units::Capacitance capacitance{};
    Connection connection = Connection::parallel;
    std::optional<double> q;                    ///< at every frequency; none: the class value below
    std::optional<units::Voltage> peak_voltage; ///< rating
    std::optional<units::Current> current;      ///< rating, rms
    std::optional<std::size_t> number;          ///< by which loads name it; none: its place in `added`
};

struct CapacitorSpec {
    units::Capacitance minimum{}; ///< of the variable capacitor as its two terminals see it
    units::Capacitance maximum{};
    units::Capacitance stray{}; ///< in parallel with everything: leads, mounting, plates to the frame
    LossLaw loss;
    units::Resistance contact_resistance{};     ///< in series with the capacitor, not with the stray
    std::optional<units::Voltage> peak_voltage; ///< rating of the variable capacitor
    std::vector<FixedCapacitor> added;
};

/// Class value of the Q of an air variable with wiping or riveted contacts, where no loss is given. Common
/// practice, no source: good butterfly and vacuum types lie above, wiping contacts and receiver types below.
inline constexpr double assumed_q = 1000.0;
inline constexpr units::Interval<double> assumed_q_range{300.0, 3000.0};

/// What the loop sees at its ends: a capacitance (with stray) in series with `total`.
struct SeriesLoss {
    units::Resistance loss{};                   ///< the capacitor's own
    units::Resistance contact{};                ///< of its contact resistance
    units::Resistance total{};                  ///< loss + contact
    units::Interval<units::Resistance> range{}; ///< of total; both ends total where the loss was given
};

/// Where one ampere through the whole network goes, as resistances in series with its terminals.
struct LossShares {
    units::Resistance variable{};         ///< the variable capacitor's own, contacts left out
    units::Resistance contact{};          ///< of its contact resistance
    units::Resistance stray{};            ///< only where the loss is given as a Q, or not given
    std::vector<units::Resistance> added; ///< in the order of the specification
};

/// A prepared capacitor: the variable one with everything in series with it, then everything parallel and the
/// stray across it; immutable.
class Capacitor {
public:
    /// Throws base::InputError (fields as in a design file, "capacitor.loss.q") for values out of range:
    /// capacitances 0.01 pF to 1 uF with minimum <= maximum, stray from 0; q 10 to 1e12; resistances 0 to
    /// 1000 ohm; both a q and a series resistance; rating 1 V to 1 MV. Fixed capacitors likewise
    /// ("capacitor.added[0].q").
    explicit Capacitor(const CapacitorSpec& spec);

    /// Of the whole network, with the variable capacitor at its minimum and maximum, (K1).
    [[nodiscard]] units::Interval<units::Capacitance> range() const;
    /// Whether a needed capacitance (with stray) lies in that range, ends included.
    [[nodiscard]] bool can_supply(units::Capacitance with_stray) const;
    /// What the variable capacitor has to be set to, (K6), whether it reaches that or not; nothing where no
    /// setting gives the whole.
    [[nodiscard]] std::optional<units::Capacitance> variable_for(units::Capacitance whole) const;

    /// Series equivalent of the loss at a capacitance with stray and a frequency, (K2) to (K5). Holds for
    /// losses small against the reactance (their product under 0.1); outside the range() the formula goes on,
    /// with the stray kept; below what is fixed, that shrinks in proportion. capacitance > 0, frequency > 0:
    /// base::ProgramError otherwise. Cost: some 10 ns (exponent 0.5).
    [[nodiscard]] SeriesLoss series_loss(units::Capacitance with_stray, units::Frequency frequency) const;

    /// The same loss member by member, (K7): the sum is that of series_loss().
    [[nodiscard]] LossShares loss_shares(units::Capacitance whole, units::Frequency frequency) const;

    /// `capacitor_loss_assumed` where the loss is the class value, `added_capacitor_loss_assumed` where that
    /// of a fixed capacitor is.
    [[nodiscard]] const base::Notices& notices() const { return notices_; }
    [[nodiscard]] const CapacitorSpec& spec() const { return spec_; }
    [[nodiscard]] std::optional<units::Voltage> peak_voltage_rating() const { return spec_.peak_voltage; }

private:
    struct Setting;
    [[nodiscard]] double own_series_ohm(double frequency_Hz) const;
    [[nodiscard]] Setting setting(double whole_F) const;
    [[nodiscard]] LossShares shares_with(double whole_F, double frequency_Hz, double class_q) const;
    [[nodiscard]] SeriesLoss network_loss(double whole_F, double frequency_Hz) const;

    CapacitorSpec spec_;
    double parallel_F_ = 0;       ///< fixed ones across the ends, stray included
    double series_elastance_ = 0; ///< sum of 1/C of those in series [1/F]
    bool added_q_missing_ = false;
    base::Notices notices_;
};

} // namespace loopwright::capacitor
