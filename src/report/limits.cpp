#include "report/limits.hpp"

#include "report/detail/json_parts.hpp"
#include "report/number.hpp"
#include "report/words.hpp"
#include "survey/verdict.hpp"

namespace loopwright::report {
namespace {

using detail::Json;
using detail::number_of;
using exposure::Limit;
using exposure::LimitTable;

constexpr double hertz_per_MHz = 1e6;

Json averaging_json(const Limit& limit, exposure::Tier tier) {
    const auto time = limit.averaging(tier);
    return time ? number_of(time->value()) : Json(nullptr);
}

std::string averaging_text(const Limit& limit, exposure::Tier tier) {
    const auto time = limit.averaging(tier);
    return time ? significant(time->value() / 60, 3) + " min" : "none: every instant";
}

Json rows_json(const LimitTable& table) {
    Json rows = Json::array();
    for (const exposure::LimitSegment& row : table.segments) {
        rows.push_back({{"from_Hz", number_of(row.from_MHz * hertz_per_MHz)},
                        {"to_Hz", number_of(row.to_MHz * hertz_per_MHz)},
                        {"electric_coefficient_V_per_m", number_of(row.electric_coefficient)},
                        {"electric_exponent", number_of(row.electric_exponent)},
                        {"magnetic_coefficient_A_per_m", number_of(row.magnetic_coefficient)},
                        {"magnetic_exponent", number_of(row.magnetic_exponent)}});
    }
    return rows;
}

Json table_json(const Limit& limit, const LimitTable& table, const LimitsAnswer& answer) {
    Json object;
    object["tier"] = exposure::name_of(table.tier);
    object["table"] = table.table;
    object["from_memory"] = table.from_memory;
    object["averaging_s"] = averaging_json(limit, table.tier);
    const auto level = answer.frequency ? exposure::at(limit, table.tier, *answer.frequency) : std::nullopt;
    object["electric_field_rms_V_per_m"] = level ? number_of(level->electric.value()) : Json(nullptr);
    object["magnetic_field_rms_A_per_m"] = level ? number_of(level->magnetic.value()) : Json(nullptr);
    object["rows"] = rows_json(table);
    return object;
}

std::string source_text(const LimitTable& table) {
    return table.table + (table.from_memory ? " (from memory)" : "");
}

void add_rows(Table& out, const Limit& limit, const LimitTable& table, const LimitsAnswer& answer) {
    const std::vector<Cell> head{limit.id, std::string(exposure::name_of(table.tier))};
    const std::vector<Cell> tail{averaging_text(limit, table.tier), source_text(table)};
    const auto add = [&](std::vector<Cell> middle) {
        std::vector<Cell> row = head;
        row.insert(row.end(), middle.begin(), middle.end());
        row.insert(row.end(), tail.begin(), tail.end());
        out.rows.push_back(std::move(row));
    };
    if (answer.frequency) {
        const auto level = exposure::at(limit, table.tier, *answer.frequency);
        std::vector<Cell> fields(2); // GCC 12 at -O3 takes a list of such choices for uninitialised
        if (level) {
            fields[0] = level->electric.value();
            fields[1] = level->magnetic.value();
        }
        add(std::move(fields));
        return;
    }
    for (const exposure::LimitSegment& row : table.segments) {
        add({row.from_MHz * hertz_per_MHz, row.to_MHz * hertz_per_MHz,
             law_text(row.electric_coefficient, row.electric_exponent),
             law_text(row.magnetic_coefficient, row.magnetic_exponent)});
    }
}

Section tables_section(const LimitsAnswer& answer) {
    Section section{"limits", "Limits", {}, limits_data(answer)};
    section.sentences.push_back(
        {"limits_law",
         answer.frequency ? "Field strengths, rms; an empty place: the table has no row there."
                          : "Field strengths, rms, with f in MHz. A row holds from its first frequency up to "
                            "the next row; the last row includes its end."});
    section.sentences.push_back(
        {"limits_both",
         "Electric and magnetic field are held against their limits separately; neither may be "
         "exceeded. Squares of the fields are averaged over the time given."});
    section.sentences.push_back(
        {"limits_memory", "Tables marked 'from memory' were not read in a copy of their standard: check them "
                          "there before relying on them."});
    return section;
}

} // namespace

std::string law_text(double coefficient, double exponent) {
    std::string number = exact(coefficient);
    if (exponent == 0) {
        return number;
    }
    if (exponent == -1) {
        return number + "/f";
    }
    return exponent < 0 ? number + "/f^" + exact(-exponent) : number + " f^" + exact(exponent);
}

std::string limits_json(const LimitsAnswer& answer) {
    Json object;
    object["schema"] = "loopwright-limits-1";
    object["frequency_Hz"] = answer.frequency ? number_of(answer.frequency->value()) : Json(nullptr);
    Json all = Json::array();
    for (const Limit& limit : answer.limits) {
        Json& each = all.emplace_back();
        each["limit"] = limit.id;
        each["standard"] = limit.standard;
        each["edition"] = limit.edition;
        each["average_over_body"] = limit.average_over_body;
        each["remark"] = limit.remark;
        Json tables = Json::array();
        for (const LimitTable& table : limit.tables) {
            tables.push_back(table_json(limit, table, answer));
        }
        each["tables"] = std::move(tables);
    }
    object["limits"] = std::move(all);
    return detail::text_of(object);
}

Table limits_data(const LimitsAnswer& answer) {
    Table table;
    table.columns = {{"limit", "Limit", ""}, {"tier", "Tier", ""}};
    if (answer.frequency) {
        table.columns.push_back({"electric_field_rms_V_per_m", "Electric", "V/m"});
        table.columns.push_back({"magnetic_field_rms_A_per_m", "Magnetic", "A/m"});
    } else {
        table.columns.push_back({"from_Hz", "From", "MHz", 1 / hertz_per_MHz, 4});
        table.columns.push_back({"to_Hz", "to", "MHz", 1 / hertz_per_MHz, 4});
        table.columns.push_back({"electric_law_V_per_m", "Electric", "V/m"});
        table.columns.push_back({"magnetic_law_A_per_m", "Magnetic", "A/m"});
    }
    table.columns.push_back({"averaging", "Averaging", ""});
    table.columns.push_back({"table", "Table", ""});
    for (const Limit& limit : answer.limits) {
        for (const LimitTable& each : limit.tables) {
            add_rows(table, limit, each, answer);
        }
    }
    return table;
}

Page limits_page(const LimitsAnswer& answer) {
    Page page;
    page.title = "Exposure limits";
    page.subtitle = answer.frequency ? "At " + with_plain_blanks(survey::given_text(*answer.frequency))
                                     : std::string("As the standards print them");
    page.sections.push_back(tables_section(answer));
    Section standards{"standards", "Standards", {}, std::nullopt};
    for (const Limit& limit : answer.limits) {
        standards.sentences.push_back(
            {limit.id, limit.id + ": " + limit.standard + ", " + limit.edition + ". " + limit.remark});
    }
    page.sections.push_back(std::move(standards));
    page.sections.push_back({"cautions",
                             "Cautions",
                             {{"limits_law_decides",
                               "Which limits bind, and in which edition, is for the law of the place. Being "
                               "below one is no promise: contact, implants, metal nearby and people with a "
                               "special need for care are not covered by these tables."}},
                             std::nullopt});
    return page;
}

const std::vector<KeyMeaning>& limits_keys() {
    static const std::vector<KeyMeaning> keys = {
        {"frequency_Hz", "asked for, or null"},
        {"limits", "array of objects with the keys below"},
        {"limit", "the id that `--limits` and `station.limits` take"},
        {"standard", "the document"},
        {"edition", "its edition or publication"},
        {"average_over_body", "whether it allows the average over a standing body"},
        {"remark", "what has to be said beside a distance from it"},
        {"tables", "array of objects with the keys below, one for each tier"},
        {"tier", "`public` or `occupational`"},
        {"table", "its name in the standard"},
        {"from_memory", "whether its values were not read in a copy of the standard"},
        {"averaging_s", "time over which the squared fields are averaged; null: it holds at every instant"},
        {"electric_field_rms_V_per_m", "at `frequency_Hz`; null without one, or where the table has no row"},
        {"magnetic_field_rms_A_per_m", "likewise"},
        {"rows",
         "array of objects `from_Hz`, `to_Hz`, `electric_coefficient_V_per_m`, `electric_exponent`, "
         "`magnetic_coefficient_A_per_m`, `magnetic_exponent`: coefficient times f to the exponent, f "
         "in MHz"},
    };
    return keys;
}

} // namespace loopwright::report
