#pragma once
// Far field of a solved loop: power to the sky and gain in every direction.
#include "ground/far_field_series.hpp"
#include "loop/full_wave.hpp"
#include "units/quantities.hpp"

#include <complex>
#include <optional>
#include <vector>

namespace loopwright::loop {

struct Direction {
    units::Angle elevation{};
    units::Angle azimuth{}; ///< from +x toward +y
};

/// Radiation of current elements above a half-space (permittivity 1: free space), by the moment series of
/// ground::FarFieldSeries where it reaches and by the sum over the elements beyond. Space wave only; no
/// surface wave, which over soil has gone within some kilometres at HF. Immutable; any number of threads.
class FarPattern {
public:
    /// For the loop's 1 A opposite the capacitor.
    explicit FarPattern(const SolvedLoop& loop);
    FarPattern(std::vector<ground::CurrentElement> elements, double wavenumber_rad_m,
               std::complex<double> permittivity, bool free_space);

    /// Into the upper half-space [W].
    [[nodiscard]] double sky_power_W() const;
    /// Radiation intensity [W/sr]. Over ground zenith up to pi/2; in free space up to pi.
    [[nodiscard]] double intensity(double zenith_rad, double azimuth_rad) const;
    /// dBi, -100 where nothing radiates; accepted_W: the power that goes with the elements' current (of a
    /// loop: its total resistance).
    [[nodiscard]] units::Decibel gain(units::Angle elevation, units::Angle azimuth, double accepted_W) const;
    /// Best direction above the horizon, to 0.01 dB.
    [[nodiscard]] units::Decibel best_gain(double accepted_W) const;
    /// Where it is, to 3 degrees of elevation and 5 of azimuth.
    [[nodiscard]] Direction best_direction() const;
    /// At low_elevation_deg, best azimuth.
    [[nodiscard]] units::Decibel low_angle_gain(double accepted_W) const;
    [[nodiscard]] bool free_space() const noexcept { return free_space_; }

private:
    struct Azimuths {
        std::vector<double> rad;
        ground::FarFieldSeries::Azimuths of_series; ///< empty without a series
    };
    [[nodiscard]] Azimuths evenly_around(int count) const;
    /// Intensities at the azimuths.
    [[nodiscard]] std::vector<double> ring(double zenith_rad, const Azimuths& azimuths) const;
    [[nodiscard]] double best_around(double zenith_rad, const Azimuths& azimuths) const;

    std::vector<ground::CurrentElement> elements_;
    double k_;
    std::complex<double> permittivity_;
    bool free_space_;
    std::optional<ground::FarFieldSeries> series_; ///< absent for large systems
};

} // namespace loopwright::loop
