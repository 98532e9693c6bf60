#include "loop/model_difference.hpp"

#include "base/error.hpp"

#include <algorithm>
#include <cmath>
#include <cstdio>
#include <utility>

namespace loopwright::loop {

namespace {

constexpr double worth_saying = 0.01; // relative
constexpr double worth_saying_F = 0.5e-12;

std::string percent(double share) {
    char text[32];
    std::snprintf(text, sizeof text, share < 0.0995 ? "%.1f %%" : "%.0f %%", 100 * share);
    return text;
}

std::string number(const char* format, double value) {
    char text[32];
    std::snprintf(text, sizeof text, format, value);
    return text;
}

using Weighed = std::pair<double, DifferenceReason>;

void add_ground(std::vector<Weighed>& found, const Resonance& closed, const Resonance& full) {
    const double total = full.resistance.total().value();
    if (full.resistance.ground) {
        const double share = full.resistance.ground->value() / total;
        if (share > worth_saying) {
            found.push_back({share,
                             {"ground", "The ground takes " + percent(share) +
                                            " of the power; the closed form knows of no ground. The "
                                            "bandwidth would suggest an efficiency of " +
                                            percent(full.efficiency_from_bandwidth) + " where " +
                                            percent(full.efficiency) + " reaches the sky."}});
        }
    }
    const double radiation = closed.resistance.radiation.value();
    const double change = full.resistance.radiation.value() / radiation - 1;
    const double weight = std::abs(change) * radiation / total;
    if (full.resistance.ground && weight > worth_saying) {
        found.push_back({weight,
                         {"soil_reflects", "The wave sent back by the ground makes the power to the sky for "
                                           "the same current " +
                                               percent(std::abs(change)) + (change < 0 ? " less" : " more") +
                                               " than in free space."}});
    }
}

void add_current(std::vector<Weighed>& found, double perimeter, const Resonance& full) {
    const double ratio = full.capacitor_current_rms.value() / full.loop_current_rms.value();
    const double uneven = 1 - ratio;
    // The closed form carries three currents; what it leaves grows with the fourth power of the perimeter.
    constexpr double closed_form_follows = 0.15;
    if (perimeter > closed_form_follows && uneven > worth_saying) {
        found.push_back({uneven * perimeter * perimeter,
                         {"current_not_even",
                          "The conductor is " + number("%.2f", perimeter) +
                              " wavelengths long and the current at the capacitor is " + percent(ratio) +
                              " of that opposite: the closed form's three currents follow that less well "
                              "above 0.15."}});
    }
}

} // namespace

ModelDifference difference(const OperatingPoint& closed_form, const OperatingPoint& full_wave,
                           const design::Ground& ground) {
    if (closed_form.model != Model::closed_form || full_wave.model != Model::full_wave ||
        closed_form.frequency != full_wave.frequency) {
        throw base::ProgramError("difference: not the two models at one frequency");
    }
    ModelDifference result;
    if (!closed_form.resonance || !full_wave.resonance) {
        const bool only_full = full_wave.resonance.has_value();
        result.reasons.push_back(
            {"closed_form_range",
             only_full ? "The closed form does not stand behind a number here; the full wave does."
                       : "The full wave does not stand behind a number here."});
        return result;
    }
    const Resonance& closed = *closed_form.resonance;
    const Resonance& full = *full_wave.resonance;
    result.resistance_ratio = full.resistance.total() / closed.resistance.total();
    result.efficiency_ratio = full.efficiency / closed.efficiency;
    result.voltage_ratio = full.capacitor_voltage_peak / closed.capacitor_voltage_peak;
    result.capacitance = full.tuning_capacitance - closed.tuning_capacitance;

    std::vector<Weighed> found;
    add_ground(found, closed, full);
    add_current(found, full_wave.perimeter_in_wavelengths, full);
    const double picofarads = result.capacitance->value() * 1e12;
    if (std::abs(result.capacitance->value()) > worth_saying_F) {
        const bool over_ground = ground.kind != design::GroundKind::free_space;
        found.push_back(
            {std::abs(*result.capacitance / full.tuning_capacitance),
             {"own_charge", "Tuning takes " + number("%.1f", std::abs(picofarads)) +
                                (picofarads < 0 ? " pF less" : " pF more") +
                                " than the closed form says: charge along the conductor" +
                                (over_ground ? " and in the ground" : "") + " is solved, not estimated."}});
    }
    std::stable_sort(found.begin(), found.end(),
                     [](const Weighed& a, const Weighed& b) { return a.first > b.first; });
    for (Weighed& reason : found) {
        result.reasons.push_back(std::move(reason.second));
    }
    return result;
}

} // namespace loopwright::loop
