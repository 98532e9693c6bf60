#pragma once
// Soil as a half-space: its complex permittivity and what it reflects of a plane wave.
#include "units/quantities.hpp"

#include <complex>

namespace loopwright::ground {

/// A homogeneous, non-magnetic half-space below z = 0, described at all frequencies by two constants.
struct Soil {
    double relative_permittivity = 13;
    units::Conductivity conductivity{units::siemens_per_metre(0.005)};
    bool operator==(const Soil&) const = default;
};

/// Complex relative permittivity eps_r - j sigma / (omega eps0), exp(+j omega t) [1].
/// Source: J. A. Stratton, Electromagnetic Theory, McGraw-Hill 1941 (from memory: section 5.2).
/// Range: frequency > 0; the constants themselves hold where the soil class says (HF).
[[nodiscard]] std::complex<double> complex_permittivity(const Soil& soil, units::Frequency frequency);

/// Plane-wave reflection coefficients of the surface, referred to the electric field: `te` for the electric
/// field parallel to the surface (horizontal polarisation), `tm` for the magnetic field parallel to it
/// (vertical polarisation; +1 over a perfect conductor).
struct Reflection {
    std::complex<double> te, tm;
};

/// te = (c - s)/(c + s), tm = (eps c - s)/(eps c + s), c = cosine of the angle from the vertical,
/// s = sqrt(eps - sin^2) with Im s <= 0 (Fresnel; Stratton 1941, from memory: section 9.5).
/// Range: 0 <= cos_zenith <= 1. The perfect conductor is the limit te = -1, tm = +1 of large |eps|.
[[nodiscard]] Reflection reflection(std::complex<double> permittivity, double cos_zenith);

} // namespace loopwright::ground
