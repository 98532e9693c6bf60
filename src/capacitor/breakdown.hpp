#pragma once
// How many peak volts an air gap stands, from published breakdown data.
#include "base/notice.hpp"
#include "units/quantities.hpp"

#include <optional>

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
    rounded, ///< edges rounded to at least half the gap: 0.8, interval 0.7 to 0.95
    plain,   ///< plates as punched, deburred: 0.6, interval 0.45 to 0.8
    sharp,   ///< burrs, corners, screw ends: 0.4, interval 0.3 to 0.6
};

/// What a variable capacitor's gap may be asked to stand on radio frequency [V peak].
struct GapRating {
    units::Voltage uniform_breakdown{}; ///< power frequency, uniform field, at the air's density
    double radio_frequency_factor = 1;  ///< lower breakdown on RF than at power frequency
    double edge_factor = 1;
    double safety_factor = 1;
    units::Voltage usable_peak{}; ///< uniform * RF * edges / safety
    /// Where the gap may really break down: uniform +-8 % (sphere-gap tables), RF from 10 % below Peek's
    /// factor to none, edges over the interval of their class (ours).
    units::Interval<units::Voltage> breakdown_range{};
    /// Low: the lower of usable_peak and the low end of breakdown_range (the safety factor and the interval
    /// cover the same doubt and are not multiplied). High: the high end over the safety factor.
    units::Interval<units::Voltage> usable_peak_range{};
    base::Notices notices;
};

/// RF factor: Peek measured 26 % less at 40 kHz than at 60 Hz over 1 mm and 12 % less over 10 mm (quoted from
/// F. W. Peek, Dielectric Phenomena in High Voltage Engineering; read in a secondary account); between in
/// log(gap), the ends held outside. Data at HF are inconsistent: notice `rf_breakdown_uncertain`.
/// safety_factor >= 1. Throws base::InputError naming the field.
[[nodiscard]] GapRating gap_rating(units::Length gap, PlateEdges edges, units::Length altitude,
                                   units::Temperature temperature, double safety_factor);

/// The gap whose usable_peak is that voltage, found on gap_rating() (which rises with the gap); nothing where
/// it would lie outside the breakdown data (0.1 mm to 10 cm at the density of the air). Throws as
/// gap_rating().
[[nodiscard]] std::optional<units::Length> gap_for(units::Voltage usable_peak, PlateEdges edges,
                                                   units::Length altitude, units::Temperature temperature,
                                                   double safety_factor);

} // namespace loopwright::capacitor
