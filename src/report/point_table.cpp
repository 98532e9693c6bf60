#include "report/tables.hpp"

#include "report/number.hpp"
#include "report/point_fields.hpp"
#include "report/words.hpp"
#include "survey/verdict.hpp"
#include "units/text.hpp"

#include <string>

namespace loopwright::report {
namespace {

using units::Dimension;

/// How one figure is told: its public name, words, and how its value is printed.
struct Told {
    const char* path;
    const char* words;
    Dimension dimension;
    const char* low = nullptr; ///< paths of the ends of its interval
    const char* high = nullptr;
};

constexpr Told figures[] = {
    {"tuning_capacitance_F", "Capacitance needed, stray included", Dimension::capacitance,
     "tuning_capacitance_low_F", "tuning_capacitance_high_F"},
    {"in_capacitor_range", "Within the capacitor's range", Dimension::number},
    {"inductance_H", "Inductance, low frequency", Dimension::inductance},
    {"own_capacitance_F", "The loop's own capacitance", Dimension::capacitance},
    {"resistance_ohm.radiation", "Resistance: radiation", Dimension::resistance},
    {"resistance_ohm.ground", "Resistance: ground", Dimension::resistance},
    {"resistance_ohm.conductor", "Resistance: conductor", Dimension::resistance},
    {"resistance_ohm.joints", "Resistance: joints", Dimension::resistance},
    {"resistance_ohm.capacitor", "Resistance: capacitor and contacts", Dimension::resistance},
    {"resistance_ohm.total", "Resistance: total", Dimension::resistance, "resistance_ohm.total_low",
     "resistance_ohm.total_high"},
    {"efficiency", "Efficiency (to the sky)", Dimension::number, "efficiency_low", "efficiency_high"},
    {"efficiency_from_bandwidth", "Efficiency that a bandwidth measurement suggests", Dimension::number},
    {"gain_max_dBi", "Gain, best direction", Dimension::number},
    {"gain_low_angle_dBi", "Gain at 15 degrees elevation", Dimension::number},
    {"gain_over_dipole_dB", "Against a half-wave dipole there", Dimension::number},
    {"q_unloaded", "Q unloaded", Dimension::number},
    {"q_loaded", "Q loaded, matched", Dimension::number},
    {"bandwidth_half_power_Hz", "Half-power bandwidth, matched", Dimension::frequency},
    {"bandwidth_vswr_Hz", "Bandwidth to VSWR ", Dimension::frequency, "bandwidth_vswr_low_Hz",
     "bandwidth_vswr_high_Hz"},
    {"loop_current_rms_A", "Loop current, rms", Dimension::current},
    {"capacitor_current_rms_A", "Capacitor current, rms", Dimension::current},
    {"capacitor_voltage_rms_V", "Capacitor voltage, rms", Dimension::voltage},
    {"capacitor_voltage_peak_V", "Capacitor voltage, peak", Dimension::voltage,
     "capacitor_voltage_peak_low_V", "capacitor_voltage_peak_high_V"},
};

std::string text_of(const Told& told, const Cell& cell) {
    const auto* number = std::get_if<double>(&cell);
    if (number == nullptr) {
        return cell_text(cell, {});
    }
    const std::string_view path = told.path;
    if (path == "efficiency" || path == "efficiency_from_bandwidth") {
        const survey::EfficiencyFigure printed = survey::efficiency_to_print(*number, 3);
        return significant(100 * printed.share, printed.digits) + " %";
    }
    if (path.substr(0, 5) == "gain_") {
        return fixed(*number, 1) + (path == "gain_over_dipole_dB" ? " dB" : " dBi");
    }
    if (told.dimension == Dimension::number) {
        return significant(*number, 3);
    }
    return with_plain_blanks(units::shown(*number, told.dimension));
}

std::string words_of(const Told& told, const loop::OperatingPoint& point) {
    const bool open = std::string_view(told.path) == "bandwidth_vswr_Hz"; // its limit belongs to its name
    return told.words + (open ? survey::given_text(point.vswr_limit, Dimension::number) + ", matched" : "");
}

/// In free space a bandwidth measurement suggests the efficiency itself: not said twice.
bool told_apart(const Told& told, const loop::OperatingPoint& point) {
    return std::string_view(told.path) != "efficiency_from_bandwidth" ||
           (point.resonance && point.resonance->resistance.ground);
}

} // namespace

Table point_table(const loop::OperatingPoint& point) {
    Table table;
    table.columns = {{"quantity", "Quantity", ""}, {"value", "Value", ""}, {"interval", "Interval", ""}};
    for (const Told& told : figures) {
        const Cell cell = figure(point, told.path);
        if (std::holds_alternative<std::monostate>(cell) || !told_apart(told, point)) {
            continue;
        }
        Cell interval;
        if (told.low != nullptr && std::holds_alternative<double>(figure(point, told.low))) {
            interval =
                text_of(told, figure(point, told.low)) + " to " + text_of(told, figure(point, told.high));
        }
        table.rows.push_back({words_of(told, point), text_of(told, cell), interval});
    }
    return table;
}

} // namespace loopwright::report
