#include "report/height.hpp"

#include "report/cautions.hpp"
#include "report/detail/json_parts.hpp"
#include "report/point_fields.hpp"
#include "report/shown_units.hpp"
#include "report/words.hpp"
#include "survey/verdict.hpp"

namespace loopwright::report {
namespace {

using detail::Json;

/// Share of the accepted power in one part of the resistance.
Cell share(const loop::OperatingPoint& point, const char* part) {
    const Cell of_part = figure(point, std::string("resistance_ohm.") + part);
    const Cell total = figure(point, "resistance_ohm.total");
    const auto* r = std::get_if<double>(&of_part);
    const auto* whole = std::get_if<double>(&total);
    return r != nullptr && whole != nullptr && *whole > 0 ? Cell(*r / *whole) : Cell();
}

Table shares_table(const survey::HeightSweep& sweep) {
    Table table;
    table.columns = {{"lowest_point_m", "Lowest point", "m", 1},
                     {"sky", "Sky", "%", per_cent},
                     {"ground", "Ground", "%", per_cent},
                     {"conductor", "Conductor", "%", per_cent},
                     {"joints", "Joints", "%", per_cent},
                     {"capacitor", "Capacitor", "%", per_cent},
                     {"gain_low_angle_dBi", "Gain at 15 deg", "dBi", 1, 3, 1},
                     {"tuning_capacitance_F", "Capacitance needed", "pF", pico}};
    for (const survey::HeightRow& row : sweep.rows) {
        table.rows.push_back(
            {row.lowest_point.value(), share(row.point, "radiation"), share(row.point, "ground"),
             share(row.point, "conductor"), share(row.point, "joints"), share(row.point, "capacitor"),
             figure(row.point, "gain_low_angle_dBi"), figure(row.point, "tuning_capacitance_F")});
    }
    return table;
}

base::Notices all_notices(const survey::HeightSweep& sweep) {
    base::Notices all;
    for (const survey::HeightRow& row : sweep.rows) {
        all.merge(row.point.notices);
    }
    return all;
}

} // namespace

std::string height_json(const survey::HeightSweep& sweep) {
    const survey::HeightRequest& request = sweep.request;
    Json object;
    object["schema"] = "loopwright-height-1";
    object["title"] = request.design.title;
    object["model"] = name_of(loop::Model::full_wave);
    object["frequency_Hz"] = detail::number_of(request.frequency.value());
    Json rows = Json::array();
    for (const survey::HeightRow& row : sweep.rows) {
        Json& json = rows.emplace_back();
        json["lowest_point_m"] = detail::number_of(row.lowest_point.value());
        detail::put_point(json, row.point);
    }
    object["rows"] = std::move(rows);
    return detail::text_of(object);
}

Table height_data(const survey::HeightSweep& sweep) {
    Table table;
    table.columns.push_back({"lowest_point_m", "lowest_point_m", ""});
    for (const PointField& field : point_fields()) {
        table.columns.push_back({field.path, field.path, ""});
    }
    for (const survey::HeightRow& row : sweep.rows) {
        auto& cells = table.rows.emplace_back();
        cells.emplace_back(row.lowest_point.value());
        for (const PointField& field : point_fields()) {
            cells.push_back(field.value(row.point));
        }
    }
    return table;
}

Page height_page(const survey::HeightSweep& sweep) {
    const survey::HeightRequest& request = sweep.request;
    Page page;
    page.title = request.design.title.empty() ? "Loop without a title" : request.design.title;
    page.subtitle = "What height does at " + with_plain_blanks(survey::given_text(request.frequency)) +
                    ", model " + name_of(loop::Model::full_wave);
    page.sections.push_back({"height", "Where the power goes", {}, shares_table(sweep)});
    page.sections.push_back({"assumptions", "Assumptions",
                             assumptions(loop::Model::full_wave, all_notices(sweep)), std::nullopt});
    page.sections.push_back({"cautions", "Cautions", cautions(), std::nullopt});
    return page;
}

} // namespace loopwright::report
