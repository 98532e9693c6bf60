#include "loop/closed_form.hpp"

#include "design/winding.hpp"
#include "loop/design_notices.hpp"
#include "loop/detail/asked_point.hpp"
#include "loop/detail/closed_form_notices.hpp"
#include "loop/detail/closed_form_parts.hpp"
#include "loop/detail/ring_series.hpp"
#include "loop/fitted_capacitor.hpp"
#include "loop/resonator.hpp"
#include "units/constants.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <string>
#include <utility>
#include <vector>

namespace loopwright::loop {
namespace {

using units::constants::free_space_impedance_ohm;
using units::constants::pi;
using units::constants::speed_of_light_m_s;

// How well the place where the voltage stands is known, (L.20).
constexpr double gap_capacitance_error_F = 0.4e-12;

units::Interval<double> around(double value, double low_factor, double high_factor) {
    return {value * low_factor, value * high_factor};
}

units::Decibel decibels(double ratio) {
    return {10 * std::log10(ratio)};
}

class ClosedForm final : public LoopModel {
public:
    /// The design's winding, its path in its own coordinates and its conductor.
    ClosedForm(const design::Design& design, const geometry::Winding& winding, const geometry::WirePath& path,
               conductor::Conductor conductor);
    ClosedForm(const ClosedForm&) = delete;
    ClosedForm& operator=(const ClosedForm&) = delete;

    [[nodiscard]] Model kind() const noexcept override { return Model::closed_form; }
    [[nodiscard]] OperatingPoint at(units::Frequency frequency, units::Power power,
                                    double vswr_limit) const override;

private:
    [[nodiscard]] Resonance resonance(const OperatingPoint& point, const detail::TunedLoop& tuned) const;
    void fill_gains(Resonance& result, double k_1_m, const detail::TunedLoop& tuned) const;
    void fill_intervals(Resonance& result, const OperatingPoint& point, const detail::TunedLoop& tuned) const;
    [[nodiscard]] double bandwidth_Hz(const Resonance& result, units::Frequency frequency, double vswr) const;
    [[nodiscard]] double edge_Hz(const Resonance& result, double resonance_Hz, double edge_Hz,
                                 double vswr) const;
    [[nodiscard]] units::Interval<double> metal_range(units::Frequency frequency) const;

