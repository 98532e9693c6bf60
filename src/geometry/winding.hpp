#pragma once
// What a person measures of a loop (outline, size, turns) and what follows from it: lengths, areas and the
// conductor's path in space.
#include "geometry/wire_path.hpp"
#include "units/quantities.hpp"

namespace loopwright::geometry {

enum class Outline { circle, polygon, rectangle };
enum class Measure { diameter, across_flats, across_corners, side, conductor_length };
enum class Arrangement { stack, spiral };

/// The conductor's centre line as it was measured. Conventions:
/// - polygon with an even number of sides: flats above and below, capacitor in the middle of the top flat;
///   corner_down: corners above and below, capacitor at the top corner. Odd: a flat below, capacitor at the
///   top corner. Rectangle: capacitor in the middle of the top side.
/// - stack: rises evenly along the conductor by spacing a turn; starts and ends at the capacitor's side; its
///   ends are led straight outward by lead, the capacitor sits in the middle of the straight link between.
/// - spiral: flat; the size is that of the outermost turn (twice the mean radius of a circular one), each
///   further turn lies spacing inward; its ends are led by lead along the loop's axis, and the capacitor sits
///   in the middle of the straight link between them, clear of the turns it crosses.
/// - conductor_length is that of the turns, leads and link left out.
struct Winding {
    Outline outline = Outline::circle;
    int sides = 8;                                  ///< polygon, from 3
    units::Length size = units::metres(1);          ///< circle and polygon
    Measure measure = Measure::diameter;            ///< what size means
    units::Length width = units::metres(1);         ///< rectangle
    units::Length height = units::metres(1);        ///< rectangle
    bool corner_down = false;                       ///< even polygon
    int turns = 1;                                  ///< from 1
    Arrangement arrangement = Arrangement::stack;   ///< of more than one turn
    units::Length spacing = units::millimetres(30); ///< centre to centre, of more than one turn
    units::Length lead = units::millimetres(50);    ///< of more than one turn
    units::Length gap = units::millimetres(20);     ///< the capacitor's voltage is spread over this
};

/// How the loop stands: tilt turns it about the x axis from vertical (0) to horizontal (90 degrees).
/// clearance: height of the lowest point of the centre line above the ground; free space: the loop's centre
/// is the origin and clearance is not used.
struct Placement {
    units::Angle tilt = units::degrees(0);
    bool free_space = true;
    units::Length clearance = units::metres(0);
};

/// Half the distance between opposite corners (polygon) or the radius (circle, outermost turn of a spiral).
/// Throws base::InputError: measure not meaningful for the outline (across_flats of an odd polygon, diameter
/// of a polygon), a size not above 0, fewer than 3 sides, a spiral that does not fit.
[[nodiscard]] units::Length circumradius(const Winding& winding);

/// Length of one turn's outline; of a spiral: of the outermost turn. Regular polygon of n sides:
/// 2 n R sin(pi/n).
[[nodiscard]] units::Length perimeter(const Winding& winding);

/// Area inside one turn; of a spiral: of the outermost turn. Regular polygon: n/2 R^2 sin(2 pi/n).
[[nodiscard]] units::Area area(const Winding& winding);

/// Sum of the areas of all turns, what the small-loop formulas call N A.
[[nodiscard]] units::Area turn_area(const Winding& winding);

/// The conductor's path, in metres, in the coordinates of the docs (z up, capacitor's axis in the plane
/// x = 0). Throws what circumradius throws.
[[nodiscard]] WirePath wire_path(const Winding& winding, const Placement& placement = {});

/// The frame of a placed winding: origin at the loop's centre.
[[nodiscard]] Frame frame_of(const Winding& winding, const Placement& placement);

} // namespace loopwright::geometry
