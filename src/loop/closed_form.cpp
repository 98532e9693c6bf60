#include "loop/closed_form.hpp"

#include "base/error.hpp"
#include "loop/design_notices.hpp"
#include "loop/detail/closed_form_parts.hpp"
#include "units/constants.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <string>

namespace loopwright::loop {
namespace {

using units::constants::free_space_impedance_ohm;
using units::constants::pi;
using units::constants::speed_of_light_m_s;

// How well the place where the voltage stands is known, (L.20).
constexpr double gap_capacitance_error_F = 0.4e-12;

// Steps in which the error estimate is stated.
constexpr std::array<double, 6> error_steps{0.003, 0.005, 0.01, 0.02, 0.03, 0.05};

units::Interval<double> around(double value, double low_factor, double high_factor) {
    return {value * low_factor, value * high_factor};
}

units::Decibel decibels(double ratio) {
    return {10 * std::log10(ratio)};
}

class ClosedForm final : public LoopModel {
public:
    explicit ClosedForm(const design::Design& design);
    ClosedForm(const ClosedForm&) = delete;
    ClosedForm& operator=(const ClosedForm&) = delete;

    [[nodiscard]] Model kind() const noexcept override { return Model::closed_form; }
    [[nodiscard]] OperatingPoint at(units::Frequency frequency, units::Power power,
                                    double vswr_limit) const override;

private:
    void prepare_notices(const design::Design& design);
    [[nodiscard]] const base::Notices& established(double error) const;
    [[nodiscard]] Resonance resonance(const OperatingPoint& point, const detail::TunedLoop& tuned) const;
    void fill_gains(Resonance& result, double k_1_m, const detail::TunedLoop& tuned) const;
    void fill_intervals(Resonance& result, const OperatingPoint& point, const detail::TunedLoop& tuned) const;
    [[nodiscard]] double edge_Hz(const Resonance& result, double frequency_Hz, double vswr, int side) const;
    [[nodiscard]] units::Interval<double> metal_range(units::Frequency frequency) const;

