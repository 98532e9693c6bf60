#include "report/detail/keying_sections.hpp"

#include "exposure/limits.hpp"
#include "report/shown_units.hpp"
#include "survey/verdict.hpp"
#include "units/text.hpp"

#include <algorithm>
#include <cmath>

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

Cell lost_cell(const std::optional<loop::LoopHeating>& heating, bool conductor) {
    return heating ? Cell((conductor ? heating->conductor_average : heating->capacitor_average).value())
                   : Cell();
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
        row.push_back(lost_cell(band.heating, conductor));
        row.push_back(rise_cell(band.heating, conductor, false));
        row.push_back(rise_cell(band.heating, conductor, true));
    }
    return row;
}

std::string member_word(const capacitor::MemberLoad& member, const capacitor::NetworkLoad& load) {
    if (member.kind == capacitor::MemberKind::added) {
        return "added " + std::to_string(member.index + 1);
    }
    const auto sections = std::count_if(load.members.begin(), load.members.end(), [](const auto& each) {
        return each.kind == capacitor::MemberKind::section;
    });
    return sections > 1 ? "section " + std::to_string(member.index + 1) : "variable";
}

std::vector<Cell> member_row(const KeyingBand& band, const capacitor::MemberLoad& member, bool first) {
    std::vector<Cell> row;
    row.emplace_back(first ? band_text(band) : std::string());
    row.emplace_back(member_word(member, *band.load));
    row.emplace_back(member.capacitance.value());
    row.emplace_back(member.voltage_peak.value());
    row.push_back(cell_of(member.usable_peak));
    row.emplace_back(member.current_rms.value());
    row.push_back(cell_of(member.current_rating));
    row.push_back(first ? power_down(band.power_for_capacitor) : Cell());
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

Cell power_down(const std::optional<units::Power>& power) {
    if (!power) {
        return {};
    }
    if (!(power->value() > 0)) {
        return std::string("none");
    }
    const double step = std::pow(10.0, std::floor(std::log10(power->value())) - 1);
    return std::floor(power->value() / step + 1e-9) * step;
}

std::string band_text(const KeyingBand& band) {
    return band.band.empty() ? "-" : band.band;
}

std::string where_of(const KeyingBand& band) {
    return band.band.empty() ? survey::given_text(band.point.frequency) : band.band;
}

Section members(const survey::Keying& keying) {
    Section section{"members", "What the capacitor carries", {}, Table{}};
    section.table->columns = {{"band", "Band", ""},
                              {"member", "Member", ""},
                              {"capacitance_F", "Set to", "pF", pico},
                              {"voltage_peak_V", "Peak", "V"},
                              {"usable_voltage_V", "Stands, peak", "V"},
                              {"current_rms_A", "Current, rms", "A"},
                              {"current_rating_A", "Rated, rms", "A"},
                              {"power_for_capacitor_W", "Capacitor allows", "W", 1, 2}};
    for (const KeyingBand& band : keying.bands) {
        if (!band.load || band.verdict == survey::KeyingVerdict::out_of_reach) {
            continue;
        }
        bool first = true;
        for (const capacitor::MemberLoad& member : band.load->members) {
            if (member.kind != capacitor::MemberKind::stray) {
                section.table->rows.push_back(member_row(band, member, first));
                first = false;
            }
        }
    }
    section.sentences.push_back(
        {"members_convention",
         "Peak volts at the unfavourable end and what each member stands: its rating, or its air gap less "
         "the breakdown margin, in the air of the site. Current at peak envelope power. The last column is "
         "the "
         "greatest peak envelope power of the whole capacitor, rounded down; empty: not established."});
    return section;
}

Section touch_and_heat(const survey::Keying& keying) {
    Section section{"touch_and_heat", "Touch and heat", {}, Table{}};
    Table& table = *section.table;
    table.columns = {{"band", "Band", ""},
                     {"touch_voltage_highest_rms_V", "Beside capacitor, rms", "V"},
                     {"touch_voltage_in_reach_rms_V", "Where a hand reaches, rms", "V"},
                     {"touch_voltage_middle_rms_V", "Opposite capacitor, rms", "V"},
                     {"conductor_loss_W", "Conductor loses", "W", 1, 2},
                     {"conductor_rise_K", "warmer by", "K", 1, 2},
                     {"conductor_rise_K_high", "perhaps", "K", 1, 2},
                     {"capacitor_loss_W", "Capacitor loses", "W", 1, 2},
                     {"capacitor_rise_K", "warmer by", "K", 1, 2},
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
         "Lost as heat in conductor with joints and in the capacitor, on average over the worst half hour of "
         "the schedule; warmer than the air by that once it no longer changes, still air, no sun; perhaps: "
         "the upper end of the interval. Empty: not established, over 150 K."});
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
