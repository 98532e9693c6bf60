#include "loop/detail/full_wave_gain.hpp"

#include "loop/detail/closed_form_parts.hpp"
#include "units/constants.hpp"

#include <algorithm>
#include <array>
#include <cmath>

namespace loopwright::loop::detail {

namespace {

using units::constants::free_space_impedance_ohm;
using units::constants::pi;

units::Decibel gain_of(double intensity, double accepted_W) {
    return {10 * std::log10(std::max(1e-30, 4 * pi * intensity / accepted_W))};
}

/// The largest value near a sampled peak, by the parabola through it and its neighbours.
double crest(double before, double at, double after) {
    const double bend = before - 2 * at + after;
    return bend < 0 ? at - (after - before) * (after - before) / (8 * bend) : at;
}

} // namespace

Pattern::Pattern(const SolvedLoop& loop)
    : elements_(loop.elements()), k_(loop.solution.wavenumber_rad_m()), permittivity_(loop.permittivity()) {
    if (ground::FarFieldSeries::reaches(elements_, k_)) {
        series_.emplace(elements_, k_);
    }
}

double Pattern::sky_power_W() const {
    return series_ ? series_->sky_power_W(permittivity_)
                   : ground::sky_power_W(elements_, k_, permittivity_, 64, 48);
}

double Pattern::intensity(double zenith_rad, double azimuth_rad) const {
    const ground::FarField f = series_
                                   ? series_->over_ground(permittivity_, zenith_rad, azimuth_rad)
                                   : ground::far_field(elements_, k_, permittivity_, zenith_rad, azimuth_rad);
    return (std::norm(f.e_theta_V) + std::norm(f.e_phi_V)) / free_space_impedance_ohm;
}

double Pattern::best_around(double zenith_rad) const {
    constexpr std::size_t around = 12;
    std::array<double, around> ring{};
    for (std::size_t i = 0; i < around; ++i) {
        ring[i] = intensity(zenith_rad, 2 * pi * static_cast<double>(i) / around);
    }
    const auto at = static_cast<std::size_t>(std::max_element(ring.begin(), ring.end()) - ring.begin());
    return crest(ring[(at + around - 1) % around], ring[at], ring[(at + 1) % around]);
}

units::Decibel Pattern::best_gain(double accepted_W) const {
    // Every 3 degrees of elevation, then the parabola: lobes of a loop at HF heights are wider.
    constexpr int steps = 30;
    std::array<double, steps + 1> by_zenith{};
    for (int i = 0; i <= steps; ++i) {
        by_zenith[static_cast<std::size_t>(i)] = best_around(0.5 * pi * i / steps);
    }
    const auto at =
        static_cast<std::size_t>(std::max_element(by_zenith.begin(), by_zenith.end()) - by_zenith.begin());
    const bool inner = at > 0 && at < steps;
    return gain_of(inner ? crest(by_zenith[at - 1], by_zenith[at], by_zenith[at + 1]) : by_zenith[at],
                   accepted_W);
}

units::Decibel Pattern::low_angle_gain(double accepted_W) const {
    return gain_of(best_around((90 - low_elevation_deg) * pi / 180), accepted_W);
}

} // namespace loopwright::loop::detail
