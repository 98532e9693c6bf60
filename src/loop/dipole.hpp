#pragma once
// The yardstick for gain: a half-wave dipole over the same ground.
#include "design/design.hpp"
#include "loop/operating_point.hpp"

#include <memory>

namespace loopwright::loop {

/// Gain of a lossless thin half-wave dipole in free space, broadside: D = 4/Cin(2 pi) = 1.6409, 2.151 dBi
/// (Balanis, Antenna Theory, section 4.6, prints 1.643 and 2.15 dB). Cin(2 pi) = 2.437653.
inline constexpr units::Decibel half_wave_dipole_gain{2.1509};

/// Where the dipole hangs. height: of a horizontal wire; of the lower end of a vertical one. azimuth: the
/// direction in which a horizontal wire runs, from +x toward +y (its own best direction is at right angles).
/// In free space height has no meaning.
struct ComparisonDipole {
    units::Length height{units::metres(5)};
    bool vertical = false;
    units::Angle azimuth{units::degrees(0)};
    bool operator==(const ComparisonDipole&) const = default;
};

/// A lossless thin dipole, exactly half a wavelength long, with half a sine of current (the textbook dipole),
/// its accepted power by the induced electromotive force with the ground's Sommerfeld terms: what the soil
/// takes is counted against its gain, as for the loop. Source of the current: Balanis, Antenna Theory,
/// section 4.6. Range: height 0.1 m to 100 m; nearer than a fiftieth of a wavelength to the ground a real
/// wire's current departs from the sine. Accuracy: 0.01 dB in free space.
class DipoleOverGround {
public:
    /// Throws base::InputError ("dipole.height") for a height below 0.1 m or above 100 m over ground, and for
    /// a frequency outside 10 kHz to 1 GHz.
    DipoleOverGround(const design::Ground& ground, units::Frequency frequency,
                     const ComparisonDipole& dipole);
    ~DipoleOverGround();
    DipoleOverGround(DipoleOverGround&&) noexcept;
    DipoleOverGround& operator=(DipoleOverGround&&) noexcept;

    /// dBi in a direction; over ground at or above the horizon.
    [[nodiscard]] units::Decibel gain(units::Angle elevation, units::Angle azimuth) const;
    /// At 15 degrees elevation, in its best azimuth.
    [[nodiscard]] units::Decibel low_angle_gain() const;
    /// Real part of the impedance at its middle, what the ground takes included.
    [[nodiscard]] units::Resistance input_resistance() const;

private:
    struct Parts;
    std::unique_ptr<const Parts> parts_;
};

/// The point with gain_over_dipole filled at the low angle, each antenna in its own best azimuth. A point of
/// the closed form is of free space: its dipole too, broadside to the low direction. A point of the full-wave
/// model is compared over the same ground. A point without gain comes back as it is. Throws what
/// DipoleOverGround throws.
[[nodiscard]] OperatingPoint compared_with_dipole(OperatingPoint point, const design::Ground& ground,
                                                  const ComparisonDipole& dipole = {});

} // namespace loopwright::loop
