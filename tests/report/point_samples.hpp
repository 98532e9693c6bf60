#pragma once
// An operating point of round invented numbers that are consistent: 0.02 + 0.06 + 0.01 + 0.01 = 0.1 ohm.
#include "loop/operating_point.hpp"
#include "survey/survey.hpp"

#include <string>
#include <utility>
#include <vector>

namespace loopwright::report {

inline loop::OperatingPoint established() {
    loop::OperatingPoint point;
    point.frequency = units::megahertz(7.0755);
    point.power = units::watts(10);
    point.vswr_limit = 2.0;
    point.perimeter_in_wavelengths = 0.074;
    point.notices.add({"free_space_only", base::Severity::information, "Figures are for free space.", 0});
    loop::Resonance r;
    r.inductance = units::henries(2.5e-6);
    r.tuning_capacitance = units::picofarads(200);
    r.in_capacitor_range = true;
    r.resistance.radiation = units::ohms(0.02);
    r.resistance.conductor = units::ohms(0.06);
    r.resistance.joints = units::ohms(0.01);
    r.resistance.capacitor = units::ohms(0.01);
    r.efficiency = 0.2;
    r.efficiency_from_bandwidth = 0.2;
    r.gain_max = units::Decibel{-5.2};
    r.gain_low_angle = units::Decibel{-5.2};
    r.q_unloaded = 1100;
    r.bandwidth_half_power = units::kilohertz(12.9);
    r.bandwidth_vswr = units::kilohertz(4.55);
    r.loop_current_rms = units::amperes(10);
    r.capacitor_current_rms = units::amperes(9.7);
    r.capacitor_voltage_rms = units::volts(1090);
    r.capacitor_voltage_peak = units::volts(1541.5);
    r.efficiency_range = {0.15, 0.25};
    point.resonance = r;
    return point;
}

inline loop::OperatingPoint not_established() {
    loop::OperatingPoint point;
    point.frequency = units::megahertz(50.3145);
    point.power = units::watts(10);
    point.perimeter_in_wavelengths = 0.53;
    point.notices.add({"perimeter_beyond_range", base::Severity::not_established, "Too long here.", 1});
    return point;
}

inline survey::BandRow row(const std::string& band, loop::OperatingPoint point, survey::BandVerdict verdict,
                           const std::string& text, std::vector<survey::Reason> further = {}) {
    survey::BandRow made;
    made.band.name = band;
    made.point = std::move(point);
    made.verdict = verdict;
    made.verdict_text = text;
    made.further = std::move(further);
    return made;
}

} // namespace loopwright::report
