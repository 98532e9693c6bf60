#pragma once
// The one value that travels: the state of one design at one frequency and power. Nothing after the model
// recomputes what it holds.
#include "base/notice.hpp"
#include "units/quantities.hpp"

#include <optional>

namespace loopwright::loop {

enum class Model { closed_form, full_wave };

/// The elevation that gain_low_angle and gain_over_dipole are for.
inline constexpr double low_elevation_deg = 15;

/// Loss and radiation, referred to the current opposite the capacitor (the largest; for several turns the
/// point halfway along the conductor). `ground` is absent where the model is of free space only.
struct ResistanceParts {
    units::Resistance radiation{};
    std::optional<units::Resistance> ground;
    units::Resistance conductor{}; ///< proximity between turns included
    units::Resistance joints{};
    units::Resistance capacitor{}; ///< the capacitor's loss with its contact resistance
    [[nodiscard]] units::Resistance total() const {
        units::Resistance sum = radiation + conductor + joints + capacitor;
        return ground ? sum + *ground : sum;
    }
};

/// What the loop does when tuned to the frequency. Currents and voltages rms unless the name says peak;
/// power is the accepted peak envelope power.
struct Resonance {
    units::Inductance inductance{};          ///< low-frequency, external and internal
    units::Capacitance tuning_capacitance{}; ///< what capacitor and stray together must supply
    bool in_capacitor_range = false;
    ResistanceParts resistance;
    double efficiency = 0; ///< power to the sky / accepted power
    /// Over ground: the efficiency that a bandwidth measurement would suggest; equal to efficiency in free
    /// space.
    double efficiency_from_bandwidth = 0;
    std::optional<units::Decibel> gain_max;         ///< dBi, best direction above the horizon
    std::optional<units::Decibel> gain_low_angle;   ///< dBi, at 15 degrees elevation, best azimuth
    std::optional<units::Decibel> gain_over_dipole; ///< dB, at the low angle, where a dipole was asked for
    double q_unloaded = 0; ///< f/(2R) |dX/df| opposite the capacitor (Yaghjian and Best 2005)
    [[nodiscard]] double q_loaded() const { return q_unloaded / 2.0; } ///< matched
    units::Frequency bandwidth_half_power{};                           ///< of the matched loop
    units::Frequency bandwidth_vswr{}; ///< between the two frequencies of the point's VSWR limit
    units::Current loop_current_rms{}; ///< opposite the capacitor
    units::Current capacitor_current_rms{};
    units::Voltage capacitor_voltage_rms{};
    units::Voltage capacitor_voltage_peak{};

    // Intervals of the model and of the inputs that carry one (braid factor, class value of capacitor loss).
    units::Interval<units::Capacitance> tuning_capacitance_range;
    units::Interval<units::Resistance> total_resistance_range;
    units::Interval<double> efficiency_range;
    units::Interval<units::Frequency> bandwidth_vswr_range;
    units::Interval<units::Voltage> capacitor_voltage_peak_range;
};

struct OperatingPoint {
    Model model = Model::closed_form;
    units::Frequency frequency{};
    units::Power power{};
    double vswr_limit = 2.0;
    double perimeter_in_wavelengths = 0; ///< of the whole conductor
    base::Notices notices;
    /// Absent where the model does not stand behind a number ("not established"); a notice then says why.
    std::optional<Resonance> resonance;
};

} // namespace loopwright::loop
