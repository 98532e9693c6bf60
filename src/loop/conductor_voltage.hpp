#pragma once
// The voltage along the conductor, from the capacitor to its middle: what a hand can touch.
#include "loop/full_wave.hpp"
#include "units/quantities.hpp"

#include <array>
#include <optional>
#include <vector>

namespace loopwright::loop {

/// A place on the conductor and its voltage against the ground far away (over ground: against the ground).
struct TouchPoint {
    units::Length along{};          ///< along the conductor from the capacitor gap's edge, the wire's way
    units::Length from_capacitor{}; ///< along the conductor from the nearer edge of the gap
    std::array<double, 3> position_m{};
    units::Voltage rms{};
    units::Voltage peak{};
};

struct ConductorVoltage {
    std::vector<TouchPoint> points; ///< from one edge of the gap round to the other
    units::Voltage highest_rms{};
    units::Voltage at_middle_rms{}; ///< opposite the capacitor
};

/// Up to this many wavelengths of conductor a scalar potential is read as a voltage; above, the magnetic part
/// of the field is no longer small and what a hand feels depends on where its wire runs.
inline constexpr double touch_range_wavelengths = 0.35;

/// Scalar potential (Lorenz gauge) of the solved charges on the conductor, over ground with the ground's
/// share (docs/theory/loop-full-wave.md, (F7)). power: accepted, peak envelope, > 0; points: 3 to 1001. Peak
/// values are sqrt(2) times rms: of the carrier at that power. Nothing beyond touch_range_wavelengths.
/// Accuracy: the voltage within an element of the gap's edge is that of the gap model (spread evenly over the
/// gap); the capacitor's body, its shaft and the coupling are not modelled, and a person who touches changes
/// it. It is a caution, never a permission: burns come from tens of volts and milliamperes.
[[nodiscard]] std::optional<ConductorVoltage> conductor_voltage(const SolvedLoop& loop, units::Power power,
                                                                int points = 33);

} // namespace loopwright::loop
