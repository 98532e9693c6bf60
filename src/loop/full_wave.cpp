#include "loop/full_wave.hpp"

#include "base/error.hpp"
#include "design/winding.hpp"
#include "ground/far_field_series.hpp"
#include "loop/design_notices.hpp"
#include "loop/detail/asked_point.hpp"
#include "loop/detail/closed_form_parts.hpp"
#include "loop/detail/full_wave_notices.hpp"
#include "loop/detail/solver_cache.hpp"
#include "loop/detail/tuned_loop.hpp"
#include "loop/detail/underground.hpp"
#include "loop/far_pattern.hpp"
#include "loop/fitted_capacitor.hpp"
#include "loop/resonator.hpp"
#include "units/constants.hpp"
#include "wire/port_matrix.hpp"
#include "wire/samples.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <string>
#include <vector>

namespace loopwright::loop {

namespace {

using Complex = std::complex<double>;
using units::constants::pi;
using units::constants::speed_of_light_m_s;

// Error of the mesh (docs/theory/wire.md, convergence) and of where the voltage stands: 20 to 50 mm of gap
// move the capacitance by 0.36 pF.
constexpr double mesh_resistance_error = 0.003;
constexpr double mesh_capacitance_error = 0.001;
constexpr double gap_capacitance_error_F = 0.4e-12;

} // namespace

std::vector<ground::CurrentElement> SolvedLoop::elements() const {
    return detail::stood_up(wire::current_elements(solution.mesh(), currents, 2), stand);
}

Complex SolvedLoop::permittivity() const {
    return underground ? detail::permittivity_of(*underground, frequency) : Complex(1.0);
}

namespace {

double checked(double refinement) {
    if (!(refinement >= 0.25 && refinement <= 4)) {
        throw base::InputError("mesh_refinement", std::to_string(refinement), "from 0.25 to 4");
    }
    return refinement;
}

} // namespace

struct FullWave::Prepared {
    design::Design made_from;
    Workload workload;
    double refinement;
    geometry::Winding winding;
    conductor::Conductor conductor;
    FittedCapacitors capacitors;
    double radius_m, length_m, joints_ohm_per_m;
    conductor::ProximityLoss proximity;
    detail::LoopLosses losses;
    std::optional<wire::Underground> underground;
    geometry::Frame stand;
    std::shared_ptr<const wire::Solver> solver;
    std::shared_ptr<const wire::GroundMatrices> ground;
    std::shared_ptr<const detail::SolvedFrequencies> solved;
    double inductance_H = 0;
    std::vector<detail::PointNotices> notices; ///< with each of the capacitors

    explicit Prepared(const design::Design& design, Workload work, double mesh_refinement)
        : made_from(design), workload(work), refinement(mesh_refinement),
          winding(design::as_winding(design.loop)), conductor(conductor_of(design.conductor)),
          capacitors(design), radius_m(conductor.equivalent_radius().value()),
          length_m(geometry::wire_path(winding).length_m()),
          joints_ohm_per_m(joints_of(design.joints).value() / length_m),
          proximity(winding.turns, winding.turns > 1 ? winding.spacing.value() / (2 * radius_m) : 2.0),
          losses{&conductor, &proximity, detail::share_of_turns(winding, length_m), 0},
          stand(geometry::frame_of(winding, placement_of(design.site))),
          solver(detail::solver_of(winding, radius_m, checked(mesh_refinement))) {
        if (design.site.ground.kind != design::GroundKind::free_space) {
            underground = detail::underground_of(design.site.ground);
            ground = detail::ground_of(solver, *underground, stand, workload);
        }
        solved = detail::solved_frequencies_of(solver, ground, workload);
        // Low enough for the current to be uniform, high enough for the matrix not to drown the inductance in
        // charge.
        constexpr double low_Hz = 1e4;
        inductance_H = solver->free_space(units::hertz(low_Hz)).im.front() / (2 * pi * low_Hz);
        const double curvature = detail::external_inductance(winding, radius_m).curvature_factor;
        for (std::size_t i = 0; i < capacitors.size(); ++i) {
            notices.emplace_back(detail::full_wave_notices(
                design, design_notices(design, conductor, capacitors[i], losses.factor(10e6), curvature)));
        }
    }

    [[nodiscard]] Complex conductor_ohm_per_m(double frequency_Hz) const {
        const Complex bare = conductor.internal_impedance_ohm_per_m(frequency_Hz);
        return {bare.real() * losses.factor(frequency_Hz) + joints_ohm_per_m, bare.imag()};
    }

