#include "loop/fitted_capacitor.hpp"
#include "survey/detail/keying_band.hpp"
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

/// To two digits, never rounded up: the power advised must pass.
std::string power_down(units::Power power) {
    const double step = std::pow(10.0, std::floor(std::log10(power.value())) - 1);
    return shown(units::watts(std::floor(power.value() / step + 1e-9) * step), 2);
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

std::optional<KeyingReason> of_volts(const KeyingBand& band) {
    if (!band.load || !band.usable_voltage) {
        return KeyingReason{KeyingVerdict::not_established,
                            "No rating to hold " + peak_text(band) + " against",
                            "Enter the capacitor's peak rating or its air gap"};
    }
    if (band.voltage_peak.high > *band.usable_voltage) {
        return KeyingReason{KeyingVerdict::exceeded,
                            peak_text(band) + " is more than the usable " + shown(*band.usable_voltage),
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

/// The public limit with the largest distance, upper end.
const KeyingDistance* widest(const KeyingBand& band) {
    const KeyingDistance* most = nullptr;
    for (const KeyingDistance& d : band.distances) {
        if (d.tier == exposure::Tier::general_public && d.farthest &&
            (most == nullptr || d.range.high > most->range.high)) {
            most = &d;
        }
    }
    return most;
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
    const KeyingDistance* most = widest(band);
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
    if (most->power_for_people && *most->power_for_people < band.point.power) {
        fix += ", or at most " + power_down(*most->power_for_people);
    }
    return KeyingReason{KeyingVerdict::exceeded,
                        "People at " + given_text(people) + " are nearer than the " +
                            metres_text(most->range.high) + " of " + limit_text(*most) + " (" +
                            word_of(most->farthest->cause) + ")",
                        fix};
}

KeyingReason as_computed(const KeyingBand& band, bool intervals) {
    const KeyingDistance* most = widest(band);
    std::string text = std::string(intervals ? "Within" : "Nominal figures only, which are within") +
                       " the limits as computed where everybody stays beyond " +
                       metres_text(most->range.high) + " (" + limit_text(*most) + ", " +
                       word_of(most->farthest->cause) + "); " + peak_text(band) + ", usable " +
                       shown(*band.usable_voltage);
    return {KeyingVerdict::within, text, ""};
}

} // namespace

void judge_band(KeyingBand& band, const design::Design& design, bool intervals) {
    std::vector<KeyingReason>& all = band.reasons;
    if (!band.point.resonance) {
        all = {of_the_model(band.point)};
    } else if (!band.point.resonance->in_capacitor_range) {
        all = {of_reach(band, design)};
    } else if (band.distances.empty() && !widest(band)) {
        all = {of_people(band, design).value()};
    } else {
        for (const auto& reason : {of_volts(band), of_people(band, design)}) {
            if (reason) {
                all.push_back(*reason);
            }
        }
        if (all.empty()) {
            all.push_back(as_computed(band, intervals));
        }
    }
    std::stable_sort(all.begin(), all.end(), [](const KeyingReason& a, const KeyingReason& b) {
        return static_cast<int>(a.verdict) > static_cast<int>(b.verdict);
    });
    band.verdict = all.front().verdict;
}

} // namespace loopwright::survey::detail
