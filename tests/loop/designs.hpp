#pragma once
// Designs for the tests of the loop models, from the independent reference cases.
#include "design/design.hpp"
#include "support/cases.hpp"

namespace loopwright::loop {

/// What the circular loops, polygons and rectangles of independent_cases.json have in common; a lossless
/// capacitor unless the case has one.
inline design::Design design_of(const support::Case& c) {
    design::Design d;
    if (c.has_input("radius")) {
        d.loop.size = units::metres(2 * c.input("radius"));
    } else if (c.has_input("w")) {
        d.loop.outline = design::Outline::rectangle;
        d.loop.width = units::metres(c.input("w"));
        d.loop.height = units::metres(c.input("h"));
    } else {
        d.loop.outline = design::Outline::polygon;
        d.loop.sides = static_cast<int>(c.input("n"));
        d.loop.size_is = design::SizeMeaning::conductor_length;
        d.loop.size = units::metres(c.input("perimeter"));
    }
    if (c.has_input("turns")) {
        d.loop.turns = static_cast<int>(c.input("turns"));
        d.loop.turn_spacing = units::metres(c.input("pitch"));
    }
    d.conductor.diameter = units::metres(c.input("conductor.od"));
    d.conductor.wall = units::metres(c.input("conductor.wall"));
    d.conductor.metal.name = "";
    // The cases give the conductivity at the conductor's temperature.
    d.conductor.metal.conductivity = units::siemens_per_metre(c.input("conductor.sigma"));
    d.capacitor.loss.q = c.has_input("cap_q") ? c.input("cap_q") : 1e12;
    return d;
}

} // namespace loopwright::loop
