#include "loop/design_parts.hpp"

#include "conductor/joints.hpp"
#include "conductor/metals.hpp"
#include "design/winding.hpp"

namespace loopwright::loop {
namespace {

conductor::Form form_of(design::ConductorForm form) {
    switch (form) {
    case design::ConductorForm::wire:
        return conductor::Form::wire;
    case design::ConductorForm::tube:
        return conductor::Form::tube;
    case design::ConductorForm::strip:
        return conductor::Form::strip;
    case design::ConductorForm::braid:
        return conductor::Form::braid;
    case design::ConductorForm::stranded:
        break;
    }
    return conductor::Form::stranded;
}

} // namespace

geometry::Placement placement_of(const design::Site& site) {
    geometry::Placement placement;
    placement.tilt = site.plane == design::Plane::horizontal ? units::degrees(90) : site.tilt.value;
    placement.free_space = site.ground.kind == design::GroundKind::free_space;
    placement.clearance = site.lowest_point.value;
    return placement;
}

geometry::WirePath wire_path_of(const design::Design& design) {
    return geometry::wire_path(design::as_winding(design.loop), placement_of(design.site));
}

conductor::Conductor conductor_of(const design::Conductor& conductor) {
    conductor::ConductorSpec spec;
    spec.form = form_of(conductor.form);
    spec.diameter = conductor.diameter.value;
    spec.wall = conductor.wall.value;
    spec.width = conductor.width.value;
    spec.thickness = conductor.thickness.value;
    spec.conductivity = conductor.metal.conductivity.value;
    spec.temperature_coefficient = conductor.metal.temperature_coefficient.value;
    if (!conductor.metal.name.empty()) {
        const conductor::MetalData& metal = conductor::find_metal(conductor.metal.name);
        spec.conductivity = metal.conductivity;
        spec.conductivity_range = metal.range;
        spec.temperature_coefficient = metal.temperature_coefficient;
    }
    spec.temperature = conductor.temperature.value;
    if (conductor.form == design::ConductorForm::braid) {
        spec.factor = conductor.braid_factor;
    } else if (conductor.form == design::ConductorForm::stranded) {
        spec.factor = conductor.stranded_factor;
    }
    return conductor::Conductor(spec);
}

capacitor::Capacitor capacitor_of(const design::Capacitor& capacitor) {
    capacitor::CapacitorSpec spec;
    spec.minimum = capacitor.minimum.value;
    spec.maximum = capacitor.maximum.value;
    spec.stray = capacitor.stray.value;
    spec.loss.q = capacitor.loss.q;
    if (capacitor.loss.series_resistance) {
        spec.loss.series_resistance = capacitor.loss.series_resistance->value;
    }
    spec.loss.at = capacitor.loss.at.value;
    spec.loss.exponent = capacitor.loss.exponent;
    spec.contact_resistance = capacitor.contact_resistance.value;
    if (capacitor.rating.peak_voltage) {
        spec.peak_voltage = capacitor.rating.peak_voltage->value;
    }
    return capacitor::Capacitor(spec);
}

units::Resistance joints_of(const std::vector<design::Joint>& joints) {
    std::vector<conductor::JointGroup> groups;
    groups.reserve(joints.size());
    for (const design::Joint& joint : joints) {
        groups.push_back({joint.count, joint.resistance.value});
    }
    return conductor::joints_resistance(groups);
}

} // namespace loopwright::loop
