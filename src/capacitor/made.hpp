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
    units::Interval<units::Capacitance> range{}; ///< 0.65 to 1.5 times what the edges add
    bool established = true; ///< false outside what the formulas hold for: the range is then wider
};

/// Capacitance of a stack at an overlap x along the travel. Sides: strips of width w and thickness t, spacing
/// d, w wider by d/pi [1 + ln(2 pi w/d) + ln(1 + 2t/d + 2 sqrt(t/d + t^2/d^2))]. Sources: A. E. H. Love,
/// Proc. London Math. Soc. 22 (1923) 337; H. B. Palmer, AIEE Trans. 56 (1937) 363, also for lengthening both
/// sides of a rectangle; the thickness term as in later microstrip and MEMS texts (all from memory). Ends
/// that slide apart: our own map of two shifted half planes, which ends in Love's where they lie over each
/// other. Gaps inside a stack: an edge between two planes, S. B. Cohn, IRE Trans. MTT-2 (1954) 52 and MTT-3
/// (1955) 119 (from memory). Holds for w and most overlap from 4 d, w from a third of the most overlap, x
/// from d; outside, `established` is false. Against two- and three-dimensional moment methods: within 6 % of
/// the whole where x is at least half the most overlap, what the edges add within the interval. Law: nearly
/// linear in x. What is not in it: frame, leads, hands. Throws base::InputError ("capacitor.made.width") for
/// sizes that cannot be.
[[nodiscard]] MadeCapacitance plates_capacitance(const PlateStack& stack, units::Length overlap);

/// Capacitance of tubes at an overlap x along the travel: of each pair 2 pi eps x/ln(b/a) (any text on
/// fields), both ends lengthened as strips as wide as the mean radius (Love, as above), and the bare part of
/// the inner tube against the outside of the outer one by Howe's mean potential (G. W. O. Howe, The
/// Electrician 73 (1914) 829, from memory); the pairs in series, each alone. Holds for b up to 2 a, x from
/// b - a, most overlap from 4 b. Against a moment method of bodies of revolution: what the ends add
/// within the interval. What is not in it: tubes and loop ends side by side, leads. Throws as
/// plates_capacitance().
[[nodiscard]] MadeCapacitance tubes_capacitance(const TubePairs& tubes, units::Length overlap);

} // namespace loopwright::capacitor
