#include "report/drift.hpp"

#include "report/cautions.hpp"
#include "report/detail/json_parts.hpp"
#include "report/number.hpp"
#include "report/words.hpp"
#include "survey/verdict.hpp"
#include "units/text.hpp"

namespace loopwright::report {
namespace {

using detail::Json;
using detail::number_of;
using detail::si_of;

base::Notices notices_of_all(const DriftAnswer& answer) {
    base::Notices notices;
    for (const NamedDrift& row : answer.rows) {
        notices.merge(row.report.notices);
    }
    return notices;
}

Json causes_json(const tuning::DriftReport& report) {
    Json causes = Json::array();
    for (const tuning::DriftRow& row : report.rows) {
        causes.push_back({{"cause", tuning::name_of(row.cause)},
                          {"change", with_plain_blanks(row.change)},
                          {"shift_Hz", si_of(row.shift)},
                          {"share_of_span", row.shift ? number_of(row.share_of_span) : Json(nullptr)},
                          {"verdict", tuning::name_of(row.verdict)},
                          {"text", with_plain_blanks(row.text)}});
    }
    return causes;
}

Section section_of(const NamedDrift& row) {
    const loop::OperatingPoint& point = row.report.point;
    Section section{"drift",
                    (row.band.empty() ? "" : row.band + ", ") +
                        with_plain_blanks(survey::given_text(point.frequency)),
                    {},
                    std::nullopt};
    if (!row.report.usable_span) {
        section.sentences.push_back({"not_established", "Not established: the reason stands below."});
        return section;
    }
    Table table;
    table.columns = {{"change", "What changes", ""},
                     {"shift_Hz", "Resonance moves", "kHz", 1e-3, 3},
                     {"share", "Of the way to retuning", "%", 100, 2},
                     {"text", "In words", ""}};
    for (const tuning::DriftRow& each : row.report.rows) {
        std::vector<Cell> cells(table.columns.size());
        cells[0] = with_plain_blanks(each.change);
        if (each.shift) {
            cells[1] = each.shift->value();
            cells[2] = 2 * each.share_of_span; // half of the span lies on each side
        }
        cells[3] = with_plain_blanks(each.text);
        table.rows.push_back(std::move(cells));
    }
    section.table = std::move(table);
    section.sentences.push_back(
        {"span", "Usable to VSWR " + survey::given_text(point.vswr_limit, units::Dimension::number) +
                     " over " + with_plain_blanks(units::shown(*row.report.usable_span)) +
                     ", half of it to each side, matched. Verdicts hold its lower end, " +
                     with_plain_blanks(units::shown(*row.report.usable_span_low)) + "."});
    if (!point.resonance->in_capacitor_range) {
        section.sentences.push_back({"out_of_reach",
                                     "Out of the capacitor's reach: the drift is that of this "
                                     "loop tuned here by another capacitor."});
    }
    return section;
}

} // namespace

std::string drift_json(const DriftAnswer& answer, const design::Design& design) {
    Json object;
    object["schema"] = "loopwright-drift-1";
    object["title"] = design.title;
    object["model"] = name_of(loop::Model::full_wave);
    object["rise_K"] = number_of(answer.rise_K);
    Json rows = Json::array();
    for (const NamedDrift& row : answer.rows) {
        Json& each = rows.emplace_back();
        each["band"] = row.band.empty() ? Json(nullptr) : Json(row.band);
        each["frequency_Hz"] = number_of(row.report.point.frequency.value());
        each["usable_span_Hz"] = si_of(row.report.usable_span);
        each["usable_span_Hz_low"] = si_of(row.report.usable_span_low);
        each["vswr"] = number_of(row.report.point.vswr_limit);
        each["causes"] = causes_json(row.report);
    }
    object["rows"] = std::move(rows);
    object["notices"] = detail::notices_of(notices_of_all(answer));
    return detail::text_of(object);
}

Table drift_data(const DriftAnswer& answer) {
    Table table;
    for (const char* key : {"band", "frequency_Hz", "usable_span_Hz", "cause", "change", "shift_Hz",
                            "share_of_span", "verdict"}) {
        table.columns.push_back({key, key, ""});
    }
    for (const NamedDrift& row : answer.rows) {
        for (const tuning::DriftRow& each : row.report.rows) {
            std::vector<Cell> cells(table.columns.size());
            cells[0] = row.band;
            cells[1] = row.report.point.frequency.value();
            cells[2] = row.report.usable_span->value();
            cells[3] = std::string(tuning::name_of(each.cause));
            cells[4] = with_plain_blanks(each.change);
            if (each.shift) {
                cells[5] = each.shift->value();
                cells[6] = each.share_of_span;
            }
            cells[7] = std::string(tuning::name_of(each.verdict));
            table.rows.push_back(std::move(cells));
        }
    }
    return table;
}

Page drift_page(const DriftAnswer& answer, const design::Design& design) {
    Page page;
    page.title = design.title.empty() ? "Loop without a title" : design.title;
    page.subtitle = std::string("Drift of the tuned loop, model ") + name_of(loop::Model::full_wave);
    for (const NamedDrift& row : answer.rows) {
        page.sections.push_back(section_of(row));
    }
    page.sections.push_back({"assumptions", "Assumptions",
                             assumptions(loop::Model::full_wave, notices_of_all(answer)), std::nullopt});
    page.sections.push_back({"cautions", "Cautions", cautions(), std::nullopt});
    return page;
}

const std::vector<KeyMeaning>& drift_keys() {
    static const std::vector<KeyMeaning> keys = {
        {"title", "of the design"},
        {"model", "`full-wave`"},
        {"rise_K", "of conductor and capacitor"},
        {"rows", "array of objects `band` (null for a frequency asked for), `frequency_Hz`, `usable_span_Hz` "
                 "(bandwidth to `vswr`, matched), `usable_span_Hz_low` (lower end of its interval), `vswr`, "
                 "`causes`"},
        {"causes", "array of objects `cause` (`warmth`: conductor and capacitor together, `conductor`, "
                   "`capacitor`, `higher`, `lower`, `wet_soil`, `dry_soil`, `tilt`), `change`, `shift_Hz` "
                   "(signed), `share_of_span` (of `usable_span_Hz_low`), `verdict` (`stays`: up to a quarter "
                   "of the span, `check`: up "
                   "to half, `retune`, `not_established`), `text`"},
    };
    return keys;
}

} // namespace loopwright::report
