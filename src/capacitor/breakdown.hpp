#pragma once
// How many peak volts an air gap stands, from published breakdown data.
#include "base/notice.hpp"
#include "units/quantities.hpp"

namespace loopwright::capacitor {

/// Density of the air relative to 20 degC and 1013.25 hPa [1]: (p/p0)(293.15 K/T), with the pressure of the
/// standard atmosphere at the altitude. Sources: IEC 60052 (relative air density); International Standard
/// Atmosphere, ISO 2533, lapse 6.5 K/km from 1013.25 hPa (both from memory as to the clause). Range: -500 m
/// to 11 000 m, -60 to +60 degC; outside: base::InputError.
[[nodiscard]] double relative_air_density(units::Length altitude, units::Temperature temperature);

/// Peak breakdown voltage of a uniform gap in air at power frequency [V peak]:
/// V = 24.22 x + 6.08 sqrt(x) kV, x = delta d in cm, delta the relative air density.
/// Source: M. S. Naidu and V. Kamaraju, High Voltage Engineering, uniform-field relation (worked in their
/// Ex. 2.1, read in a transcription). Range: 0.1 mm to 10 cm of delta d; outside base::InputError. Accuracy
/// about 3 % in dry clean air against sphere-gap tables; dust, points and damp lower it.
[[nodiscard]] units::Voltage uniform_gap_breakdown(units::Length gap, double relative_density);

/// Edges of the plates, as a factor on the uniform gap. No standard factor exists; the figures are ours, on
/// the careful side of needle-gap tables (about 12 kV/cm between points), and marked so where they are used.
enum class PlateEdges {
    rounded, ///< edges rounded to at least half the gap: 0.8
    plain,   ///< plates as punched, deburred: 0.6
    sharp,   ///< burrs, corners, screw ends: 0.4
};

/// What a variable capacitor's gap may be asked to stand on radio frequency [V peak].
struct GapRating {
    units::Voltage uniform_breakdown{}; ///< power frequency, uniform field, at the air's density
    double radio_frequency_factor = 1;  ///< lower breakdown on RF than at power frequency
    double edge_factor = 1;
    double safety_factor = 1;
    units::Voltage usable_peak{}; ///< uniform * RF * edges / safety
    base::Notices notices;
};

/// RF factor: Peek measured 26 % less at 40 kHz than at 60 Hz over 1 mm and 12 % less over 10 mm (quoted from
/// F. W. Peek, Dielectric Phenomena in High Voltage Engineering; read in a secondary account); between in
/// log(gap), the ends held outside. Data at HF are inconsistent: notice `rf_breakdown_uncertain`.
/// safety_factor >= 1. Throws base::InputError naming the field.
[[nodiscard]] GapRating gap_rating(units::Length gap, PlateEdges edges, units::Length altitude,
                                   units::Temperature temperature, double safety_factor);

} // namespace loopwright::capacitor
