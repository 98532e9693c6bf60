#pragma once
// Capacitors made by hand, computed from their dimensions with the field at the edges: flat plates that slide
// over each other, and tubes that slide into tubes ("trombone"). docs/theory/capacitor.md, (K13) to (K17).
#include "units/quantities.hpp"

namespace loopwright::capacitor {

/// Flat plates, neighbours of opposite polarity, edges aligned across the travel; half of them slide along
/// their length. At the most overlap they lie exactly over each other.
struct PlateStack {
    units::Length width{};     ///< across the travel
    units::Length length{};    ///< along the travel: the most overlap
    units::Length spacing{};   ///< between neighbouring faces
    units::Length thickness{}; ///< of a plate
    int plates = 2;            ///< in all, from 2
    double relative_permittivity = 1;
};

/// Coaxial tubes, the inner ones sliding out of the outer ones; the pairs in series.
struct TubePairs {
    units::Length inner_diameter{}; ///< outside of the inner tube
    units::Length outer_diameter{}; ///< inside of the outer tube
    units::Length length{};         ///< along the travel: the most overlap
    int pairs = 2;
    double relative_permittivity = 1;
};

struct MadeCapacitance {
    units::Capacitance ideal{};                  ///< area over distance, no field at the edges
    units::Capacitance value{};                  ///< with the edges
    units::Interval<units::Capacitance> range{}; ///< where the true value is expected
    bool established = true; ///< false outside the range that the formulas hold in: the range is then wider
};

/// Capacitance of a stack at an overlap along the travel.
[[nodiscard]] MadeCapacitance plates_capacitance(const PlateStack& stack, units::Length overlap);

/// Capacitance of tubes at an overlap along the travel.
[[nodiscard]] MadeCapacitance tubes_capacitance(const TubePairs& tubes, units::Length overlap);

} // namespace loopwright::capacitor
