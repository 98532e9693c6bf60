#include "report/keying.hpp"

#include "exposure/limits.hpp"
#include "report/cautions.hpp"
#include "report/detail/keying_sections.hpp"
#include "report/hazards.hpp"
#include "report/shown_units.hpp"
#include "report/words.hpp"
#include "survey/verdict.hpp"
#include "units/constants.hpp"
#include "units/text.hpp"

#include <cmath>
#include <utility>

namespace loopwright::report {
namespace {

/// What the capacitor allows, every member rated.
bool capacitor_known(const survey::KeyingBand& band) {
    return band.power_for_capacitor && band.load && !band.load->unrated_members &&
           band.verdict != survey::KeyingVerdict::out_of_reach;
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
                     {"greatest_power_W", "At most", "W", 1, 2},
                     {"greatest_power_by", "set by", ""},
                     {"verdict", "Verdict", ""}};
    const bool people_entered = keying.request.design.site.people_distance.has_value();
    for (const survey::KeyingBand& band : keying.bands) {
        const auto greatest = survey::greatest_power(band);
        const bool known = band.point.resonance.has_value();
        const survey::KeyingDistance* widest = survey::widest(band);
        const bool shown = widest != nullptr && band.verdict != survey::KeyingVerdict::out_of_reach;
        const bool capacitor_alone = !greatest && capacitor_known(band) && !people_entered;
        const Cell at_most = greatest          ? detail::power_down(greatest->power)
                             : capacitor_alone ? detail::power_down(*band.power_for_capacitor)
                                               : Cell();
        Cell set_by = greatest ? Cell(std::string(greatest->by_people ? "people" : "capacitor")) : Cell();
        if (capacitor_alone) {
            set_by = std::string("capacitor alone");
        }
        table.rows.push_back(
            {Cell(detail::band_text(band)), band.point.frequency.value(),
             known ? Cell(band.point.resonance->capacitor_voltage_peak.value()) : Cell(),
             known ? Cell(band.voltage_peak.high.value()) : Cell(), detail::cell_of(band.usable_voltage),
             shown ? Cell(rounded_up_m(widest->range.high)) : Cell(), shown ? Cell(widest->limit) : Cell(),
             at_most, set_by, std::string(words_of(band))});
    }
    return table;
}

std::vector<Sentence> reasons_of(const survey::Keying& keying) {
    std::vector<Sentence> all;
    for (const survey::KeyingBand& band : keying.bands) {
        const std::string where = detail::where_of(band);
        for (const survey::KeyingReason& reason : band.reasons) {
            std::string text = where + ": " + reason.text + ".";
            if (!reason.fix.empty()) {
                text += " " + reason.fix + ".";
            }
            all.push_back({"keying_" + std::string(survey::name_of(reason.verdict)), text});
        }
        for (const std::string& remark : band.remarks) {
            std::string text = where;
            text.append(": ").append(remark).append(".");
            all.push_back({"keying_remark", std::move(text)});
        }
    }
    return all;
}

/// Why there is no power: what was not entered, or nothing is established.
std::string no_power_words(bool entered) {
    return entered ? "not established" : "not entered";
}

/// For people: distances to the next centimetre up, powers down, words where there is none.
void round_for_people(Table& table, const design::Design& design) {
    for (auto& cells : table.rows) {
        for (const std::size_t column : {3U, 5U, 6U}) {
            if (auto* metres = std::get_if<double>(&cells[column])) {
                *metres = rounded_up_m(units::metres(*metres));
            }
        }
        for (const std::size_t column : {10U, 11U}) {
            if (const auto* watts = std::get_if<double>(&cells[column])) {
                cells[column] = detail::power_down(units::watts(*watts));
            } else {
                cells[column] = column == 10 ? no_power_words(design.site.people_distance.has_value())
                                             : std::string("not established");
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
             detail::cell_of(d.body_average), known ? Cell(d.farthest->azimuth.value()) : Cell(),
             known ? Cell(d.farthest->height.value()) : Cell(),
             known
                 ? Cell(std::string(d.farthest->cause == exposure::Cause::electric ? "electric" : "magnetic"))
                 : Cell(),
             detail::cell_of(d.power_for_people), detail::cell_of(d.power_for_tuning)});
    }
    return table;
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
         "Directions count from +x, in the loop's plane, toward +y: a standing loop's axis, the capacitor's "
         "side of a lying one. "
         "Nearer than 0.2 m to the conductor the model says nothing, and no distance is less than that."},
        {"keying_interval",
         "Intervals add what soil half and twice as conducting, a height 10 % off and the known intervals "
         "of the losses do, all unfavourable at once; verdicts and greatest powers use that end."},
        {"keying_averaging",
         "Power is averaged over the limit's own time in the worst window of the emission's schedule; "
         "voltage and limits that hold at every instant are never averaged."},
        {"keying_tuning",
         "Power for tuning is a carrier without credit for averaging, on the worst side of the capacitor at "
         "the reach entered; unfavourable ends are taken. 'none': at that reach do not tune with power; 'not "
         "established': no reach was entered, or the model says nothing there."},
        {"keying_at_most",
         "At most: what capacitor and people both allow; 'capacitor alone' where no distance of people was "
         "entered: it says nothing of people."},
        {"keying_not_covered",
         "Not covered: metal nearby, reflections from buildings, contact currents, touching, implants and "
         "medical devices, other transmitters at the same place."},
    };
    all.insert(all.end(), own.begin(), own.end());
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

const char* words_of(const survey::KeyingBand& band) noexcept {
    return band.on_condition ? "if people keep away" : words_of(band.verdict);
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
            cells.insert(cells.begin(), {Cell(detail::band_text(band)), band.point.frequency.value()});
            cells.push_back(band.point.resonance ? Cell(band.voltage_peak.high.value()) : Cell());
            cells.push_back(detail::cell_of(band.usable_voltage));
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
            round_for_people(table, design);
            page.sections.push_back(
                {"distances", "Distances on " + detail::where_of(band), {}, std::move(table)});
        }
    }
    page.sections.push_back(detail::members(keying));
    page.sections.push_back(detail::touch_and_heat(keying));
    if (auto lines = detail::exemptions(keying); !lines.empty()) {
        page.sections.push_back(
            {"exemptions", "Exemption by radiated power", std::move(lines), std::nullopt});
    }
    page.sections.push_back({"limits", "Limits checked", detail::limits_checked(keying), std::nullopt});
    page.sections.push_back({"assumptions", "Assumptions", what_is_assumed(keying), std::nullopt});
    page.sections.push_back({"cautions", "Cautions", cautions(true), std::nullopt});
    return page;
}

} // namespace loopwright::report
