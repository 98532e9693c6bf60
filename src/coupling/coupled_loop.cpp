#include "coupling/coupled_loop.hpp"

#include "base/error.hpp"
#include "conductor/metals.hpp"
#include "coupling/mismatch.hpp"
#include "design/soil.hpp"
#include "design/validation.hpp"
#include "design/winding.hpp"
#include "loop/design_parts.hpp"
#include "loop/full_wave.hpp"
#include "units/constants.hpp"
#include "units/text.hpp"
#include "wire/ground_matrix.hpp"
#include "wire/port_matrix.hpp"
#include "wire/solver.hpp"

#include <algorithm>
#include <array>
#include <boost/math/tools/minima.hpp>
#include <cmath>
#include <optional>

namespace loopwright::coupling {

namespace {

using Complex = std::complex<double>;
using geometry::Vector3;
using units::constants::pi;

/// The circle in the plane of the turn, its far side toward the loop's middle, fed at the point nearest the
/// conductor.
wire::Wire coupling_wire(const geometry::WirePath& path, const design::Coupling& coupling) {
    const Vector3 opposite = path.opposite_point();
    const Vector3 inward =
        geometry::unit(Vector3{-opposite.x, 0, -opposite.z}); // the winding's own frame: plane x-z
    const double radius_m = 0.5 * coupling.diameter.value.value();
    geometry::Piece::Turning turning;
    turning.frame.origin = opposite + (coupling.axis_offset.value.value() + radius_m) * inward;
    turning.frame.up = inward;
    turning.frame.right = {inward.z, 0, -inward.x};
    turning.frame.rise = {0, 1, 0};
    turning.angle_change = 2 * pi;
    turning.radius_start_m = radius_m;
    return {{{geometry::Piece::turning(turning), 1}}, 0.5 * coupling.conductor_diameter.value.value(), true};
}

double width_m(const geometry::Winding& winding) {
    return winding.outline == geometry::Outline::rectangle
               ? std::min(winding.width.value(), winding.height.value())
               : 2 * geometry::circumradius(winding).value();
}

void refuse_misfit(const geometry::Winding& winding, const design::Coupling& coupling,
                   double conductor_radius_m) {
    const double reach = coupling.diameter.value.value() + coupling.axis_offset.value.value();
    if (!(reach < 0.9 * width_m(winding))) {
        throw base::InputError("coupling.diameter", units::canonical(coupling.diameter.value),
                               "a coupling loop that fits inside the loop with its axis_offset");
    }
    const double clear = coupling.axis_offset.value.value() -
                         0.5 * coupling.conductor_diameter.value.value() - conductor_radius_m;
    if (!(clear > 0)) {
        throw base::InputError("coupling.axis_offset", units::canonical(coupling.axis_offset.value),
                               "more than the two conductors' radii together");
    }
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

const design::Coupling& coupling_of(const design::Design& design) {
    if (!design.coupling) {
        throw base::InputError::sentence("coupling", "The design has no coupling loop; a match needs one.");
    }
    return *design.coupling;
}

} // namespace

struct CoupledLoop::Parts {
    loop::FullWave alone; ///< where the resonance lies
    geometry::Winding winding;
    conductor::Conductor conductor, coupling_conductor;
    capacitor::Capacitor capacitor;
    double joints_ohm_per_m;
    double line_ohm;
    std::unique_ptr<const wire::Solver> solver;
    std::unique_ptr<const wire::GroundMatrices> ground;

    Parts(const design::Design& design, units::Resistance line)
        : alone(design), winding(design::as_winding(design.loop)),
          conductor(loop::conductor_of(design.conductor)),
          coupling_conductor(copper_wire(coupling_of(design).conductor_diameter.value)),
          capacitor(loop::capacitor_of(design.capacitor)), line_ohm(line.value()) {
        const geometry::WirePath path = geometry::wire_path(winding);
        const double radius_m = conductor.equivalent_radius().value();
        refuse_misfit(winding, *design.coupling, radius_m);
        joints_ohm_per_m = loop::joints_of(design.joints).value() / path.length_m();
        wire::WireModel model;
        model.wires = {wire::wire_along(path, radius_m), coupling_wire(path, *design.coupling)};
        const double feed_width_m = std::min(design.loop.gap.value.value(), 0.1 * model.wires[1].length_m());
        model.ports = {{1, 0.5 * model.wires[1].length_m(), feed_width_m}, wire::capacitor_gap(path)};
        constexpr double highest_Hz = 60e6;
        solver = std::make_unique<const wire::Solver>(std::move(model), wire::MeshOptions{},
                                                      units::hertz(highest_Hz));
        if (design.site.ground.kind != design::GroundKind::free_space) {
            const wire::Underground underground{design.site.ground.kind == design::GroundKind::perfect,
                                                design::soil_of(design.site.ground)};
            ground = std::make_unique<const wire::GroundMatrices>(
                *solver, underground, geometry::frame_of(winding, loop::placement_of(design.site)));
        }
    }

    [[nodiscard]] wire::TwoPort ports(units::Frequency frequency) const {
        const double f = frequency.value();
        Complex main = conductor.internal_impedance_ohm_per_m(f);
        main += joints_ohm_per_m;
        const wire::Loading loading{{main, coupling_conductor.internal_impedance_ohm_per_m(f)}, {}};
        if (ground) {
            const wire::FieldMatrix added = ground->direct(frequency);
            return wire::two_port(solver->solve(frequency, loading, &added).admittance());
        }
        return wire::two_port(solver->solve(frequency, loading).admittance());
    }

