#include "loop/explain.hpp"

#include "base/error.hpp"
#include "loop/design_parts.hpp"
#include "loop/detail/explain_parts.hpp"
#include "units/constants.hpp"

#include <algorithm>

namespace loopwright::loop {
namespace {

using detail::Facts;
using units::constants::pi;
using units::constants::speed_of_light_m_s;

std::string decibels(const units::Decibel& level, const char* unit) {
    return units::shown(level.value, units::Dimension::number, 3) + " " + unit;
}

Explanation explain_total(const Facts& f) {
    const auto& range = f.resonance.total_resistance_range;
    return {"resistance_ohm.total",
            "Total resistance",
            "R = sum of the parts",
            {{"R", "for the current opposite the capacitor", f.show(f.resonance.resistance.total())},
             {"", "range", f.show(range.low) + " to " + f.show(range.high)}},
            "Sum",
            "The range covers the model's error and the inputs that carry an interval."};
}

Explanation explain_efficiency(const Facts& f) {
    const bool ground = f.resonance.resistance.ground.has_value();
    return {"efficiency",
            "Efficiency",
            "η = R_rad / R",
            {{"η", "power to the sky over accepted power", f.plain(f.resonance.efficiency)},
             {"R_rad", "radiation resistance", f.show(f.resonance.resistance.radiation)},
             {"R", "total resistance", f.show(f.resonance.resistance.total())}},
            "Definition",
            ground ? "A bandwidth measurement alone would suggest more: it cannot tell ground loss from "
                     "radiation."
                   : "Free space; ground takes a part that this figure does not have."};
}

Explanation explain_gain(const Facts& f, const std::optional<units::Decibel>& gain, bool low) {
    return {
        low ? "gain_low_angle_dBi" : "gain_max_dBi",
        low ? "Gain at 15° elevation" : "Gain in the best direction",
        "G = 4π (power per solid angle) / (accepted power)",
        {{"G", low ? "best azimuth" : "above the horizon", gain ? decibels(*gain, "dBi") : "not established"},
         {"η", "efficiency", f.plain(f.resonance.efficiency)},
         {"", "of a small lossless loop in free space", "1.76 dBi"}},
        "Far field of the loop's own current",
        f.closed_form ? "Free space, as the loop stands." : "Over the ground that the design names."};
}

Explanation explain_q(const Facts& f) {
    return {"q_unloaded",
            "Unloaded Q",
            "Q = f/(2R) · |dX/df|",
            {{"Q", "at resonance, opposite the capacitor", f.plain(f.resonance.q_unloaded)},
             {"R", "total resistance", f.show(f.resonance.resistance.total())},
             {"", "ωL/R, which is too high on the upper bands",
              f.plain(f.omega * f.resonance.inductance.value() / f.resonance.resistance.total().value())}},
            "Yaghjian and Best, IEEE Trans. Antennas Propag. 53 (2005) 1298",
            "C fixed, all change of X and of the current with frequency included. Matched: half of it."};
}

Explanation explain_bandwidth(const Facts& f, bool half_power) {
    const auto width = half_power ? f.resonance.bandwidth_half_power : f.resonance.bandwidth_vswr;
    Explanation e{half_power ? "bandwidth_half_power_Hz" : "bandwidth_vswr_Hz",
                  half_power ? "Half-power bandwidth" : "VSWR bandwidth",
                  half_power ? "B = 2 f/Q" : "B = (f/Q) (s − 1)/√s",
                  {{"B", "of the matched loop", f.show(width)},
                   {"f", "resonance", f.show(f.point.frequency)},
                   {"Q", "unloaded", f.plain(f.resonance.q_unloaded)}},
                  "Yaghjian and Best (2005); theory (L.19)",
                  "Matched at resonance and left as it is. Below Q 300 the two edges are sought on the "
                  "loop's own impedance."};
    if (!half_power) {
        e.symbols.push_back({"s", "standing wave ratio at the edges", f.plain(f.point.vswr_limit, 3)});
    }
    return e;
}

Explanation explain_current(const Facts& f) {
    return {"loop_current_rms_A",
            "Loop current",
            "I₀ = √(P/R)",
            {{"I₀", "rms, opposite the capacitor: the largest", f.show(f.resonance.loop_current_rms)},
             {"P", "accepted power", f.show(f.point.power)},
             {"R", "total resistance", f.show(f.resonance.resistance.total())}},
            "Definition of R",
            "Peak envelope power; all of it accepted."};
}

Explanation explain_voltage(const Facts& f) {
    const auto& range = f.resonance.capacitor_voltage_peak_range;
    return {"capacitor_voltage_peak_V",
            "Capacitor voltage",
            "V = √2 I_c/(ωC)",
            {{"V", "peak", f.show(f.resonance.capacitor_voltage_peak)},
             {"I_c", "rms, in the capacitor", f.show(f.resonance.capacitor_current_rms)},
             {"C", "tuning capacitance", f.show(f.resonance.tuning_capacitance)},
             {"", "range", f.show(range.low) + " to " + f.show(range.high)}},
            "Ohm's law at the capacitor, never through a Q",
            "At resonance and at the accepted peak envelope power. Dangerous at a few watts already."};
}

Facts facts_of(const design::Design& design, const OperatingPoint& point, const Resonance& resonance,
               units::UnitSystem system) {
    return {design,
            point,
            resonance,
            system,
            design::as_winding(design.loop),
            conductor_of(design.conductor),
            point.perimeter_in_wavelengths * speed_of_light_m_s / point.frequency.value(),
            2 * pi * point.frequency.value(),
            point.model == Model::closed_form};
}

} // namespace

std::vector<Explanation> explanations(const design::Design& design, const OperatingPoint& point,
                                      units::UnitSystem system) {
    if (!point.resonance) {
        return {};
    }
    const Resonance& resonance = *point.resonance;
    const Facts f = facts_of(design, point, resonance, system);
    std::vector<Explanation> all{detail::explain_inductance(f), detail::explain_capacitance(f),
                                 detail::explain_radiation(f)};
    if (resonance.resistance.ground) {
        all.push_back(detail::explain_ground(f));
    }
    for (auto part : {detail::explain_conductor, detail::explain_joints, detail::explain_capacitor,
                      explain_total, explain_efficiency}) {
        all.push_back(part(f));
    }
    all.push_back(explain_gain(f, resonance.gain_max, false));
    all.push_back(explain_gain(f, resonance.gain_low_angle, true));
    all.push_back(explain_q(f));
    all.push_back(explain_bandwidth(f, true));
    all.push_back(explain_bandwidth(f, false));
    all.push_back(explain_current(f));
    all.push_back(explain_voltage(f));
    return all;
}

Explanation explain(std::string_view key, const design::Design& design, const OperatingPoint& point,
                    units::UnitSystem system) {
    if (!point.resonance) {
        return {};
    }
    const auto all = explanations(design, point, system);
    const auto found =
        std::find_if(all.begin(), all.end(), [&](const Explanation& e) { return e.key == key; });
    if (found == all.end()) {
        throw base::ProgramError("no explanation for " + std::string(key));
    }
    return *found;
}

} // namespace loopwright::loop