    geometry::Winding winding_;
    geometry::Placement placement_;
    conductor::Conductor conductor_;
    capacitor::Capacitor capacitor_;
    double radius_m_;
    detail::ExternalInductance inductance_;
    detail::Directions directions_;
    detail::PreparedLoop loop_;
    detail::LoopLosses losses_;
    detail::LoopCircuit circuit_;
    double own_capacitance_error_;
    units::Interval<double> thin_skin_range_;
    /// Established results: one list for each step of the error estimate.
    std::array<base::Notices, error_steps.size()> established_;
    base::Notices beyond_, self_resonant_, thin_conductor_;
};

// The parts refuse what they cannot compute; between them this is left.
const geometry::Winding& computable(const geometry::Winding& winding, double radius_m) {
    const double thickness_m = 2 * radius_m;
    const auto refuse = [](const char* field, units::Length value, const std::string& accepted) {
        throw base::InputError(field, std::to_string(value.value()) + " m", accepted);
    };
    const geometry::WirePath path = geometry::wire_path(winding);
    if (!(winding.gap.value() > 0) || winding.gap.value() > 0.25 * path.length_m()) {
        refuse("loop.gap", winding.gap, "a length above 0 and up to a quarter of the conductor");
    }
    const double across = std::sqrt(geometry::area(winding).value());
    if (!(across > 3 * thickness_m)) {
        refuse("conductor.diameter", units::metres(thickness_m),
               "a conductor thinner than a third of the loop's width");
    }
    if (winding.turns > 1 && !(winding.spacing.value() > 1.02 * thickness_m)) {
        refuse("loop.turn_spacing", winding.spacing,
               "turns that do not touch: over 1.02 conductor diameters");
    }
    if (winding.turns > 1 && !(winding.lead.value() > thickness_m)) {
        refuse("loop.lead", winding.lead,
               "a lead longer than the conductor's diameter: the link to the capacitor must clear the turns");
    }
    return winding;
}

ClosedForm::ClosedForm(const design::Design& design)
    : winding_(winding_of(design.loop)), placement_(placement_of(design.site)),
      conductor_(conductor_of(design.conductor)), capacitor_(capacitor_of(design.capacitor)),
      radius_m_(conductor_.equivalent_radius().value()),
      inductance_(detail::external_inductance(computable(winding_, radius_m_), radius_m_)),
      directions_(detail::gain_directions(geometry::frame_of(winding_, placement_))),
      loop_(detail::prepare_loop(geometry::wire_path(winding_, placement_), radius_m_, inductance_.henries,
                                 directions_.all, geometry::frame_of(winding_, placement_).origin,
                                 detail::cutting_for(winding_))),
      losses_{&conductor_, detail::proximity_factor(winding_, radius_m_, loop_.series.length_m),
              joints_of(design.joints).value()},
      circuit_(loop_.series, losses_, capacitor_),
      own_capacitance_error_(detail::own_capacitance_error(winding_, radius_m_)),
      thin_skin_range_(conductor_.resistance_factor_range(units::megahertz(100))) {
    if (winding_.turns > 1) {
        loop_.series.inductance_H += inductance_.redistribution_H;
        loop_.series.reactance[0].c[0] += inductance_.redistribution_H * speed_of_light_m_s;
    }
    prepare_notices(design);
}

void ClosedForm::prepare_notices(const design::Design& design) {
    using base::Severity;
    base::Notices common;
    const bool ground = design.site.ground.kind != design::GroundKind::free_space;
    common.add({"free_space_only", ground ? Severity::caution : Severity::information,
                ground ? "The closed form knows no ground: its figures are those of free space, not of the "
                         "ground that the design names."
                       : "Figures are for free space.",
                ground ? 1.0 : 0.0});
    common.merge(design_notices(design, conductor_, capacitor_, losses_.proximity_factor,
                                inductance_.curvature_factor));
    for (std::size_t i = 0; i < error_steps.size(); ++i) {
        established_[i] = common;
        const double percent = 100 * error_steps[i];
        established_[i].add({"error_estimate",
                             error_steps[i] > 0.01 ? Severity::caution : Severity::information,
                             "Estimated error of the model in resistance, currents and voltage: " +
                                 std::to_string(percent).substr(0, 3) + " %, apart from that of the inputs.",
                             error_steps[i]});
    }
    beyond_ = common;
    beyond_.add({"perimeter_beyond_range", Severity::not_established,
                 "The conductor is longer than 0.35 wavelengths here: the closed form does not hold.", 1});
    self_resonant_ = common;
    self_resonant_.add({"self_resonant", Severity::not_established,
                        "With its own capacitance alone the loop is resonant below this frequency: no "
                        "capacitor tunes it.",
                        1});
    thin_conductor_ = common;
}

const base::Notices& ClosedForm::established(double error) const {
    std::size_t step = 0;
    while (step + 1 < error_steps.size() && error_steps[step] < error) {
        ++step;
    }
    return established_[step];
}

OperatingPoint ClosedForm::at(units::Frequency frequency, units::Power power, double vswr_limit) const {
    if (!(frequency.value() >= 1e4 && frequency.value() <= 1e9)) {
        throw base::InputError("frequency", std::to_string(frequency.value()) + " Hz",
                               "a frequency from 10 kHz to 1 GHz");
    }
    if (!(power.value() > 0 && power.value() <= 1e6)) {
        throw base::InputError("power", std::to_string(power.value()) + " W", "a power above 0, up to 1 MW");
    }
    if (!(vswr_limit > 1 && vswr_limit <= 100)) {
        throw base::InputError("vswr", std::to_string(vswr_limit),
                               "a standing wave ratio above 1, up to 100");
    }
    OperatingPoint point;
    point.model = Model::closed_form;
    point.frequency = frequency;
    point.power = power;
    point.vswr_limit = vswr_limit;
    point.perimeter_in_wavelengths = loop_.series.length_m * frequency.value() / speed_of_light_m_s;
    if (point.perimeter_in_wavelengths > closed_form_range_wavelengths) {
        point.notices = beyond_;
        return point;
    }
    if (conductor_.radius_over_skin_depth(frequency.value()) < 30) {
        // A wall or a strip may be too thin for its formula at low frequencies.
        const base::Notices conductor = conductor_.notices(frequency);
        if (!conductor.empty()) {
            point.notices = thin_conductor_;
            point.notices.merge(conductor);
            return point;
        }
    }
    const std::optional<detail::TunedLoop> tuned = circuit_.tune(frequency.value());
    if (!tuned) {
        point.notices = self_resonant_;
        return point;
    }
    point.notices = established(closed_form_relative_error(point.perimeter_in_wavelengths, winding_.turns));
    point.resonance = resonance(point, *tuned);
    return point;
}

units::Interval<double> ClosedForm::metal_range(units::Frequency frequency) const {
    // With a thin skin the interval does not depend on the frequency.
    return conductor_.radius_over_skin_depth(frequency.value()) > 100
               ? thin_skin_range_
               : conductor_.resistance_factor_range(frequency);
}

// One of the two frequencies where the loop, matched at resonance and left as it is, reaches the ratio; from
// the plain resonator, whose edges lie at f (sqrt(1 + d^2) +- d) with d = (s - 1)/(2 sqrt(s) Q), refined on
// the full circuit where the loop is broad.
double ClosedForm::edge_Hz(const Resonance& result, double frequency_Hz, double vswr, int side) const {
    const double d = (vswr - 1) / (2 * std::sqrt(vswr) * result.q_unloaded);
    double edge = frequency_Hz * (std::sqrt(1 + d * d) + side * d);
    if (result.q_unloaded > 300) {
        return edge;
    }
    const double matched = result.resistance.total().value();
    const double wanted = (vswr - 1) / (vswr + 1);
    const auto excess = [&](double f) {
        const std::complex<double> z = circuit_.impedance(f, result.tuning_capacitance.value());
        return std::abs((z - matched) / (z + matched)) - wanted;
    };
    double last = frequency_Hz;
    double last_excess = -wanted;
    for (int step = 0; step < 20; ++step) {
        const double now = excess(edge);
        if (std::abs(now) < 1e-12 || now == last_excess) {
            break;
        }
        const double next = edge - now * (edge - last) / (now - last_excess);
        last = edge;
        last_excess = now;
        edge = next;
    }
    return edge;
}

void ClosedForm::fill_gains(Resonance& result, double k, const detail::TunedLoop& tuned) const {
    const double factor = free_space_impedance_ohm * k * k / (4 * pi * tuned.total_ohm());
    double best = 0;
    for (std::size_t i = 0; i < directions_.best_count; ++i) {
        best = std::max(best, loop_.directions[i].power(k, tuned.currents));
    }
    std::array<double, detail::ring_azimuths> ring{};
    for (std::size_t i = 0; i < ring.size(); ++i) {
        ring[i] = loop_.directions[directions_.best_count + i].power(k, tuned.currents);
    }
    const auto* const peak = std::max_element(ring.begin(), ring.end());
    const auto at = static_cast<std::size_t>(peak - ring.begin());
    const double before = ring[(at + ring.size() - 1) % ring.size()];
    const double after = ring[(at + 1) % ring.size()];
    const double bend = before - 2 * *peak + after;
    const double low = bend < 0 ? *peak - (after - before) * (after - before) / (8 * bend) : *peak;
    result.gain_max = decibels(factor * std::max(best, low));
    result.gain_low_angle = decibels(factor * low);
}

void ClosedForm::fill_intervals(Resonance& result, const OperatingPoint& point,
                                const detail::TunedLoop& tuned) const {
    const double error = closed_form_relative_error(point.perimeter_in_wavelengths, winding_.turns);
    const double c = result.tuning_capacitance.value();
    const double own = loop_.series.self_capacitance_F;
    const double capacitance_error =
        gap_capacitance_error_F + inductance_.relative_error * c + (error + own_capacitance_error_) * own;
    result.tuning_capacitance_range = {units::farads(std::max(0.0, c - capacitance_error)),
                                       units::farads(c + capacitance_error)};
    const auto metal = metal_range(point.frequency);
    const double radiation_low = tuned.radiation_ohm * (1 - error);
    const double radiation_high = tuned.radiation_ohm * (1 + error);
    const double loss_low =
        tuned.conductor_ohm * metal.low * (1 - error) + tuned.joints_ohm + tuned.capacitor_low_ohm;
    const double loss_high = tuned.conductor_ohm * metal.high * (1 + error) * inductance_.curvature_factor +
                             tuned.joints_ohm + tuned.capacitor_high_ohm;
    const double low = radiation_low + loss_low;
    const double high = radiation_high + loss_high;
    const double total = tuned.total_ohm();
    result.total_resistance_range = {units::ohms(low), units::ohms(high)};
    result.efficiency_range = {radiation_low / (radiation_low + loss_high),
                               radiation_high / (radiation_high + loss_low)};
    const auto width = around(result.bandwidth_vswr.value(), low / total, high / total);
    result.bandwidth_vswr_range = {units::hertz(width.low), units::hertz(width.high)};
    const auto voltage = around(result.capacitor_voltage_peak.value(), std::sqrt(total / high) * (1 - error),
                                std::sqrt(total / low) * (1 + error));
    result.capacitor_voltage_peak_range = {units::volts(voltage.low), units::volts(voltage.high)};
}

Resonance ClosedForm::resonance(const OperatingPoint& point, const detail::TunedLoop& tuned) const {
    Resonance result;
    const double frequency = point.frequency.value();
    const double omega = 2 * pi * frequency;
    const double k = omega / speed_of_light_m_s;
    const double internal_ohm_m = conductor_.internal_impedance_ohm_per_m(frequency).imag();
    result.inductance =
        units::henries(loop_.series.inductance_H + internal_ohm_m * loop_.series.length_m / omega);
    result.tuning_capacitance = units::farads(1 / (omega * tuned.capacitor_reactance_ohm));
    result.in_capacitor_range = capacitor_.can_supply(result.tuning_capacitance);
    result.resistance = {units::ohms(tuned.radiation_ohm), std::nullopt, units::ohms(tuned.conductor_ohm),
                         units::ohms(tuned.joints_ohm), units::ohms(tuned.capacitor_ohm)};
    const double total = tuned.total_ohm();
    result.efficiency = tuned.radiation_ohm / total;
    result.efficiency_from_bandwidth = result.efficiency;
    result.q_unloaded = omega * std::abs(tuned.reactance_slope_ohm_s) / (2 * total);
    result.bandwidth_half_power = units::hertz(edge_Hz(result, frequency, 3 + std::sqrt(8.0), 1) -
                                               edge_Hz(result, frequency, 3 + std::sqrt(8.0), -1));
    result.bandwidth_vswr = units::hertz(edge_Hz(result, frequency, point.vswr_limit, 1) -
                                         edge_Hz(result, frequency, point.vswr_limit, -1));
    const double current = std::sqrt(point.power.value() / total);
    const double capacitor_current = current * std::abs(tuned.currents[0]);
    const double voltage = capacitor_current * tuned.capacitor_reactance_ohm;
    result.loop_current_rms = units::amperes(current);
    result.capacitor_current_rms = units::amperes(capacitor_current);
    result.capacitor_voltage_rms = units::volts(voltage);
    result.capacitor_voltage_peak = units::volts(std::sqrt(2.0) * voltage);
    fill_gains(result, k, tuned);
    fill_intervals(result, point, tuned);
    return result;
}

} // namespace

double closed_form_relative_error(double perimeter_in_wavelengths, int turns) noexcept {
    const double share = perimeter_in_wavelengths / 0.3;
    const double growth = share * share * share * share;
    return turns > 1 ? 0.005 + 0.02 * growth : 0.002 + 0.004 * growth;
}

std::unique_ptr<LoopModel> make_closed_form(const design::Design& design) {
    return std::make_unique<ClosedForm>(design);
}

} // namespace loopwright::loop