    [[nodiscard]] Complex capacitor_admittance(double capacitance_F, double f) const {
        const double loss =
            capacitor.series_loss(units::farads(capacitance_F), units::hertz(f)).total.value();
        return 1.0 / Complex(loss, -1 / (2 * pi * f * capacitance_F));
    }

    [[nodiscard]] Complex input(const wire::TwoPort& port, double capacitance_F, double f) const {
        return port.input_impedance(capacitor_admittance(capacitance_F, f));
    }

    [[nodiscard]] double vswr_of(Complex z) const {
        return vswr(units::Impedance::from_value(z), units::ohms(line_ohm));
    }
};

CoupledLoop::CoupledLoop(const design::Design& design, units::Resistance line)
    : parts_(std::make_unique<const Parts>(design, line)) {}
CoupledLoop::~CoupledLoop() = default;
CoupledLoop::CoupledLoop(CoupledLoop&&) noexcept = default;
CoupledLoop& CoupledLoop::operator=(CoupledLoop&&) noexcept = default;

Match CoupledLoop::match(units::Frequency frequency) const {
    const Parts& p = *parts_;
    const double f = frequency.value();
    const loop::OperatingPoint alone = p.alone.at(frequency, units::watts(1), 2.0);
    if (!alone.resonance) {
        throw base::InputError("frequency", units::canonical(frequency),
                               "a frequency to which a capacitor can tune this loop");
    }
    const wire::TwoPort port = p.ports(frequency);
    const double own_F = alone.resonance->tuning_capacitance.value();
    const double step_F = own_F / alone.resonance->q_unloaded; // about half the unloaded width
    const auto at = [&](double steps) { return p.vswr_of(p.input(port, own_F + steps * step_F, f)); };
    // The coupling loop's inductance shifts the best setting by a few widths: look widely, then closely.
    double best = 0;
    const double reach = std::min(30.0, 0.5 * alone.resonance->q_unloaded);
    const int looks = static_cast<int>(10 * reach);
    for (int i = -looks; i <= looks; ++i) {
        if (at(0.1 * i) < at(best)) {
            best = 0.1 * i;
        }
    }
    const auto [steps, least] = boost::math::tools::brent_find_minima(at, best - 0.1, best + 0.1, 40);
    const double capacitance_F = own_F + steps * step_F;
    return {frequency, units::farads(capacitance_F),
            units::Impedance::from_value(p.input(port, capacitance_F, f)), least};
}

units::Impedance CoupledLoop::input(units::Frequency frequency, units::Capacitance capacitance) const {
    return units::Impedance::from_value(
        parts_->input(parts_->ports(frequency), capacitance.value(), frequency.value()));
}

std::vector<MatchPoint> CoupledLoop::curve(const Match& match, units::Frequency span, int points) const {
    if (points < 2) {
        throw base::ProgramError("a curve has two points or more");
    }
    std::vector<MatchPoint> curve;
    for (int i = 0; i < points; ++i) {
        const units::Frequency f = match.frequency + span * (static_cast<double>(i) / (points - 1) - 0.5);
        const units::Impedance z = input(f, match.tuning_capacitance);
        curve.push_back({f, z, parts_->vswr_of(z.value())});
    }
    return curve;
}

namespace {

design::Design with_diameter(const design::Design& design, double diameter_m) {
    design::Design changed = design;
    design::Coupling coupling = design.coupling.value_or(design::Coupling{});
    coupling.diameter = units::metres(diameter_m);
    changed.coupling = coupling;
    return changed;
}

/// The diameter with the least worst VSWR: an even look over the range, then Brent's minimum.
CommonCoupling search(const design::Design& design, const std::vector<units::Frequency>& frequencies,
                      units::Resistance line) {
    const double width = width_m(design::as_winding(design.loop));
    const auto matches_at = [&](double share) {
        const CoupledLoop coupled(with_diameter(design, share * width), line);
        std::vector<Match> matches;
        matches.reserve(frequencies.size());
        for (const units::Frequency& f : frequencies) {
            matches.push_back(coupled.match(f));
        }
        return matches;
    };
    const auto worst = [&](double share) {
        double most = 1;
        for (const Match& m : matches_at(share)) {
            most = std::max(most, m.vswr);
        }
        return most;
    };
    constexpr std::array<double, 8> looks{0.08, 0.11, 0.14, 0.17, 0.20, 0.24, 0.30, 0.38};
    std::size_t best = 0;
    std::array<double, looks.size()> seen{};
    for (std::size_t i = 0; i < looks.size(); ++i) {
        seen[i] = worst(looks[i]);
        best = seen[i] < seen[best] ? i : best;
    }
    const double low = best > 0 ? looks[best - 1] : 0.05;
    const double high = best + 1 < looks.size() ? looks[best + 1] : 0.5;
    std::uintmax_t evaluations = 12;
    const double share = boost::math::tools::brent_find_minima(worst, low, high, 12, evaluations).first;
    return {units::metres(share * width), matches_at(share)};
}

} // namespace

CouplingChoice best_coupling(const design::Design& design, units::Frequency frequency,
                             units::Resistance line) {
    const CommonCoupling one = search(design, {frequency}, line);
    return {one.diameter, one.matches.front()};
}

CommonCoupling common_coupling(const design::Design& design, const std::vector<units::Frequency>& frequencies,
                               units::Resistance line) {
    if (frequencies.empty()) {
        throw base::ProgramError("a coupling for no frequency");
    }
    return search(design, frequencies, line);
}

} // namespace loopwright::coupling
