#pragma once
// Far field of a solved loop: power to the sky and gain.
#include "ground/far_field_series.hpp"
#include "loop/full_wave.hpp"

#include <optional>

namespace loopwright::loop::detail {

class Pattern {
public:
    explicit Pattern(const SolvedLoop& loop);

    /// Into the upper half-space, for the loop's 1 A [W].
    [[nodiscard]] double sky_power_W() const;
    /// Radiation intensity [W/sr] for 1 A, in a direction of the upper half-space.
    [[nodiscard]] double intensity(double zenith_rad, double azimuth_rad) const;
    /// Best direction above the horizon, to 0.01 dB; accepted_W: power for 1 A, the total resistance.
    [[nodiscard]] units::Decibel best_gain(double accepted_W) const;
    /// At low_elevation_deg, best azimuth.
    [[nodiscard]] units::Decibel low_angle_gain(double accepted_W) const;

private:
    [[nodiscard]] double best_around(double zenith_rad) const;

    std::vector<ground::CurrentElement> elements_;
    double k_;
    std::complex<double> permittivity_;
    std::optional<ground::FarFieldSeries> series_; ///< absent for large loops
};

} // namespace loopwright::loop::detail
