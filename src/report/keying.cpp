#include "report/keying.hpp"

#include "exposure/limits.hpp"
#include "report/cautions.hpp"
#include "report/hazards.hpp"
#include "report/words.hpp"
#include "survey/verdict.hpp"
#include "units/constants.hpp"
#include "units/text.hpp"

#include <algorithm>
#include <cmath>
#include <map>
#include <set>

namespace loopwright::report {
namespace {

constexpr double mega = 1e-6;
constexpr double degrees_per_radian = 180 / units::constants::pi;

template <class Quantity>
Cell cell_of(const std::optional<Quantity>& value) {
    return value ? Cell(value->value()) : Cell();
}

Cell band_cell(const survey::KeyingBand& band) {
    return band.band.empty() ? Cell("-") : Cell(band.band);
}

Table board(const survey::Keying& keying) {
    Table table;
    table.columns = {{"band", "Band", ""},
                     {"frequency_Hz", "Frequency", "MHz", mega, 6, 4},
                     {"capacitor_voltage_peak_V", "Capacitor peak", "V"},
                     {"capacitor_voltage_peak_V_high", "perhaps", "V"},
                     {"usable_voltage_V", "Usable peak", "V"},
                     {"distance_m_high", "People beyond", "m", 1, 3, 2},
                     {"limit", "by limit", ""},
                     {"verdict", "Verdict", ""}};
    for (const survey::KeyingBand& band : keying.bands) {
        const bool known = band.point.resonance.has_value();
        const survey::KeyingDistance* widest = nullptr;
        bool all = !band.distances.empty();
        for (const survey::KeyingDistance& d : band.distances) {
            if (d.tier != exposure::Tier::general_public) {
                continue;
            }
            all = all && d.farthest;
            if (d.farthest && (widest == nullptr || d.range.high > widest->range.high)) {
                widest = &d;
            }
        }
        const bool shown = all && widest != nullptr;
        table.rows.push_back({band_cell(band), band.point.frequency.value(),
                              known ? Cell(band.point.resonance->capacitor_voltage_peak.value()) : Cell(),
                              known ? Cell(band.voltage_peak.high.value()) : Cell(),
                              cell_of(band.usable_voltage),
                              shown ? Cell(std::ceil(100 * widest->range.high.value() - 1e-6) / 100) : Cell(),
                              shown ? Cell(widest->limit) : Cell(), std::string(words_of(band.verdict))});
    }
    return table;
}

std::vector<Sentence> reasons_of(const survey::Keying& keying) {
    std::vector<Sentence> all;
    for (const survey::KeyingBand& band : keying.bands) {
        const std::string where = band.band.empty() ? survey::given_text(band.point.frequency) : band.band;
        for (const survey::KeyingReason& reason : band.reasons) {
            std::string text = where + ": " + reason.text + ".";
            if (!reason.fix.empty()) {
                text += " " + reason.fix + ".";
            }
            all.push_back({"keying_" + std::string(survey::name_of(reason.verdict)), text});
        }
    }
    return all;
}

Cell rise_cell(const std::optional<loop::LoopHeating>& heating, bool conductor, bool high) {
    if (!heating) {
        return {};
    }
    const loop::Heating& of = conductor ? heating->conductor : heating->capacitor;
    return of.rise_K ? Cell(high ? of.rise_range_K.high : *of.rise_K) : Cell();
}

/// What a hand and a thermometer would find.
Section touch_and_heat(const survey::Keying& keying) {
    Section section{"touch_and_heat", "Touch and heat", {}, Table{}};
    Table& table = *section.table;
    table.columns = {{"band", "Band", ""},
                     {"touch_voltage_highest_rms_V", "Beside capacitor, rms", "V"},
                     {"conductor_rise_K", "Conductor warmer by", "K", 1, 2},
                     {"conductor_rise_K_high", "perhaps", "K", 1, 2},
                     {"capacitor_rise_K", "Capacitor warmer by", "K", 1, 2},
                     {"capacitor_rise_K_high", "perhaps", "K", 1, 2}};
    base::Notices notices;
    for (const survey::KeyingBand& band : keying.bands) {
        table.rows.push_back({band_cell(band), band.touch ? Cell(band.touch->highest_rms.value()) : Cell(),
                              rise_cell(band.heating, true, false), rise_cell(band.heating, true, true),
                              rise_cell(band.heating, false, false), rise_cell(band.heating, false, true)});
        if (band.heating) {
            notices.merge(band.heating->conductor.notices);
            notices.merge(band.heating->capacitor.notices);
        }
    }
    section.sentences = {
        {"touch_convention",
         "Volts of the conductor against the ground, rms at peak envelope power, untouched. Burns come from "
         "tens of volts: nothing of the loop may be touched while it is keyed. The voltage falls toward the "
         "place opposite the capacitor, where a loop in balance has none; coupling and surroundings put a "
         "real loop out of balance. The capacitor's body and shaft are not in the model."},
        {"heat_convention",
         "Warmer than the air once it no longer changes, still air, no sun, for the worst half hour of the "
         "schedule; perhaps: the upper end of the interval. Empty: not established, over 150 K."}};
    for (const base::Notice& notice : notices.worst_first()) {
        section.sentences.push_back({notice.code, notice.text});
    }
    return section;
}

/// The FCC's exemption by effective radiated power, beside the field limits and never instead of them.
std::vector<Sentence> exemptions(const survey::Keying& keying) {
    std::vector<Sentence> all;
    for (const survey::KeyingBand& band : keying.bands) {
        const bool asked = std::any_of(band.distances.begin(), band.distances.end(),
                                       [](const auto& d) { return d.limit == "fcc_1_1310"; });
        if (asked && band.fcc_exempt_erp && band.verdict != survey::KeyingVerdict::out_of_reach) {
            all.push_back({"fcc_exemption",
                           (band.band.empty() ? survey::given_text(band.point.frequency) : band.band) +
                               ": ERP " + units::shown(band.erp) +
                               "; 47 CFR 1.1307(b)(3)(i)(C) asks for no "
                               "evaluation below " +
                               units::shown(*band.fcc_exempt_erp) +
                               " at the people's distance. That is an extra line, not a field limit."});
        }
    }
    return all;
}

/// Two digits, never rounded up.
Cell power_down(const std::optional<units::Power>& power) {
    if (!power || !(power->value() > 0)) {
        return cell_of(power);
    }
    const double step = std::pow(10.0, std::floor(std::log10(power->value())) - 1);
    return std::floor(power->value() / step + 1e-9) * step;
}

/// For people: distances to the next centimetre up, powers down.
void round_for_people(Table& table) {
    for (auto& cells : table.rows) {
        for (const std::size_t column : {3U, 5U, 6U}) {
            if (auto* metres = std::get_if<double>(&cells[column])) {
                *metres = std::ceil(100 * *metres - 1e-6) / 100;
            }
        }
        for (const std::size_t column : {10U, 11U}) {
            if (const auto* watts = std::get_if<double>(&cells[column])) {
                cells[column] = power_down(units::watts(*watts));
            }
        }
    }
}

Table by_limit(const survey::KeyingBand& band) {
    Table table;
    table.columns = {{"limit", "Limit", ""},
                     {"tier", "For", ""},
                     {"averaged_power_W", "Averaged", "W", 1, 3},
                     {"distance_m", "Distance", "m", 1, 3, 2},
                     {"distance_m_low", "from", "m", 1, 3, 2},
                     {"distance_m_high", "to", "m", 1, 3, 2},
                     {"distance_body_average_m", "Body average", "m", 1, 3, 2},
                     {"azimuth_deg", "toward", "deg", degrees_per_radian, 3, 0},
                     {"height_m", "at height", "m", 1, 3, 2},
                     {"cause", "Field", ""},
                     {"power_for_people_W", "Power for people", "W", 1, 2},
                     {"power_for_tuning_W", "Power for tuning", "W", 1, 2}};
    for (const survey::KeyingDistance& d : band.distances) {
        const bool known = d.farthest.has_value();
        const auto length = [&](units::Length l) { return known ? Cell(l.value()) : Cell(); };
        table.rows.push_back(
            {d.limit, std::string(exposure::name_of(d.tier)), d.averaged_power.value(),
             known ? Cell(d.farthest->distance.value()) : Cell(), length(d.range.low), length(d.range.high),
             cell_of(d.body_average), known ? Cell(d.farthest->azimuth.value()) : Cell(),
             known ? Cell(d.farthest->height.value()) : Cell(),
             known
                 ? Cell(std::string(d.farthest->cause == exposure::Cause::electric ? "electric" : "magnetic"))
                 : Cell(),
             cell_of(d.power_for_people), cell_of(d.power_for_tuning)});
    }
    return table;
}

/// Every limit once with its edition; a tier whose figures are from memory once more.
std::vector<Sentence> editions(const survey::Keying& keying) {
    std::vector<Sentence> all;
    std::set<std::string> seen;
    for (const survey::KeyingBand& band : keying.bands) {
        for (const survey::KeyingDistance& d : band.distances) {
            if (seen.insert(d.limit).second) {
                const exposure::Limit* limit = exposure::find_limit(d.limit);
                all.push_back({"limit_edition", limit == nullptr ? d.standard + ": entered by the user."
                                                                 : limit->standard + ": " + limit->edition +
                                                                       ". " + limit->remark});
            }
            const std::string tier = exposure::name_of(d.tier);
            if (d.from_memory && seen.insert(d.limit + " " + tier).second) {
                all.push_back({"limit_from_memory",
                               d.standard + ", " + tier + ": the figures are from memory, check them."});
            }
        }
    }
    return all;
}

std::vector<Sentence> what_is_assumed(const survey::Keying& keying) {
    base::Notices notices;
    for (const survey::KeyingBand& band : keying.bands) {
        notices.merge(band.point.notices);
        if (band.load) {
            notices.merge(band.load->notices);
        }
    }
    std::vector<Sentence> all = assumptions(loop::Model::full_wave, notices);
    const std::vector<Sentence> own = {
        {"keying_distance_convention",
         "Distances are horizontal, from the loop's vertical axis, to the spatial peak on a standing person "
         "(0 to 2 m above where people stand); in free space from the loop's centre in every direction. "
         "Nearer than 0.2 m to the conductor the model says nothing, and no distance is less than that."},
        {"keying_interval",
         "Intervals add what soil half and twice as conducting, a height 10 % off and the known intervals "
         "of the losses do, all unfavourable at once; verdicts use that end."},
        {"keying_averaging",
         "Power is averaged over the limit's own time in the worst window of the emission's schedule; "
         "voltage and limits that hold at every instant are never averaged."},
        {"keying_tuning",
         "Power for tuning is a carrier without credit for averaging, on the worst side of the capacitor at "
         "the reach entered."},
        {"keying_not_covered",
         "Not covered: metal nearby, reflections from buildings, contact currents, touching, implants and "
         "medical devices, other transmitters at the same place."},
    };
    all.insert(all.end(), own.begin(), own.end());
    const std::vector<Sentence> limits = editions(keying);
    all.insert(all.end(), limits.begin(), limits.end());
    return all;
}

} // namespace

const char* words_of(survey::KeyingVerdict verdict) noexcept {
    switch (verdict) {
    case survey::KeyingVerdict::within:
        return "within, as computed";
    case survey::KeyingVerdict::out_of_reach:
        return "out of reach";
    case survey::KeyingVerdict::not_established:
        return "not established";
    case survey::KeyingVerdict::exceeded:
        return "exceeded";
    }
    return "not established";
}

Table keying_data(const survey::Keying& keying) {
    Table table = by_limit({});
    table.columns.insert(table.columns.begin(), {{"band", "Band", ""}, {"frequency_Hz", "Frequency", "Hz"}});
    table.columns.push_back({"capacitor_voltage_peak_V_high", "Capacitor peak", "V"});
    table.columns.push_back({"usable_voltage_V", "Usable", "V"});
    table.columns.push_back({"verdict", "Verdict", ""});
    for (const survey::KeyingBand& band : keying.bands) {
        Table rows = by_limit(band);
        if (rows.rows.empty()) {
            rows.rows.emplace_back(rows.columns.size());
        }
        for (auto& cells : rows.rows) {
            cells.insert(cells.begin(), {band_cell(band), band.point.frequency.value()});
            cells.push_back(band.point.resonance ? Cell(band.voltage_peak.high.value()) : Cell());
            cells.push_back(cell_of(band.usable_voltage));
            cells.push_back(std::string(survey::name_of(band.verdict)));
            table.rows.push_back(std::move(cells));
        }
    }
    // The azimuth in degrees, as its key says.
    for (auto& cells : table.rows) {
        if (auto* azimuth = std::get_if<double>(&cells[9])) {
            *azimuth *= degrees_per_radian;
        }
    }
    return table;
}

Page keying_page(const survey::Keying& keying) {
    const design::Design& design = keying.request.design;
    Page page;
    page.title = design.title.empty() ? "Loop without a title" : design.title;
    page.subtitle = std::string(keying.request.intervals ? "" : "NOMINAL FIGURES ONLY, without intervals. ") +
                    "Before keying: " + with_plain_blanks(survey::given_text(design.station.power.value)) +
                    " accepted (peak envelope power), " + design.station.emission + ", model " +
                    name_of(loop::Model::full_wave);
    page.sections.push_back({"hazards", "Hazards", keying_hazards(keying), std::nullopt});
    page.sections.push_back({"keying", "Bands", reasons_of(keying), board(keying)});
    for (const survey::KeyingBand& band : keying.bands) {
        if (!band.distances.empty() && band.verdict != survey::KeyingVerdict::out_of_reach) {
            Table table = by_limit(band);
            round_for_people(table);
            const std::string where =
                band.band.empty() ? survey::given_text(band.point.frequency) : band.band;
            page.sections.push_back({"distances", "Distances on " + where, {}, std::move(table)});
        }
    }
    page.sections.push_back(touch_and_heat(keying));
    if (auto lines = exemptions(keying); !lines.empty()) {
        page.sections.push_back(
            {"exemptions", "Exemption by radiated power", std::move(lines), std::nullopt});
    }
    page.sections.push_back({"assumptions", "Assumptions", what_is_assumed(keying), std::nullopt});
    page.sections.push_back({"cautions", "Cautions", cautions(true), std::nullopt});
    return page;
}

} // namespace loopwright::report
