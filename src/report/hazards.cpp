#include "report/hazards.hpp"

#include "survey/verdict.hpp"
#include "units/text.hpp"

#include <algorithm>
#include <cmath>

namespace loopwright::report {
namespace {

const Sentence distance{"distance_not_established",
                        "Distance people must keep: not established, treat the loop as hazardous."};

const Sentence distance_elsewhere{
    "distance_not_established",
    "Distance people must keep: not established on this page, treat the loop as hazardous; the sheet before "
    "keying (loopwright-cli keying) computes it."};

units::Voltage upper_end(const loop::Resonance& r) {
    return std::max(r.capacitor_voltage_peak, r.capacitor_voltage_peak_range.high);
}

Sentence voltage(const loop::OperatingPoint& point, const design::Design& design, const std::string& where) {
    const loop::Resonance& r = *point.resonance;
    const units::Voltage high = upper_end(r);
    const std::string upper = units::shown(high);
    std::string text = "Capacitor voltage: " + units::shown(r.capacitor_voltage_peak) + " peak";
    if (upper != units::shown(r.capacitor_voltage_peak)) {
        text += " (perhaps " + upper + ")";
    }
    text += " " + where + " at " + survey::given_text(point.power) + ", ";
    const auto held = survey::voltage_limit(point, design);
    if (!held) {
        return {"voltage_without_rating", text + "and no rating is given to hold it against."};
    }
    const std::string limit = held->as_rated ? "the rating of " + survey::given_text(held->limit)
                                             : "the usable " + units::shown(held->limit);
    if (high > held->limit) {
        return {"voltage_exceeds_rating", text + "more than " + limit + ": do not key."};
    }
    return {"voltage_below_rating",
            text + units::shown(100.0 * (high.value() / held->limit.value()), units::Dimension::number, 2) +
                " % of " + limit + (held->unrated_members ? "; a member has no rating." : ".")};
}

Sentence voltage_not_established(const std::string& where) {
    return {"voltage_not_established", "Capacitor voltage: not established " + where + "; expect kilovolts."};
}

Sentence distance_of(const survey::Keying* keying) {
    if (keying == nullptr) {
        return distance;
    }
    const survey::LargestDistance largest = survey::largest_distance(*keying);
    if (largest.distance == nullptr || !largest.complete) {
        return distance;
    }
    return {"distance_as_computed",
            "Distance people must keep, as computed: " + distance_text(largest.distance->range.high) +
                (largest.band->band.empty() ? "" : " on " + largest.band->band) + ", by " +
                largest.distance->standard + " for the general public."};
}

} // namespace

const survey::KeyingDistance* distance_on(const survey::Keying* keying, std::string_view band) noexcept {
    if (keying != nullptr) {
        for (const survey::KeyingBand& each : keying->bands) {
            if (each.band == band && each.verdict != survey::KeyingVerdict::out_of_reach) {
                return survey::widest(each);
            }
        }
    }
    return nullptr;
}

double rounded_up_m(units::Length length) {
    return std::ceil(100 * length.value() - 1e-6) / 100;
}

std::string distance_text(units::Length length) {
    return units::shown(units::metres(rounded_up_m(length)));
}

std::vector<Sentence> keying_hazards(const survey::Keying& keying) {
    std::vector<Sentence> all;
    if (const survey::KeyingBand* worst = survey::worst_voltage(keying)) {
        const auto& usable = worst->usable_voltage;
        const bool over = usable && worst->voltage_peak.high > *usable;
        const bool unrated = worst->load && worst->load->unrated_members;
        const char* code = !usable   ? "voltage_without_rating"
                           : over    ? "voltage_exceeds_rating"
                           : unrated ? "voltage_without_rating"
                                     : "voltage_below_rating";
        all.push_back({code, "Capacitor voltage: up to " + units::shown(worst->voltage_peak.high) + " peak" +
                                 (worst->band.empty() ? "" : " on " + worst->band) +
                                 (!usable ? ", and no rating is given to hold it against."
                                          : ", usable there " + units::shown(*usable) +
                                                (over      ? ": do not key."
                                                 : unrated ? "; a member of the capacitor has no rating."
                                                           : "."))});
    }
    std::string missing;
    for (const survey::KeyingBand& band : keying.bands) {
        if (!band.point.resonance) {
            missing += (missing.empty() ? "on " : ", ") +
                       (band.band.empty() ? survey::given_text(band.point.frequency) : band.band);
        }
    }
    if (!missing.empty()) {
        all.push_back(voltage_not_established(missing));
    }
    if (all.empty()) {
        all.push_back(
            {"voltage_no_band", "Capacitor voltage: the capacitor reaches none of the planned bands."});
    }
    all.push_back(distance_of(&keying));
    return all;
}

std::vector<Sentence> hazards(const survey::Survey& survey, const survey::Keying* keying) {
    if (keying != nullptr) {
        return keying_hazards(*keying);
    }
    std::vector<Sentence> all;
    const design::Design& design = survey.request.design;
    if (const survey::BandRow* highest = survey::highest_voltage(survey)) {
        all.push_back(voltage(highest->point, design, "at the most, on " + highest->band.name));
    }
    std::string missing;
    for (const survey::BandRow& row : survey.bands) {
        if (!row.point.resonance) {
            missing += (missing.empty() ? "on " : ", ") + row.band.name;
        }
    }
    if (!missing.empty()) {
        all.push_back(voltage_not_established(missing));
    }
    if (all.empty()) {
        all.push_back(
            {"voltage_no_band", "Capacitor voltage: the capacitor reaches none of the planned bands."});
    }
    all.push_back(distance);
    return all;
}

std::vector<Sentence> sweep_hazards(const survey::Survey& survey) {
    const loop::OperatingPoint* highest = nullptr;
    for (const loop::OperatingPoint& point : survey.curve) {
        if (point.resonance && point.resonance->in_capacitor_range &&
            (highest == nullptr || upper_end(*point.resonance) > upper_end(*highest->resonance))) {
            highest = &point;
        }
    }
    if (highest == nullptr) {
        return {
            {"voltage_no_frequency", "Capacitor voltage: the capacitor reaches none of these frequencies."},
            distance_elsewhere};
    }
    return {
        voltage(*highest, survey.request.design, "at the most, at " + survey::given_text(highest->frequency)),
        distance_elsewhere};
}

std::vector<Sentence> hazards(const loop::OperatingPoint& point, const design::Design& design) {
    if (!point.resonance) {
        return {voltage_not_established("at this frequency"), distance_elsewhere};
    }
    if (!point.resonance->in_capacitor_range) {
        return {{"voltage_out_of_reach", "Capacitor voltage: the capacitor does not reach this frequency; "
                                         "one that does would carry up to " +
                                             units::shown(upper_end(*point.resonance)) + " peak at " +
                                             survey::given_text(point.power) + "."},
                distance_elsewhere};
    }
    return {voltage(point, design, "when tuned here"), distance_elsewhere};
}

} // namespace loopwright::report
