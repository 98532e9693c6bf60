#include "coupling/detail/coupling_wire.hpp"

#include "base/error.hpp"
#include "conductor/metals.hpp"
#include "design/soil.hpp"
#include "design/winding.hpp"
#include "loop/design_parts.hpp"
#include "units/constants.hpp"
#include "units/text.hpp"

#include <algorithm>
#include <cmath>
#include <optional>
#include <vector>

namespace loopwright::coupling::detail {

namespace {

using geometry::Vector3;
using units::constants::pi;

/// Points of the conductor and the place at which a coupling loop stands, in the winding's own frame: below
/// the centre, in the middle of a stack's turns.
struct Below {
    std::vector<Vector3> conductor;
    Vector3 lowest;
};

Below below(const geometry::WirePath& path) {
    Below found;
    constexpr int points = 720;
    for (int i = 0; i < points; ++i) {
        found.conductor.push_back(path.point(path.length_m() * i / points));
        found.lowest.z = std::min(found.lowest.z, found.conductor.back().z);
    }
    found.lowest.y = path.opposite_point().y;
    return found;
}

/// Distance of the conductor from a filled disc in the plane of a turn.
double clearance_m(const Below& place, const Vector3& centre, double radius_m) {
    double least = INFINITY;
    for (const Vector3& p : place.conductor) {
        const double outside = std::max(0.0, std::hypot(p.x - centre.x, p.z - centre.z) - radius_m);
        least = std::min(least, std::hypot(outside, p.y - centre.y));
    }
    return least;
}

/// Height of the coupling loop's centre above the lowest point: so that the conductor is axis_offset away
/// where it is nearest; in a corner, or inside the inner turns of a spiral, that is further in.
double centre_height_m(const Below& place, double radius_m, double axis_offset_m, double width) {
    constexpr int steps = 500;
    const double least = axis_offset_m + radius_m;
    for (int i = 0; i < steps; ++i) {
        const double up = least + width * i / steps;
        if (!(up + radius_m < 0.9 * width)) {
            break;
        }
        if (clearance_m(place, place.lowest + Vector3{0, 0, up}, radius_m) > 0.998 * axis_offset_m) {
            return up;
        }
    }
    return 0;
}

/// The circle in the plane of a turn, fed at its lowest point.
std::optional<wire::Wire> coupling_circle(const geometry::WirePath& path, const design::Coupling& coupling,
                                          double width) {
    const double radius_m = 0.5 * coupling.diameter.value.value();
    const Below place = below(path);
    const double up_m = centre_height_m(place, radius_m, coupling.axis_offset.value.value(), width);
    if (!(up_m > 0)) {
        return std::nullopt;
    }
    geometry::Piece::Turning turning;
    turning.frame.origin = place.lowest + Vector3{0, 0, up_m};
    turning.angle_change = 2 * pi;
    turning.radius_start_m = radius_m;
    return wire::Wire{
        {{geometry::Piece::turning(turning), 1}}, 0.5 * coupling.conductor_diameter.value.value(), true};
}

void refuse_contact(const design::Coupling& coupling, double conductor_radius_m) {
    const double clear = coupling.axis_offset.value.value() -
                         0.5 * coupling.conductor_diameter.value.value() - conductor_radius_m;
    if (!(clear > 0)) {
        throw base::InputError("coupling.axis_offset", units::canonical(coupling.axis_offset.value),
                               "more than the two conductors' radii together");
    }
}

} // namespace

double width_m(const design::LoopShape& loop) {
    const geometry::Winding winding = design::as_winding(loop);
    return winding.outline == geometry::Outline::rectangle
               ? std::min(winding.width.value(), winding.height.value())
               : 2 * geometry::circumradius(winding).value();
}

conductor::Conductor copper_wire(units::Length diameter) {
    const conductor::MetalData& copper = conductor::find_metal("copper");
    conductor::ConductorSpec spec;
    spec.form = conductor::Form::wire;
    spec.diameter = diameter;
    spec.conductivity = copper.conductivity;
    spec.temperature_coefficient = copper.temperature_coefficient;
    return conductor::Conductor(spec);
}

CouplingWire::CouplingWire(const design::Design& design, const design::Coupling& coupling,
                           const loop::FullWave& alone, double refinement)
    : alone_(alone), wire_(copper_wire(coupling.conductor_diameter.value)) {
    const geometry::Winding winding = design::as_winding(design.loop);
    const geometry::WirePath path = geometry::wire_path(winding);
    const double radius_m = loop::conductor_of(design.conductor).equivalent_radius().value();
    refuse_contact(coupling, radius_m);
    const auto circle = coupling_circle(path, coupling, width_m(design.loop));
    if (!circle) {
        throw base::InputError(
            "coupling.diameter", units::canonical(coupling.diameter.value),
            "a coupling loop that fits inside the loop, axis_offset away from every part of "
            "its conductor");
    }
    wire::WireModel model;
    model.wires = {wire::wire_along(path, radius_m), *circle};
    wire_length_m_ = model.wires[1].length_m();
    const double feed_width_m = std::min(design.loop.gap.value.value(), 0.1 * wire_length_m_);
    model.ports = {{1, 0.5 * wire_length_m_, feed_width_m}, wire::capacitor_gap(path)};
    constexpr double highest_Hz = 60e6;
    wire::MeshOptions mesh;
    mesh.refinement = refinement;
    solver_ = std::make_unique<const wire::Solver>(std::move(model), mesh, units::hertz(highest_Hz));
    if (design.site.ground.kind != design::GroundKind::free_space) {
        const wire::Underground underground{design.site.ground.kind == design::GroundKind::perfect,
                                            design::soil_of(design.site.ground)};
        ground_ = std::make_unique<const wire::GroundMatrices>(
            *solver_, underground, geometry::frame_of(winding, loop::placement_of(design.site)));
    }
}

wire::Solution CouplingWire::solve(units::Frequency frequency) const {
    const wire::Loading loading{
        {alone_.conductor_ohm_per_m(frequency), wire_.internal_impedance_ohm_per_m(frequency.value())}, {}};
    if (ground_) {
        const wire::FieldMatrix added = ground_->direct(frequency);
        return solver_->solve(frequency, loading, &added);
    }
    return solver_->solve(frequency, loading);
}

OpenTwoPort CouplingWire::at(units::Frequency frequency) const {
    const wire::TwoPort y = wire::two_port(solve(frequency).admittance());
    const Complex determinant = y.y11 * y.y22 - y.y12 * y.y12;
    return {y.y22 / determinant, -y.y12 / determinant, y.y11 / determinant};
}

double CouplingWire::own_loss_share(units::Frequency frequency, const OpenTwoPort& port,
                                    Complex capacitor_ohm) const {
    // The current round a loop so much smaller than the wavelength is the feed's.
    const double own_ohm = wire_.internal_impedance_ohm_per_m(frequency.value()).real() * wire_length_m_;
    const double all_ohm = port.input(capacitor_ohm).real();
    return all_ohm > own_ohm ? own_ohm / all_ohm : 1.0;
}

base::Notices CouplingWire::notices(units::Frequency /*frequency*/) const {
    base::Notices notices;
    notices.add({"coupling_wire_copper", base::Severity::information,
                 "The coupling loop is taken as a round copper wire at 20 °C, fed where it is nearest to the "
                 "loop's conductor.",
                 0});
    return notices;
}

} // namespace loopwright::coupling::detail