    geometry::Winding winding_;
    conductor::Conductor conductor_;
    FittedCapacitors capacitors_;
    double radius_m_;
    detail::ExternalInductance inductance_;
    detail::Directions directions_;
    detail::PreparedLoop loop_;
    conductor::ProximityLoss proximity_;
    detail::LoopLosses losses_;
    std::vector<detail::LoopCircuit> circuits_; ///< with each of capacitors_
    double own_capacitance_error_;
    units::Interval<double> thin_skin_range_;
    std::vector<detail::ClosedFormNotices> notices_; ///< likewise
};

// The frame of a design's loop; where its origin is does not matter here.
geometry::Frame axes_of(const design::Design& design, const geometry::Winding& winding) {
    geometry::Placement placement = placement_of(design.site);
    placement.free_space = true;
    return geometry::frame_of(winding, placement);
}

// One circular turn has series of its own.
detail::PreparedLoop prepared(const geometry::Winding& winding, const geometry::WirePath& path,
                              double radius_m, double inductance_H,
                              const std::vector<geometry::Vector3>& directions) {
    if (winding.outline == geometry::Outline::circle && winding.turns == 1) {
        return detail::prepare_circle({geometry::circumradius(winding).value(), radius_m, path.gap_m()},
                                      inductance_H, directions);
    }
    return detail::prepare_loop(path, radius_m, inductance_H, directions, {}, detail::cutting_for(winding));
}

ClosedForm::ClosedForm(const design::Design& design, const geometry::Winding& winding,
                       const geometry::WirePath& path, conductor::Conductor conductor)
    : winding_(winding), conductor_(std::move(conductor)), capacitors_(design),
      radius_m_(conductor_.equivalent_radius().value()),
      inductance_(detail::external_inductance(winding_, radius_m_)),
      directions_(detail::gain_directions(axes_of(design, winding_), detail::symmetry_of(winding_))),
      loop_(prepared(winding_, path, radius_m_, inductance_.henries, directions_.all)),
      proximity_(winding_.turns, winding_.turns > 1 ? winding_.spacing.value() / (2 * radius_m_) : 2.0),
      losses_{&conductor_, &proximity_, detail::share_of_turns(winding_, loop_.series.length_m),
              joints_of(design.joints).value()},
      own_capacitance_error_(detail::own_capacitance_error(winding_, radius_m_)),
      thin_skin_range_(conductor_.resistance_factor_range(units::megahertz(100))) {
    if (winding_.turns > 1) {
        loop_.series.inductance_H += inductance_.redistribution_H;
        loop_.series.reactance[0].c[0] += inductance_.redistribution_H * speed_of_light_m_s;
    }
    circuits_.reserve(capacitors_.size());
    notices_.reserve(capacitors_.size());
    for (std::size_t i = 0; i < capacitors_.size(); ++i) {
        circuits_.emplace_back(loop_.series, losses_, capacitors_[i]);
        notices_.emplace_back(design, design_notices(design, conductor_, capacitors_[i], losses_.factor(10e6),
                                                     inductance_.curvature_factor));
    }
}

OperatingPoint ClosedForm::at(units::Frequency frequency, units::Power power, double vswr_limit) const {
    OperatingPoint point = detail::asked(frequency, power, vswr_limit, loop_.series.length_m);
    const std::size_t fitted = capacitors_.index_at(frequency);
    const detail::ClosedFormNotices& notices = notices_[fitted];
    if (point.perimeter_in_wavelengths > closed_form_range_wavelengths) {
        point.notices = notices.beyond_range();
        return point;
    }
    const base::Notices conductor = conductor_.notices(frequency);
    if (!conductor.empty()) { // too thin for its formula at this frequency
        point.notices = notices.common();
        point.notices.merge(conductor);
        return point;
    }
    const std::optional<detail::TunedLoop> tuned = circuits_[fitted].tune(frequency.value());
    if (!tuned) {
        point.notices = notices.self_resonant();
        return point;
    }
    point.notices =
        notices.established(closed_form_relative_error(point.perimeter_in_wavelengths, winding_.turns));
    point.resonance = resonance(point, *tuned);
    return point;
}

units::Interval<double> ClosedForm::metal_range(units::Frequency frequency) const {
    // With a thin skin the interval does not depend on the frequency.
    return conductor_.radius_over_skin_depth(frequency.value()) > 100
               ? thin_skin_range_
               : conductor_.resistance_factor_range(frequency);
}

// Distance of the two frequencies where the loop, matched at resonance and left as it is, reaches the ratio.
double ClosedForm::bandwidth_Hz(const Resonance& result, units::Frequency frequency, double vswr) const {
    const auto plain = resonator_edges(frequency, result.q_unloaded, vswr);
    if (result.q_unloaded > 300) {
        return (plain.high - plain.low).value();
    }
    return edge_Hz(result, frequency.value(), plain.high.value(), vswr) -
           edge_Hz(result, frequency.value(), plain.low.value(), vswr);
}

// One of them, by the secant rule on the full circuit from where the plain resonator has it.
double ClosedForm::edge_Hz(const Resonance& result, double resonance_Hz, double edge_Hz, double vswr) const {
    const double matched = result.resistance.total().value();
    const double wanted = (vswr - 1) / (vswr + 1);
    double edge = edge_Hz;
    double last = resonance_Hz;
    double last_excess = -wanted;
    const detail::LoopCircuit& circuit = circuits_[capacitors_.index_at(units::hertz(resonance_Hz))];
    for (int step = 0; step < 20; ++step) {
        const std::complex<double> z = circuit.impedance(edge, result.tuning_capacitance.value());
        const double excess = std::sqrt(std::norm(z - matched) / std::norm(z + matched)) - wanted;
        if (std::abs(excess) < 1e-12 || excess == last_excess) {
            return edge;
        }
        const double next = edge - excess * (edge - last) / (excess - last_excess);
        last = edge;
        last_excess = excess;
        edge = next;
        if (!(edge > 0.5 * resonance_Hz && edge < 2 * resonance_Hz)) {
            break;
        }
    }
    return edge_Hz;
}

void ClosedForm::fill_gains(Resonance& result, double k, const detail::TunedLoop& tuned) const {
    const double factor = free_space_impedance_ohm * k * k / (4 * pi * tuned.total_ohm());
    std::array<double, 6 + detail::ring_azimuths> power{};
    for (std::size_t i = 0; i < loop_.directions.size(); ++i) {
        power[i] = loop_.directions[i].power(k, tuned.currents);
    }
    const double best =
        *std::max_element(power.begin(), power.begin() + std::ptrdiff_t(directions_.best_count));
    std::array<double, detail::ring_azimuths> ring{};
    for (std::size_t i = 0; i < ring.size(); ++i) {
        ring[i] = power[directions_.ring[i]];
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
    result.inductance = units::henries(loop_.series.inductance_H +
                                       tuned.internal_reactance_ohm_m * loop_.series.length_m / omega);
    result.tuning_capacitance = units::farads(1 / (omega * tuned.capacitor_reactance_ohm));
    result.in_capacitor_range = capacitors_.at(point.frequency).can_supply(result.tuning_capacitance);
    result.resistance = {units::ohms(tuned.radiation_ohm), std::nullopt, units::ohms(tuned.conductor_ohm),
                         units::ohms(tuned.joints_ohm), units::ohms(tuned.capacitor_ohm)};
    const double total = tuned.total_ohm();
    result.efficiency = tuned.radiation_ohm / total;
    result.efficiency_from_bandwidth = result.efficiency;
    result.q_unloaded = omega * std::abs(tuned.reactance_slope_ohm_s) / (2 * total);
    result.bandwidth_half_power = units::hertz(bandwidth_Hz(result, point.frequency, half_power_vswr));
    result.bandwidth_vswr = units::hertz(bandwidth_Hz(result, point.frequency, point.vswr_limit));
    const double current = std::sqrt(point.power.value() / total);
    const double capacitor_current = current * std::sqrt(std::norm(tuned.currents[0]));
    const double voltage = capacitor_current * tuned.capacitor_reactance_ohm;
    result.loop_current_rms = units::amperes(current);
    result.capacitor_current_rms = units::amperes(capacitor_current);
    result.capacitor_voltage_rms = units::volts(voltage);
    result.capacitor_voltage_peak = units::volts(std::sqrt(2.0) * voltage);
    fill_gains(result, k, tuned);
    fill_intervals(result, point, tuned);
    return result;
}

// A valid design that the model has nothing to say about.
class NotModelled final : public LoopModel {
public:
    NotModelled(double length_m, const std::string& reason) : length_m_(length_m) {
        notices_.add({"geometry_not_modelled", base::Severity::not_established,
                      reason + ": the closed form does not hold.", 1});
    }
    [[nodiscard]] Model kind() const noexcept override { return Model::closed_form; }
    [[nodiscard]] OperatingPoint at(units::Frequency frequency, units::Power power,
                                    double vswr_limit) const override {
        OperatingPoint point = detail::asked(frequency, power, vswr_limit, length_m_);
        point.notices = notices_;
        return point;
    }

private:
    double length_m_;
    base::Notices notices_;
};

} // namespace

double closed_form_relative_error(double perimeter_in_wavelengths, int turns) noexcept {
    const double share = perimeter_in_wavelengths / 0.3;
    const double growth = share * share * share * share;
    return turns > 1 ? 0.005 + 0.02 * growth : 0.002 + 0.002 * growth;
}

std::unique_ptr<LoopModel> make_closed_form(const design::Design& design) {
    const geometry::Winding winding = design::as_winding(design.loop);
    const geometry::WirePath path = geometry::wire_path(winding);
    conductor::Conductor conductor = conductor_of(design.conductor);
    const std::string reason =
        detail::not_modelled(winding, path.length_m(), conductor.equivalent_radius().value());
    if (!reason.empty()) {
        return std::make_unique<NotModelled>(path.length_m(), reason);
    }
    return std::make_unique<ClosedForm>(design, winding, path, std::move(conductor));
}

} // namespace loopwright::loop
