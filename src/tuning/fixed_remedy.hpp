#pragma once
// A frequency out of the capacitor's reach: by how much, and which fixed capacitor would bring it in.
// docs/theory/retune-card.md, (RC5).
#include "design/design.hpp"
#include "units/quantities.hpp"

#include <optional>
#include <vector>

namespace loopwright::tuning {

/// A fixed capacitor of the E12 series (IEC 60063), and what it carries there.
struct FixedRemedy {
    design::AddedConnection connection = design::AddedConnection::parallel;
    units::Capacitance capacitance{};
    units::Voltage voltage_peak{}; ///< across it
    units::Current current_rms{};  ///< through it
    bool whole_band = false;       ///< all of the band comes in
    /// All working frequencies of the band do, where they were given; else, without whole_band, the frequency
    /// alone.
    bool working_frequencies = false;
};

struct Shortfall {
    bool above = false;       ///< needs more than the most; else less than the least
    units::Capacitance by{};  ///< how much, across the loop's ends
    units::Capacitance end{}; ///< the most or the least that the capacitor supplies, with what is added
    std::optional<FixedRemedy> remedy;
};

struct Need {
    units::Capacitance capacitance{};                ///< at the frequency, whole, with stray
    units::Interval<units::Capacitance> uncertain{}; ///< its interval
    units::Interval<units::Capacitance> band{};      ///< over the whole band
    /// Over the working frequencies of the band, with their intervals; nothing: this one stands alone.
    std::optional<units::Interval<units::Capacitance>> working;
    units::Frequency frequency{};
    units::Voltage voltage_peak{}; ///< across the loop's ends, unfavourable end
};

/// Nothing where the capacitor supplies the need. The remedy: the smallest value in parallel, or the largest
/// in series with the variable capacitor, with which the whole band comes in; where no value does that, its
/// working frequencies, and else the frequency with its interval; from 1 pF to 8.2 nF; nothing where none
/// does. Volts and amperes are those of
/// capacitor::Network with that capacitor added. Throws as loop::network_of.
[[nodiscard]] std::optional<Shortfall> shortfall(const design::Capacitor& capacitor, const design::Site& site,
                                                 const Need& need);

/// The values of IEC 60063, E12, from 1 pF to 8.2 nF, ascending.
[[nodiscard]] const std::vector<units::Capacitance>& preferred_values();

} // namespace loopwright::tuning
