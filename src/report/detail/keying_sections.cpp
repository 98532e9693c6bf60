#include "report/detail/keying_sections.hpp"

#include "exposure/limits.hpp"
#include "survey/verdict.hpp"
#include "units/text.hpp"

#include <algorithm>

namespace loopwright::report::detail {
namespace {

using survey::KeyingBand;
using survey::KeyingDistance;

Cell rise_cell(const std::optional<loop::LoopHeating>& heating, bool conductor, bool high) {
    if (!heating) {
        return {};
    }
    const loop::Heating& of = conductor ? heating->conductor : heating->capacitor;
    return of.rise_K ? Cell(high ? of.rise_range_K.high : *of.rise_K) : Cell();
}

/// What is less than a tenth of a volt is the arithmetic's rest, not a voltage.
Cell volts_cell(units::Voltage rms) {
    return rms.value() < 0.1 ? 0.0 : rms.value();
}

std::vector<Cell> touch_row(const KeyingBand& band) {
    std::vector<Cell> row;
    row.emplace_back(band_text(band));
    row.push_back(band.touch ? volts_cell(band.touch->highest_rms) : Cell());
    row.push_back(cell_of(band.touch_in_reach_rms));
    row.push_back(band.touch ? volts_cell(band.touch->at_middle_rms) : Cell());
    for (const bool conductor : {true, false}) {
        row.push_back(rise_cell(band.heating, conductor, false));
        row.push_back(rise_cell(band.heating, conductor, true));
    }
    return row;
}

bool asked_for_fcc(const KeyingBand& band) {
    return band.verdict != survey::KeyingVerdict::out_of_reach &&
           std::any_of(band.distances.begin(), band.distances.end(),
                       [](const KeyingDistance& d) { return d.limit == "fcc_1_1310"; });
}

/// The tables of a limit that were used, each with its tier: "Table 1 (ii) for the general public".
std::string tables_of(const survey::Keying& keying, const std::string& limit) {
    std::string text;
    for (const exposure::Tier tier : {exposure::Tier::general_public, exposure::Tier::occupational}) {
        for (const KeyingBand& band : keying.bands) {
            const auto used = std::find_if(band.distances.begin(), band.distances.end(),
                                           [&](const auto& d) { return d.limit == limit && d.tier == tier; });
            if (used != band.distances.end()) {
                text +=
                    (text.empty() ? "" : "; ") + used->table +
                    (tier == exposure::Tier::general_public ? " for the general public" : ", occupational") +
                    (used->from_memory ? " (figures from memory, check them)" : "");
                break;
            }
        }
    }
    return text;
}

} // namespace

std::string band_text(const KeyingBand& band) {
    return band.band.empty() ? "-" : band.band;
}

std::string where_of(const KeyingBand& band) {
    return band.band.empty() ? survey::given_text(band.point.frequency) : band.band;
}

Section touch_and_heat(const survey::Keying& keying) {
    Section section{"touch_and_heat", "Touch and heat", {}, Table{}};
    Table& table = *section.table;
    table.columns = {{"band", "Band", ""},
                     {"touch_voltage_highest_rms_V", "Beside capacitor, rms", "V"},
                     {"touch_voltage_in_reach_rms_V", "Where a hand reaches, rms", "V"},
                     {"touch_voltage_middle_rms_V", "Opposite capacitor, rms", "V"},
                     {"conductor_rise_K", "Conductor warmer by", "K", 1, 2},
                     {"conductor_rise_K_high", "perhaps", "K", 1, 2},
                     {"capacitor_rise_K", "Capacitor warmer by", "K", 1, 2},
                     {"capacitor_rise_K_high", "perhaps", "K", 1, 2}};
    base::Notices notices;
    for (const KeyingBand& band : keying.bands) {
        table.rows.push_back(touch_row(band));
        if (band.heating) {
            notices.merge(band.heating->conductor.notices);
            notices.merge(band.heating->capacitor.notices);
        }
    }
    section.sentences.push_back(
        {"touch_convention",
         "Volts of the conductor against the ground, rms at peak envelope power, untouched. A hand reaches "
         "what is up to 2.5 m above where people stand (empty: nothing of the conductor is). Burns come "
         "from tens of volts: nothing of the loop may be touched while it is keyed. The voltage falls "
         "toward the place opposite the capacitor, where a loop in balance has none; coupling and "
         "surroundings put a real loop out of balance. The capacitor's body and shaft are not in the "
         "model."});
    section.sentences.push_back(
        {"heat_convention",
         "Warmer than the air once it no longer changes, still air, no sun, for the worst half hour of the "
         "schedule; perhaps: the upper end of the interval. Empty: not established, over 150 K."});
    for (const base::Notice& notice : notices.worst_first()) {
        section.sentences.push_back({notice.code, notice.text});
    }
    return section;
}

std::vector<Sentence> exemptions(const survey::Keying& keying) {
    std::vector<Sentence> all;
    std::string without;
    for (const KeyingBand& band : keying.bands) {
        if (!asked_for_fcc(band)) {
            continue;
        }
        if (!band.fcc_exempt_erp) {
            without += (without.empty() ? "" : ", ") + where_of(band);
            continue;
        }
        all.push_back({"fcc_exemption", where_of(band) + ": ERP " + units::shown(band.erp) +
                                            "; 47 CFR 1.1307(b)(3)(i)(C) asks for no evaluation below " +
                                            units::shown(*band.fcc_exempt_erp) +
                                            " at the people's distance. That is an extra line, not a field "
                                            "limit."});
    }
    if (!without.empty()) {
        all.push_back({"fcc_exemption_not_applicable",
                       "On " + without +
                           " the exemption by ERP of 47 CFR 1.1307(b)(3)(i)(C) does not apply: " +
                           (keying.request.design.site.people_distance
                                ? "people are nearer than a wavelength over 2 pi."
                                : "no distance of people was entered.")});
    }
    return all;
}

std::vector<Sentence> limits_checked(const survey::Keying& keying) {
    std::vector<Sentence> all;
    std::vector<std::string> seen;
    for (const KeyingBand& band : keying.bands) {
        for (const KeyingDistance& d : band.distances) {
            if (std::find(seen.begin(), seen.end(), d.limit) != seen.end()) {
                continue;
            }
            seen.push_back(d.limit);
            const exposure::Limit* limit = exposure::find_limit(d.limit);
            if (limit == nullptr) {
                all.push_back({"limit_edition", d.standard + ": entered by the user."});
                continue;
            }
            all.push_back({"limit_edition", limit->standard + ", " + limit->edition + ": " +
                                                tables_of(keying, d.limit) + ". " + limit->remark});
        }
    }
    return all;
}

} // namespace loopwright::report::detail
