#include "loop/far_pattern.hpp"

#include "units/constants.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <utility>

namespace loopwright::loop {

namespace {

using units::constants::free_space_impedance_ohm;
using units::constants::pi;

constexpr int coarsely_around = 12;
constexpr double least_gain = 1e-10; // where nothing radiates

units::Decibel gain_of(double intensity, double accepted_W) {
    return {10 * std::log10(std::max(least_gain, 4 * pi * intensity / accepted_W))};
}

double intensity_of(const ground::FarField& f) {
    return (std::norm(f.e_theta_V) + std::norm(f.e_phi_V)) / free_space_impedance_ohm;
}

/// The largest value near a sampled peak, by the parabola through it and its neighbours.
double crest(double before, double at, double after) {
    const double bend = before - 2 * at + after;
    return bend < 0 ? at - (after - before) * (after - before) / (8 * bend) : at;
}

} // namespace

FarPattern::FarPattern(const SolvedLoop& loop)
    : FarPattern(loop.elements(), loop.solution.wavenumber_rad_m(), loop.permittivity(), !loop.underground) {}

FarPattern::FarPattern(std::vector<ground::CurrentElement> elements, double wavenumber_rad_m,
                       std::complex<double> permittivity, bool free_space)
    : elements_(std::move(elements)), k_(wavenumber_rad_m), permittivity_(permittivity),
      free_space_(free_space) {
    if (ground::FarFieldSeries::reaches(elements_, k_)) {
        series_.emplace(elements_, k_);
    }
}

double FarPattern::sky_power_W() const {
    return series_ ? series_->sky_power_W(permittivity_)
                   : ground::sky_power_W(elements_, k_, permittivity_, 64, 48);
}

double FarPattern::intensity(double zenith_rad, double azimuth_rad) const {
    const auto field = [&] {
        if (series_) {
            return free_space_ ? series_->free_space(zenith_rad, azimuth_rad)
                               : series_->over_ground(permittivity_, zenith_rad, azimuth_rad);
        }
        return ground::far_field(elements_, k_, permittivity_, zenith_rad, azimuth_rad);
    };
    return intensity_of(field());
}

units::Decibel FarPattern::gain(units::Angle elevation, units::Angle azimuth, double accepted_W) const {
    return gain_of(intensity(0.5 * pi - elevation.value(), azimuth.value()), accepted_W);
}

std::vector<double> FarPattern::ring(double zenith_rad, const Azimuths& azimuths) const {
    std::vector<double> found;
    found.reserve(azimuths.rad.size());
    if (series_) {
        std::vector<ground::FarField> fields;
        series_->ring(free_space_ ? 1.0 : permittivity_, zenith_rad, azimuths.of_series, fields);
        for (const ground::FarField& f : fields) {
            found.push_back(intensity_of(f));
        }
    } else {
        for (const double azimuth : azimuths.rad) {
            found.push_back(intensity(zenith_rad, azimuth));
        }
    }
    return found;
}

FarPattern::Azimuths FarPattern::evenly_around(int count) const {
    Azimuths all;
    for (int i = 0; i < count; ++i) {
        all.rad.push_back(2 * pi * i / count);
    }
    if (series_) {
        all.of_series = series_->azimuths(all.rad);
    }
    return all;
}

double FarPattern::best_around(double zenith_rad, const Azimuths& azimuths) const {
    const std::vector<double> all = ring(zenith_rad, azimuths);
    const std::size_t around = all.size();
    const auto at = static_cast<std::size_t>(std::max_element(all.begin(), all.end()) - all.begin());
    return crest(all[(at + around - 1) % around], all[at], all[(at + 1) % around]);
}

units::Decibel FarPattern::best_gain(double accepted_W) const {
    // Every 3 degrees of elevation, then the parabola: lobes of a loop at HF heights are wider.
    constexpr int steps = 30;
    const Azimuths azimuths = evenly_around(coarsely_around);
    std::array<double, steps + 1> by_zenith{};
    for (int i = 0; i <= steps; ++i) {
        by_zenith[static_cast<std::size_t>(i)] = best_around(0.5 * pi * i / steps, azimuths);
    }
    const auto at =
        static_cast<std::size_t>(std::max_element(by_zenith.begin(), by_zenith.end()) - by_zenith.begin());
    const bool inner = at > 0 && at < steps;
    return gain_of(inner ? crest(by_zenith[at - 1], by_zenith[at], by_zenith[at + 1]) : by_zenith[at],
                   accepted_W);
}

Direction FarPattern::best_direction() const {
    constexpr int rings = 30; // of elevation, every 3 degrees
    const Azimuths azimuths = evenly_around(72);
    double best = -1;
    Direction at;
    for (int i = 0; i <= rings; ++i) {
        const double zenith = 0.5 * pi * i / rings;
        const std::vector<double> here = ring(zenith, azimuths);
        for (std::size_t n = 0; n < here.size(); ++n) {
            // The first of equals, so that a round pattern does not wander.
            if (here[n] > best * (1 + 1e-9)) {
                best = here[n];
                at = {units::radians(0.5 * pi - zenith), units::radians(azimuths.rad[n])};
            }
        }
    }
    return at;
}

units::Decibel FarPattern::low_angle_gain(double accepted_W) const {
    return gain_of(best_around((90 - low_elevation_deg) * pi / 180, evenly_around(coarsely_around)),
                   accepted_W);
}

} // namespace loopwright::loop
