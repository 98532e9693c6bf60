#include "report/hazards.hpp"

#include "survey/board_standing.hpp"
#include "survey/card_safety.hpp"
#include "survey/verdict.hpp"
#include "survey/voltage_standing.hpp"
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
        text += " (losses varied alone: up to " + upper + ")"; // `keying` varies soil and height as well
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

std::string listed(const std::vector<std::string>& names) {
    std::string all;
    for (const std::string& name : names) {
        all += (all.empty() ? "" : ", ") + name;
    }
    return all;
}

std::string held(const survey::CarriedVoltage& at) {
    return units::shown(at.peak) + " peak" +
           (at.usable ? ", usable there " + units::shown(*at.usable) : std::string(", nothing rated there"));
}

/// The one with most volts, where it is not the one that stands there already.
std::string highest_besides(const survey::VoltageStanding& standing) {
    return standing.highest->where == standing.nearest->where
               ? ""
               : " Highest voltage: on " + standing.highest->where + ", " + held(*standing.highest) + ".";
}

/// All places together: the most unfavourable verdict comes first.
Sentence voltage_of(const survey::VoltageStanding& standing) {
    const survey::CarriedVoltage& at = *standing.nearest;
    const std::string start = "Capacitor voltage: ";
    if (standing.verdict == survey::RatingVerdict::exceeded) {
        return {"voltage_exceeds_rating", start + "over the rating, do not key: on " + at.where + ", " +
                                              held(at) + "." + highest_besides(standing)};
    }
    if (!standing.any_rating) {
        return {"voltage_without_rating", start + "up to " + units::shown(at.peak) + " peak on " + at.where +
                                              ", and no rating is given to hold it against."};
    }
    if (!standing.unrated.empty()) {
        return {"voltage_without_rating",
                start + "not within a rating on " + listed(standing.unrated) +
                    ": a member of the capacitor there has no rating. " +
                    (at.rated() ? "Elsewhere nearest to the rating: on " : "Highest voltage: on ") +
                    at.where + ", " + held(at) + "." + (at.rated() ? highest_besides(standing) : "")};
    }
    return {"voltage_below_rating", start + "nearest to the rating on " + at.where + ", " + held(at) + "." +
                                        highest_besides(standing)};
}

/// "; people at 1.7 m are too near on 30m: do not key"
std::string too_near_words(const survey::Keying& keying) {
    const auto& people = keying.request.design.site.people_distance;
    std::vector<std::string> bands;
    for (const survey::KeyingBand& band : keying.bands) {
        if (people_too_near(keying, band) == std::optional(true)) {
            bands.push_back(band.band.empty() ? survey::given_text(band.point.frequency) : band.band);
        }
    }
    return bands.empty() ? ""
                         : "People too near, do not key: at " + survey::given_text(people->value) +
                               " they are nearer than they must keep on " + listed(bands) + ". ";
}

Sentence distance_of(const survey::Keying* keying) {
    if (keying == nullptr) {
        return distance;
    }
    const survey::LargestDistance largest = survey::largest_distance(*keying);
    const std::string near = too_near_words(*keying);
    if (largest.distance == nullptr || !largest.complete) {
        return {distance.code, near + distance.text};
    }
    return {near.empty() ? "distance_as_computed" : "people_too_near",
            near + "Distance people must keep, as computed: " + distance_text(largest.distance->range.high) +
                (largest.band->band.empty() ? "" : " on " + largest.band->band) + ", by " +
                largest.distance->standard + " for the general public."};
}

/// A card has rows of several emissions; the distance is for one.
Sentence emission_of(const survey::Keying& keying, const survey::Card& card) {
    std::vector<std::string> more;
    for (const band::Emission& emission : survey::emissions_asking_more(card, keying)) {
        more.push_back(emission.name.substr(0, emission.name.find(',')));
    }
    const std::string own = keying.request.design.station.emission;
    return {"distance_emission", "That distance is for " + own + ", the emission of the station." +
                                     (more.empty() ? ""
                                                   : " More is needed for " + listed(more) +
                                                         ": loopwright-cli keying --emission computes it.")};
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

std::optional<bool> people_too_near(const survey::Keying& keying, const survey::KeyingBand& band) {
    const auto& people = keying.request.design.site.people_distance;
    if (!people || band.verdict == survey::KeyingVerdict::out_of_reach) {
        return std::nullopt;
    }
    const survey::KeyingDistance* known = survey::widest_known(band);
    if (known != nullptr && known->range.high > people->value) {
        return true;
    }
    return survey::widest(band) != nullptr ? std::optional(false) : std::nullopt;
}

std::optional<bool> people_too_near(const survey::Keying& keying) {
    bool known = false, missing = false;
    for (const survey::KeyingBand& band : keying.bands) {
        const auto near = people_too_near(keying, band);
        if (near == std::optional(true)) {
            return true;
        }
        known = known || near;
        missing = missing || (!near && band.verdict != survey::KeyingVerdict::out_of_reach);
    }
    return known && !missing ? std::optional(false) : std::nullopt;
}

double rounded_up_m(units::Length length) {
    return std::ceil(100 * length.value() - 1e-6) / 100;
}

std::string distance_text(units::Length length) {
    return units::shown(units::metres(rounded_up_m(length)));
}

std::vector<Sentence> keying_hazards(const survey::Keying& keying, const survey::Card* card) {
    const survey::VoltageStanding standing =
        card != nullptr ? survey::voltage_standing(keying, *card) : survey::voltage_standing(keying);
    std::vector<Sentence> all;
    if (standing.nearest) {
        all.push_back(voltage_of(standing));
    }
    if (!standing.unknown.empty()) {
        all.push_back(voltage_not_established("on " + listed(standing.unknown)));
    }
    if (all.empty()) {
        all.push_back(
            {"voltage_no_band", "Capacitor voltage: the capacitor reaches none of the planned bands."});
    }
    all.push_back(distance_of(&keying));
    if (card != nullptr) {
        all.push_back(emission_of(keying, *card));
    }
    return all;
}

std::vector<Sentence> hazards(const survey::Survey& survey, const survey::Keying* keying) {
    if (keying != nullptr) {
        return keying_hazards(*keying);
    }
    std::vector<Sentence> all;
    const design::Design& design = survey.request.design;
    if (survey::usable_voltage_varies(design.capacitor)) {
        const survey::VoltageStanding standing = survey::voltage_standing(survey);
        if (standing.nearest) {
            all.push_back(voltage_of(standing));
        }
    } else if (const survey::BandRow* highest = survey::highest_voltage(survey)) {
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
