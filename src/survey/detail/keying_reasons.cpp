#include "loop/fitted_capacitor.hpp"
#include "survey/detail/keying_band.hpp"
#include "survey/detail/rounded.hpp"
#include "survey/verdict.hpp"
#include "units/text.hpp"

#include <algorithm>
#include <cmath>

namespace loopwright::survey::detail {

namespace {

using units::shown;

std::string metres_text(units::Length length) {
    return shown(units::metres(std::ceil(length.value() * 100 - 1e-6) / 100)); // never rounded down
}

/// To three digits, never rounded down: what the capacitor must stand.
std::string volts_up(units::Voltage voltage) {
    const double step = std::pow(10.0, std::floor(std::log10(voltage.value())) - 2);
    return shown(units::volts(std::ceil(voltage.value() / step - 1e-9) * step));
}

const char* word_of(exposure::Cause cause) {
    return cause == exposure::Cause::electric ? "electric field" : "magnetic field";
}

KeyingReason of_the_model(const loop::OperatingPoint& point) {
    std::string why = "the model stands behind no number here";
    for (const base::Notice& notice : point.notices.worst_first()) {
        if (notice.severity == base::Severity::not_established) {
            why = notice.text;
            break;
        }
    }
    if (why.back() == '.') {
        why.pop_back(); // reasons are sentences without it
    }
    return {KeyingVerdict::not_established, "Not established: " + why, ""};
}

KeyingReason of_reach(const KeyingBand& band, const design::Design& design) {
    const auto range = loop::capacitor_range_at(design, band.point.frequency);
    const units::Capacitance need = band.point.resonance->tuning_capacitance;
    const bool low = need < range.low;
    return {KeyingVerdict::out_of_reach,
            "Needs " + shown(need) + "; the capacitor " + (low ? "starts at " : "ends at ") +
                given_text(low ? range.low : range.high),
            ""};
}

std::string peak_text(const KeyingBand& band) {
    std::string text = shown(band.point.resonance->capacitor_voltage_peak) + " peak";
    const std::string high = shown(band.voltage_peak.high);
    return high == shown(band.point.resonance->capacitor_voltage_peak) ? text
                                                                       : text + " (perhaps " + high + ")";
}

/// The unfavourable end decides; where the figure as entered lies below what is usable, the end stands first.
std::string excess_text(const KeyingBand& band) {
    const auto entered = band.point.resonance->capacitor_voltage_peak;
    const std::string usable = "more than the usable " + shown(*band.usable_voltage);
    return entered > *band.usable_voltage ? peak_text(band) + " is " + usable
                                          : "Perhaps " + shown(band.voltage_peak.high) + " peak, " + usable +
                                                " (" + shown(entered) + " as entered)";
}

std::optional<KeyingReason> of_volts(const KeyingBand& band) {
    if (!band.load || !band.usable_voltage) {
        return KeyingReason{KeyingVerdict::not_established,
                            "No rating to hold " + peak_text(band) + " against",
                            "Enter the capacitor's peak rating or its air gap"};
    }
    if (band.voltage_peak.high > *band.usable_voltage) {
        return KeyingReason{KeyingVerdict::exceeded, excess_text(band),
                            "At most " + power_down(*band.power_for_capacitor) +
                                ", or a capacitor that stands " + volts_up(band.voltage_peak.high) + " peak"};
    }
    if (band.load->unrated_members) {
        return KeyingReason{KeyingVerdict::not_established,
                            "A member of the capacitor carries volts and has no rating",
                            "Enter the rating of every capacitor"};
    }
    return std::nullopt;
}

std::string limit_text(const KeyingDistance& d) {
    return d.standard + (d.from_memory ? " (figures from memory)" : "") + ", " +
           (d.tier == exposure::Tier::general_public ? "general public" : "occupational");
}

std::optional<KeyingReason> of_people(const KeyingBand& band, const design::Design& design) {
    for (const KeyingDistance& d : band.distances) {
        if (!d.farthest) {
            return KeyingReason{KeyingVerdict::not_established,
                                "Distance not established under " + limit_text(d) +
                                    ": beyond 100 m or where the model does not hold",
                                "Less power"};
        }
    }
    const KeyingDistance* most = widest_known(band);
    if (most == nullptr) {
        return KeyingReason{KeyingVerdict::not_established, "No limit for people was checked",
                            "Choose the limits that apply where you are"};
    }
    if (!design.site.people_distance) {
        return std::nullopt;
    }
    const units::Length people = design.site.people_distance->value;
    if (most->range.high <= people) {
        return std::nullopt;
    }
    std::string fix = "Keep everybody beyond " + metres_text(most->range.high);
    if (const auto power = least_power_for_people(band);
        power && power->value() > 0 && *power < band.point.power) {
        fix += ", or at most " + power_down(*power);
    }
    return KeyingReason{KeyingVerdict::exceeded,
                        "People at " + given_text(people) + " are nearer than the " +
                            metres_text(most->range.high) + " of " + limit_text(*most) + " (" +
                            word_of(most->farthest->cause) + ")",
                        fix};
}

/// Never to be read as a clearance where nobody said how near people come.
KeyingReason as_computed(const KeyingBand& band, const design::Design& design, bool intervals) {
    const KeyingDistance& most = *widest_known(band);
    const std::string nominal = intervals ? "" : "Nominal figures only. ";
    const std::string far = metres_text(most.range.high);
    const std::string by = limit_text(most) + ", " + word_of(most.farthest->cause);
    const std::string volts = peak_text(band) + ", usable " + shown(*band.usable_voltage);
    if (band.on_condition) {
        return {KeyingVerdict::within,
                nominal + "Only if people keep " + far + " away (" + by +
                    "); whether they do is for the operator to see, how near they come was not entered; " +
                    volts,
                ""};
    }
    return {KeyingVerdict::within,
            nominal + "Within the limits as computed for people at " +
                given_text(design.site.people_distance->value) + "; everybody must stay beyond " + far +
                " (" + by + "); " + volts,
            ""};
}

/// Where volts and people both forbid the key, what mends one leaves the other: the power that mends both
/// comes first. reasons: the volts' own before that of people.
void name_what_mends_both(const KeyingBand& band, std::vector<KeyingReason>& reasons) {
    const auto greatest = greatest_power(band);
    const bool both = reasons.size() == 2 && reasons[0].verdict == KeyingVerdict::exceeded &&
                      reasons[1].verdict == KeyingVerdict::exceeded;
    if (both && greatest && greatest->power.value() > 0) {
        std::string& fix = reasons[0].fix; // "At most 39 W, or a capacitor ..."
        fix = "At most " + power_down(greatest->power) +
              " for volts and people together; for the volts alone: a" + fix.substr(1);
    }
}

/// Nothing where a part stays cool. The upper end counts.
std::optional<std::string> of_heat(const std::string& part, const loop::Heating& heating) {
    if (!heating.rise_K) {
        return "How warm the " + part + " becomes is not established, its unfavourable end is more than " +
               shown(loop::highest_rise_K, units::Dimension::number) +
               " K above the air: check it for warmth with the transmitter off";
    }
    if (heating.rise_range_K.high < hot_rise_K) {
        return std::nullopt;
    }
    const auto kelvin = [](double rise_K) { return shown(rise_K, units::Dimension::number, 2) + " K"; };
    return "The " + part + " becomes " + kelvin(*heating.rise_K) + " (perhaps " +
           kelvin(heating.rise_range_K.high) +
           ") warmer than the air in long use: it may be too hot to touch, plastics may soften";
}

void add_remarks(KeyingBand& band) {
    if (!band.heating || band.verdict == KeyingVerdict::out_of_reach) {
        return;
    }
    for (const auto& remark :
         {of_heat("conductor", band.heating->conductor),
          of_heat("capacitor (a body of 50 mm by 60 mm assumed)", band.heating->capacitor)}) {
        if (remark) {
            band.remarks.push_back(*remark);
        }
    }
}

} // namespace

void judge_band(KeyingBand& band, const design::Design& design, bool intervals) {
    std::vector<KeyingReason>& all = band.reasons;
    if (!band.point.resonance) {
        all = {of_the_model(band.point)};
    } else if (!band.point.resonance->in_capacitor_range) {
        all = {of_reach(band, design)};
    } else if (band.distances.empty()) {
        all = {of_people(band, design).value()};
    } else {
        for (const auto& reason : {of_volts(band), of_people(band, design)}) {
            if (reason) {
                all.push_back(*reason);
            }
        }
        name_what_mends_both(band, all);
        if (all.empty()) {
            band.on_condition = !design.site.people_distance;
            all.push_back(as_computed(band, design, intervals));
        }
    }
    std::stable_sort(all.begin(), all.end(), [](const KeyingReason& a, const KeyingReason& b) {
        return static_cast<int>(a.verdict) > static_cast<int>(b.verdict);
    });
    band.verdict = all.front().verdict;
    add_remarks(band);
}

} // namespace loopwright::survey::detail
