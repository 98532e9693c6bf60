#pragma once
// Gain of the loop against elevation and azimuth, and a dipole's beside it.
#include "base/notice.hpp"
#include "design/design.hpp"
#include "loop/dipole.hpp"
#include "loop/far_pattern.hpp"
#include "units/quantities.hpp"

#include <optional>
#include <vector>

namespace loopwright::field {

struct PatternRequest {
    units::Angle azimuth{units::degrees(0)};    ///< of the elevation cut, from +x toward +y
    units::Angle elevation{units::degrees(15)}; ///< of the azimuth cut
    units::Angle step{units::degrees(3)};       ///< 0.5 to 30 degrees
    std::optional<loop::ComparisonDipole> dipole;
};

/// Gain along a circle of directions, ascending angles, dBi.
struct Cut {
    std::vector<units::Angle> angle;
    std::vector<units::Decibel> gain;
};

struct Pattern {
    units::Frequency frequency{};
    bool free_space = true;
    PatternRequest request;
    /// Angle from the horizon at the chosen azimuth, over the zenith, to the opposite horizon: 0 to 180
    /// degrees; in free space on below the horizon to 360.
    Cut elevation;
    Cut azimuth; ///< 0 to 360 degrees, at the chosen elevation
    std::optional<Cut> dipole_elevation, dipole_azimuth;
    units::Decibel gain_max; ///< best direction above the horizon
    loop::Direction best;
    units::Decibel gain_low_angle; ///< at 15 degrees, best azimuth
    std::optional<units::Decibel> dipole_gain_low_angle;
    double efficiency = 0; ///< to the sky, capacitor loss and all
};

/// The full-wave model's pattern at a frequency to which the loop is tuned. Power lost in loop, capacitor and
/// ground counts against the gain; mismatch and feed line do not. Nothing where the model does not stand
/// behind a number (self-resonant, conductor longer than a wavelength); `notices` then says why. Throws
/// base::InputError for a design with refusals, a step or a dipole out of range.
[[nodiscard]] std::optional<Pattern> pattern(const design::Design& design, units::Frequency frequency,
                                             const PatternRequest& request, base::Notices* notices = nullptr);

} // namespace loopwright::field
