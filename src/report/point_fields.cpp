#include "report/point_fields.hpp"

#include "base/error.hpp"
#include "report/words.hpp"
#include "units/constants.hpp"

#include <string>

namespace loopwright::report {
namespace {

using loop::OperatingPoint;
using loop::Resonance;

/// A figure of the tuned loop, nothing where that is not established.
template <auto Get>
Cell tuned(const OperatingPoint& point) {
    return point.resonance ? Cell(Get(*point.resonance)) : Cell();
}

template <auto Member>
Cell plain(const OperatingPoint& point) {
    return tuned<[](const Resonance& r) { return r.*Member; }>(point);
}

template <auto Member>
Cell si(const OperatingPoint& point) {
    return tuned<[](const Resonance& r) { return (r.*Member).value(); }>(point);
}

template <auto Member>
Cell decibels(const OperatingPoint& point) {
    if (!point.resonance || !(*point.resonance.*Member)) {
        return {};
    }
    return (*point.resonance.*Member)->value;
}

double number(double value) {
    return value;
}
template <class Quantity>
double number(Quantity quantity) {
    return quantity.value();
}

/// An end of an interval; nothing where the model left the interval at zero, which says that none is known.
template <auto Member, bool High>
Cell end(const OperatingPoint& point) {
    if (!point.resonance) {
        return {};
    }
    const auto& range = *point.resonance.*Member;
    const double low = number(range.low);
    const double high = number(range.high);
    return low == 0 && high == 0 ? Cell() : Cell(High ? high : low);
}

template <auto Part>
Cell resistance(const OperatingPoint& point) {
    return tuned<[](const Resonance& r) { return (r.resistance.*Part).value(); }>(point);
}
Cell ground_resistance(const OperatingPoint& point) {
    return point.resonance && point.resonance->resistance.ground
               ? Cell(point.resonance->resistance.ground->value())
               : Cell();
}
Cell total_resistance(const OperatingPoint& point) {
    return tuned<[](const Resonance& r) { return r.resistance.total().value(); }>(point);
}

/// The capacitance that resonates the inductance at the frequency, less the one that is needed: the charge on
/// the conductor stands for it.
Cell own_capacitance(const OperatingPoint& point) {
    if (!point.resonance) {
        return {};
    }
    const double omega = 2 * units::constants::pi * point.frequency.value();
    return 1 / (omega * omega * point.resonance->inductance.value()) -
           point.resonance->tuning_capacitance.value();
}

/// The share of the accepted power that a part of the resistance takes.
Cell power_in(const OperatingPoint& point, const Cell& part) {
    const auto* ohms = std::get_if<double>(&part);
    if (ohms == nullptr) {
        return {};
    }
    return point.power.value() * (*ohms / point.resonance->resistance.total().value());
}
template <auto Part>
Cell dissipation(const OperatingPoint& point) {
    return power_in(point, resistance<Part>(point));
}

using Parts = loop::ResistanceParts;

} // namespace

const std::vector<PointField>& point_fields() {
    static const std::vector<PointField> fields = {
        {"model", "the engine: closed-form or full-wave",
         [](const OperatingPoint& p) { return Cell(std::string(name_of(p.model))); }},
        {"frequency_Hz", "where the loop is tuned to",
         [](const OperatingPoint& p) { return Cell(p.frequency.value()); }},
        {"power_W", "peak envelope power that the loop accepts",
         [](const OperatingPoint& p) { return Cell(p.power.value()); }},
        {"perimeter_wavelengths", "length of the conductor in wavelengths",
         [](const OperatingPoint& p) { return Cell(p.perimeter_in_wavelengths); }},
        {"inductance_H", "low-frequency inductance, external and internal", si<&Resonance::inductance>},
        {"tuning_capacitance_F", "what the capacitor with its stray must supply",
         si<&Resonance::tuning_capacitance>},
        {"tuning_capacitance_low_F", "lower end of its interval",
         end<&Resonance::tuning_capacitance_range, false>},
        {"tuning_capacitance_high_F", "upper end", end<&Resonance::tuning_capacitance_range, true>},
        {"in_capacitor_range", "whether the nominal value lies between minimum and maximum with stray",
         plain<&Resonance::in_capacitor_range>},
        {"own_capacitance_F",
         "the loop's own: what 1/((2 pi f)^2 L), L from `inductance_H`, asks for beyond what is needed",
         own_capacitance},
        {"resistance_ohm.radiation", "opposite the capacitor, as all parts", resistance<&Parts::radiation>},
        {"resistance_ohm.ground", "loss in the ground; null where the model is of free space",
         ground_resistance},
        {"resistance_ohm.conductor", "skin effect, proximity between turns included",
         resistance<&Parts::conductor>},
        {"resistance_ohm.joints", "joints and contacts of the conductor", resistance<&Parts::joints>},
        {"resistance_ohm.capacitor", "loss of the capacitor with its contact resistance",
         resistance<&Parts::capacitor>},
        {"resistance_ohm.total", "sum of the parts", total_resistance},
        {"resistance_ohm.total_low", "lower end of its interval",
         end<&Resonance::total_resistance_range, false>},
        {"resistance_ohm.total_high", "upper end", end<&Resonance::total_resistance_range, true>},
        {"dissipation_W.radiation", "power in the radiation resistance", dissipation<&Parts::radiation>},
        {"dissipation_W.ground", "power lost in the ground; null as above",
         [](const OperatingPoint& p) { return power_in(p, ground_resistance(p)); }},
        {"dissipation_W.conductor", "power lost in the conductor", dissipation<&Parts::conductor>},
        {"dissipation_W.joints", "power lost in the joints", dissipation<&Parts::joints>},
        {"dissipation_W.capacitor", "power lost in the capacitor", dissipation<&Parts::capacitor>},
        {"dissipation_W.total", "the accepted power",
         [](const OperatingPoint& p) { return power_in(p, total_resistance(p)); }},
        {"efficiency", "power to the sky over accepted power", plain<&Resonance::efficiency>},
        {"efficiency_low", "lower end of its interval", end<&Resonance::efficiency_range, false>},
        {"efficiency_high", "upper end", end<&Resonance::efficiency_range, true>},
        {"efficiency_from_bandwidth",
         "what a bandwidth measurement would suggest; over ground more than what reaches the sky",
         plain<&Resonance::efficiency_from_bandwidth>},
        {"gain_max_dBi", "over isotropic, best direction above the horizon", decibels<&Resonance::gain_max>},
        {"gain_low_angle_dBi", "over isotropic, at 15 degrees of elevation, best azimuth",
         decibels<&Resonance::gain_low_angle>},
        {"gain_over_dipole_dB",
         "at the low angle over a half-wave dipole; null unless --compare-dipole is given",
         decibels<&Resonance::gain_over_dipole>},
        {"q_unloaded", "f/(2R) |dX/df| at resonance, nothing connected", plain<&Resonance::q_unloaded>},
        {"q_loaded", "matched: half of it", tuned<[](const Resonance& r) { return r.q_loaded(); }>},
        {"bandwidth_half_power_Hz", "of the matched loop", si<&Resonance::bandwidth_half_power>},
        {"bandwidth_vswr_Hz", "between the two frequencies where the matched loop reaches `vswr`",
         si<&Resonance::bandwidth_vswr>},
        {"bandwidth_vswr_low_Hz", "lower end of its interval", end<&Resonance::bandwidth_vswr_range, false>},
        {"bandwidth_vswr_high_Hz", "upper end", end<&Resonance::bandwidth_vswr_range, true>},
        {"vswr", "the limit that this bandwidth is for",
         [](const OperatingPoint& p) { return Cell(p.vswr_limit); }},
        {"loop_current_rms_A", "opposite the capacitor, where it is largest",
         si<&Resonance::loop_current_rms>},
        {"capacitor_current_rms_A", "through the capacitor", si<&Resonance::capacitor_current_rms>},
        {"capacitor_voltage_rms_V", "across the capacitor", si<&Resonance::capacitor_voltage_rms>},
        {"capacitor_voltage_peak_V", "across the capacitor", si<&Resonance::capacitor_voltage_peak>},
        {"capacitor_voltage_peak_low_V", "lower end of its interval",
         end<&Resonance::capacitor_voltage_peak_range, false>},
        {"capacitor_voltage_peak_high_V", "upper end", end<&Resonance::capacitor_voltage_peak_range, true>},
    };
    return fields;
}

Cell figure(const loop::OperatingPoint& point, std::string_view path) {
    for (const PointField& field : point_fields()) {
        if (field.path == path) {
            return field.value(point);
        }
    }
    throw base::ProgramError("no figure is called " + std::string(path));
}

} // namespace loopwright::report