    /// fitted: the frequency whose fixed capacitors are in.
    [[nodiscard]] Complex capacitor_admittance(double capacitance_F, double frequency_Hz,
                                               units::Frequency fitted) const {
        const capacitor::Capacitor& capacitor = capacitors.at(fitted);
        const double reactance = 1 / (2 * pi * frequency_Hz * capacitance_F);
        const double loss =
            capacitor.series_loss(units::farads(capacitance_F), units::hertz(frequency_Hz)).total.value();
        return 1.0 / Complex(loss, -reactance);
    }

    /// Impedance opposite the capacitor at another frequency, the capacitor left as it is.
    [[nodiscard]] Complex impedance(double frequency_Hz, double capacitance_F, units::Frequency fitted,
                                    const detail::NearbyPorts& near) const {
        const wire::TwoPort port =
            near.reaches(frequency_Hz)
                ? near.at(frequency_Hz)
                : wire::two_port(solved->solve(units::hertz(frequency_Hz), conductor_ohm_per_m(frequency_Hz))
                                     .admittance());
        return port.input_impedance(capacitor_admittance(capacitance_F, frequency_Hz, fitted));
    }

    [[nodiscard]] double reactance_slope_ohm_s(const SolvedLoop& loop, Complex capacitor_current) const;
    [[nodiscard]] double edge_Hz(const Resonance& result, double frequency_Hz, double plain_Hz, double vswr,
                                 const detail::NearbyPorts& near) const;
    [[nodiscard]] units::Frequency bandwidth(const Resonance& result, units::Frequency frequency,
                                             double vswr) const;
    void fill_intervals(Resonance& result, const OperatingPoint& point,
                        units::Interval<double> capacitor_ohm) const;
};

// dX/d omega opposite the capacitor as a quadratic form of the currents, x^T (dZ/d omega) x / I0^2: exact for
// a symmetric system, and free of the difference of two solutions.
double FullWave::Prepared::reactance_slope_ohm_s(const SolvedLoop& loop, Complex capacitor_current) const {
    const double f = loop.frequency.value();
    constexpr double step = detail::slope_step;
    const double d_omega = 2 * pi * f * 2 * step;
    const auto kept = solved->at(loop.frequency, conductor_ohm_per_m(f));
    const wire::FieldMatrix& matrix = kept->change;
    const auto& x = loop.currents.unknown_A;
    Complex slope = 0;
    std::size_t e = 0;
    for (std::size_t i = 0; i < x.size(); ++i) {
        Complex row = 0;
        for (std::size_t k = 0; k <= i; ++k, ++e) {
            const Complex change(matrix.re[e], matrix.im[e]);
            row += (i == k ? 1.0 : 2.0) * change * x[k];
        }
        slope += row * x[i];
    }
    const Complex internal = conductor_ohm_per_m(f * (1 + step)) - conductor_ohm_per_m(f * (1 - step));
    Complex square_integral = 0; // of the current, along the conductor
    for (const wire::Element& element : loop.solution.mesh().elements()) {
        const auto at = [&](std::size_t node) {
            return node == wire::no_node ? Complex(0) : loop.currents.node_A[node];
        };
        const Complex a = at(element.node[0]), b = at(element.node[1]);
        square_integral += element.length_m * (a * a + a * b + b * b) / 3.0;
    }
    slope += internal * square_integral;
    const double omega = 2 * pi * f;
    const Complex of_capacitor = Complex(0, 1 / (omega * omega * loop.tuning_capacitance.value())) *
                                 capacitor_current * capacitor_current;
    return (slope / d_omega + of_capacitor).imag();
}

FullWave::FullWave(const design::Design& design, Workload workload, double mesh_refinement)
    : prepared_(std::make_unique<const Prepared>(design, workload, mesh_refinement)) {}
FullWave::~FullWave() = default;

Complex FullWave::conductor_ohm_per_m(units::Frequency frequency) const {
    return prepared_->conductor_ohm_per_m(frequency.value());
}

std::optional<SolvedLoop> FullWave::solved(units::Frequency frequency) const {
    const Prepared& p = *prepared_;
    const double f = frequency.value();
    if (p.length_m * f / speed_of_light_m_s > full_wave_range_wavelengths) {
        return std::nullopt;
    }
    wire::Solution solution = p.workload == Workload::passing
                                  ? p.solved->solve(frequency, p.conductor_ohm_per_m(f))
                                  : p.solved->at(frequency, p.conductor_ohm_per_m(f))->solution;
    const wire::TwoPort port = wire::two_port(solution.admittance());
    const auto load = [&](double capacitance_F) {
        return p.capacitor_admittance(capacitance_F, f, frequency);
    };
    const std::optional<double> capacitance = wire::resonating_capacitance_F(port, 2 * pi * f, load);
    if (!capacitance || !(*capacitance > 0)) {
        return std::nullopt;
    }
    const Complex y = load(*capacitance);
    const Complex drive_V = port.input_impedance(y); // for 1 A
    const std::array<Complex, 2> volts{drive_V, port.second_voltage(drive_V, y)};
    wire::Currents currents = solution.currents(volts);
    return SolvedLoop{
        std::move(solution),         std::move(currents),        p.stand, p.underground, frequency,
        units::farads(*capacitance), units::ohms(drive_V.real())};
}

std::optional<MeshError> FullWave::mesh_error(units::Frequency frequency) const {
    const auto fine = solved(frequency);
    const FullWave half(prepared_->made_from, Workload::few_frequencies,
                        std::max(0.25, prepared_->refinement / 2));
    const auto coarse = half.solved(frequency);
    if (!fine || !coarse) {
        return std::nullopt;
    }
    const auto without_capacitor = [](const SolvedLoop& loop) {
        return loop.solution.powers(loop.currents).total_W();
    };
    const auto third = [](double coarse_value, double fine_value) {
        return (coarse_value - fine_value) / 3 / fine_value;
    };
    return MeshError{third(coarse->tuning_capacitance.value(), fine->tuning_capacitance.value()),
                     third(without_capacitor(*coarse), without_capacitor(*fine)),
                     fine->solution.mesh().nodes()};
}

// One edge by the secant rule on the ports' admittances, from where the plain resonator has it.
double FullWave::Prepared::edge_Hz(const Resonance& result, double frequency_Hz, double plain_Hz, double vswr,
                                   const detail::NearbyPorts& near) const {
    const double matched = result.resistance.total().value();
    const double wanted = (vswr - 1) / (vswr + 1);
    double edge = plain_Hz;
    double last = frequency_Hz;
    double last_excess = -wanted;
    for (int step = 0; step < 8; ++step) {
        const Complex z =
            impedance(edge, result.tuning_capacitance.value(), units::hertz(frequency_Hz), near);
        const double now = std::abs((z - matched) / (z + matched)) - wanted;
        if (std::abs(now) < 1e-6 || now == last_excess) {
            break;
        }
        const double next = edge - now * (edge - last) / (now - last_excess);
        last = edge;
        last_excess = now;
        edge = std::clamp(next, 0.5 * frequency_Hz, 1.5 * frequency_Hz);
    }
    return edge;
}

units::Frequency FullWave::Prepared::bandwidth(const Resonance& result, units::Frequency frequency,
                                               double vswr) const {
    constexpr double narrow_q = 150; // above, the loop itself changes too little over its band
    const auto plain = resonator_edges(frequency, result.q_unloaded, vswr);
    if (result.q_unloaded > narrow_q) {
        return plain.high - plain.low;
    }
    const double f = frequency.value();
    const auto near = solved->near(frequency, [this](double f_Hz) { return conductor_ohm_per_m(f_Hz); });
    return units::hertz(edge_Hz(result, f, plain.high.value(), vswr, *near) -
                        edge_Hz(result, f, plain.low.value(), vswr, *near));
}

void FullWave::Prepared::fill_intervals(Resonance& result, const OperatingPoint& point,
                                        units::Interval<double> capacitor_ohm) const {
    const double c = result.tuning_capacitance.value();
    const double c_error = gap_capacitance_error_F + mesh_capacitance_error * c;
    result.tuning_capacitance_range = {units::farads(std::max(0.0, c - c_error)), units::farads(c + c_error)};
    const auto metal = conductor.resistance_factor_range(point.frequency);
    const double field =
        (result.resistance.radiation + result.resistance.ground.value_or(units::ohms(0))).value();
    const double metal_ohm = result.resistance.conductor.value();
    const double joints = result.resistance.joints.value();
    const double low =
        (field + metal_ohm * metal.low + joints) * (1 - mesh_resistance_error) + capacitor_ohm.low;
    const double high =
        (field + metal_ohm * metal.high + joints) * (1 + mesh_resistance_error) + capacitor_ohm.high;
    const double total = result.resistance.total().value();
    const double sky = result.resistance.radiation.value();
    result.total_resistance_range = {units::ohms(low), units::ohms(high)};
    result.efficiency_range = {sky * (1 - mesh_resistance_error) / high,
                               std::min(1.0, sky * (1 + mesh_resistance_error) / low)};
    result.bandwidth_vswr_range = {result.bandwidth_vswr * (low / total),
                                   result.bandwidth_vswr * (high / total)};
    result.capacitor_voltage_peak_range = {result.capacitor_voltage_peak * std::sqrt(total / high),
                                           result.capacitor_voltage_peak * std::sqrt(total / low)};
}

OperatingPoint FullWave::at(units::Frequency frequency, units::Power power, double vswr_limit) const {
    const Prepared& p = *prepared_;
    OperatingPoint point = detail::asked(frequency, power, vswr_limit, p.length_m);
    point.model = Model::full_wave;
    const detail::PointNotices& notices = p.notices[p.capacitors.index_at(frequency)];
    if (const base::Notices thin = p.conductor.notices(frequency); !thin.empty()) {
        point.notices = notices.established; // its formula does not reach down to this frequency
        point.notices.merge(thin);
        return point;
    }
    const std::optional<SolvedLoop> loop = solved(frequency);
    if (!loop) {
        point.notices = point.perimeter_in_wavelengths > full_wave_range_wavelengths ? notices.beyond
                                                                                     : notices.self_resonant;
        return point;
    }
    point.notices = notices.established;
    Resonance result;
    const double omega = 2 * pi * frequency.value();
    const double reactance = 1 / (omega * loop->tuning_capacitance.value());
    const wire::PowerParts powers = loop->solution.powers(loop->currents); // for 1 A: ohms
    const Complex capacitor_current =
        loop->solution.current_at(loop->currents, loop->solution.mesh().model().ports.at(1));
    const auto loss = p.capacitors.at(frequency).series_loss(loop->tuning_capacitance, frequency);
    const double square = std::norm(capacitor_current);
    const FarPattern pattern(*loop);
    const double sky = p.ground ? pattern.sky_power_W() : powers.field_W;

    const double along = p.conductor_ohm_per_m(frequency.value()).real();
    const double joints_share = along > 0 ? p.joints_ohm_per_m / along : 0.0;
    result.resistance.radiation = units::ohms(sky);
    if (p.ground) {
        result.resistance.ground = units::ohms(std::max(0.0, powers.field_W - sky));
    }
    result.resistance.joints = units::ohms(powers.conductor_W.front() * joints_share);
    result.resistance.conductor = units::ohms(powers.conductor_W.front() * (1 - joints_share));
    result.resistance.capacitor = units::ohms(square * loss.total.value());
    const double total = result.resistance.total().value();
    const double internal_H =
        p.conductor.internal_impedance_ohm_per_m(frequency.value()).imag() * p.length_m / omega;
    result.inductance = units::henries(p.inductance_H + internal_H);
    result.tuning_capacitance = loop->tuning_capacitance;
    result.in_capacitor_range = p.capacitors.at(frequency).can_supply(result.tuning_capacitance);
    result.efficiency = sky / total;
    result.efficiency_from_bandwidth = powers.field_W / total;
    result.q_unloaded = omega * std::abs(p.reactance_slope_ohm_s(*loop, capacitor_current)) / (2 * total);
    const double current = std::sqrt(power.value() / total);
    result.loop_current_rms = units::amperes(current);
    result.capacitor_current_rms = units::amperes(current * std::abs(capacitor_current));
    result.capacitor_voltage_rms = units::volts(result.capacitor_current_rms.value() * reactance);
    result.capacitor_voltage_peak = result.capacitor_voltage_rms * std::sqrt(2.0);
    result.gain_max = pattern.best_gain(total);
    result.gain_low_angle = pattern.low_angle_gain(total);
    result.bandwidth_half_power = p.bandwidth(result, frequency, half_power_vswr);
    result.bandwidth_vswr = p.bandwidth(result, frequency, vswr_limit);
    p.fill_intervals(result, point, {square * loss.range.low.value(), square * loss.range.high.value()});
    point.resonance = result;
    return point;
}

} // namespace loopwright::loop
