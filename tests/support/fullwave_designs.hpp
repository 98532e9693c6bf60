#pragma once
// The design that a full-wave reference case describes.
#include "design/design.hpp"
#include "support/fullwave_cases.hpp"

namespace loopwright::support {

/// Coupling loops are left out.
[[nodiscard]] inline design::Design design_of(const FullwaveCase& c) {
    design::Design d;
    d.loop.size = units::metres(c.in("D"));
    d.loop.gap = units::metres(c.in("gap"));
    const std::string shape = c.text("shape");
    if (shape == "octagon" || shape == "stack8") {
        d.loop.outline = design::Outline::polygon;
        d.loop.sides = 8;
        d.loop.size_is = design::SizeMeaning::across_flats;
    } else if (shape == "square") {
        d.loop.outline = design::Outline::rectangle;
        d.loop.width = d.loop.height = units::metres(c.in("D"));
    }
    if (shape == "stack8") {
        d.loop.turns = static_cast<int>(c.in("turns"));
        d.loop.turn_spacing = units::metres(c.in("turn_spacing"));
        d.loop.lead = units::metres(c.in("lead"));
    }
    d.conductor.form = design::ConductorForm::wire;
    d.conductor.diameter = units::metres(2 * c.in("a"));
    d.conductor.metal.name.clear();
    d.conductor.metal.conductivity = units::siemens_per_metre(c.in("sigma"));
    d.capacitor.minimum = units::picofarads(1);
    d.capacitor.maximum = units::picofarads(2000);
    d.capacitor.loss.q = c.in("cap_Q");
    d.capacitor.contact_resistance = units::ohms(c.in("r_contact"));
    if (!c.free_space()) {
        d.site.ground.kind = design::GroundKind::soil;
        d.site.ground.relative_permittivity = c.in("eps_r");
        d.site.ground.conductivity = units::siemens_per_metre(c.in("sigma_g"));
        d.site.lowest_point = units::metres(c.in("z_bottom_nominal"));
    }
    if (c.text("orientation") == "horizontal") {
        d.site.plane = design::Plane::horizontal;
    }
    return d;
}

} // namespace loopwright::support
