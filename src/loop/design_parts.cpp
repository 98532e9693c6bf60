#include "loop/design_parts.hpp"

#include "conductor/joints.hpp"
#include "conductor/metals.hpp"
#include "design/on_band.hpp"
#include "design/winding.hpp"

#include <algorithm>
#include <utility>

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

capacitor::FixedCapacitor fixed_of(const design::AddedCapacitor& added) {
    capacitor::FixedCapacitor fixed;
    fixed.capacitance = added.capacitance.value;
    fixed.connection = added.connection == design::AddedConnection::series ? capacitor::Connection::series
                                                                           : capacitor::Connection::parallel;
    fixed.q = added.q;
    if (added.peak_voltage) {
        fixed.peak_voltage = added.peak_voltage->value;
    }
    if (added.current) {
        fixed.current = added.current->value;
    }
    return fixed;
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

namespace {

capacitor::CapacitorSpec spec_of(const design::Capacitor& capacitor) {
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
    for (const design::AddedCapacitor& each : capacitor.added) {
        spec.added.push_back(fixed_of(each));
        spec.added.back().number = spec.added.size() - 1;
    }
    return spec;
}

capacitor::PlateEdges edges_of(design::PlateEdges edges) {
    switch (edges) {
    case design::PlateEdges::rounded:
        return capacitor::PlateEdges::rounded;
    case design::PlateEdges::plain:
        return capacitor::PlateEdges::plain;
    case design::PlateEdges::sharp:
        break;
    }
    return capacitor::PlateEdges::sharp;
}

capacitor::NetworkSpec network_spec(const design::Capacitor& capacitor, const design::Site& site) {
    capacitor::NetworkSpec spec;
    spec.capacitor = spec_of(capacitor);
    spec.sections = capacitor.arrangement == design::SectionArrangement::single ? 1 : 2;
    const design::CapacitorRating& rating = capacitor.rating;
    spec.rating.peak_voltage = spec.capacitor.peak_voltage;
    if (rating.gap) {
        spec.rating.gap = rating.gap->value;
    }
    spec.rating.edges = edges_of(rating.plate_edges);
    spec.rating.safety_factor = rating.safety_factor;
    if (rating.current) {
        spec.rating.current = rating.current->value;
    }
    spec.altitude = site.altitude.value;
    spec.air_temperature = site.air_temperature.value;
    return spec;
}

} // namespace

capacitor::Capacitor capacitor_of(const design::Capacitor& capacitor) {
    return capacitor::Capacitor(spec_of(capacitor));
}

capacitor::Network network_of(const design::Capacitor& capacitor, const design::Site& site) {
    return capacitor::Network(network_spec(capacitor, site));
}

capacitor::Network network_of(const design::Capacitor& capacitor, const design::Site& site,
                              std::string_view band) {
    capacitor::NetworkSpec spec = network_spec(capacitor, site);
    auto& added = spec.capacitor.added;
    added.erase(std::remove_if(added.begin(), added.end(),
                               [&](const capacitor::FixedCapacitor& each) {
                                   return !design::is_there(capacitor.added[each.number.value()], band);
                               }),
                added.end());
    return capacitor::Network(std::move(spec));
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
