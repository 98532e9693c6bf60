#include "design/names.hpp"
#include "report/calibration.hpp"
#include "report/detail/json_parts.hpp"
#include "report/detail/next_points.hpp"
#include "report/words.hpp"

#include <algorithm>

namespace loopwright::report {
namespace {

using detail::Json;
using detail::number_of;
using tuning::DialFigure;

void put_figure(Json& row, const std::string& prefix, const std::optional<DialFigure>& figure) {
    row[prefix] = figure ? number_of(figure->reading) : Json(nullptr);
    row[prefix + "_low"] = figure ? number_of(figure->range.low) : Json(nullptr);
    row[prefix + "_high"] = figure ? number_of(figure->range.high) : Json(nullptr);
}

Json points_of(const tuning::CalibrationReport& report) {
    Json points = Json::array();
    for (const tuning::JudgedPoint& point : report.dial.points()) {
        const bool answered = !point.outside_model;
        Json& each = points.emplace_back();
        each["reading"] = number_of(point.point.reading);
        each["frequency_Hz"] = number_of(point.point.frequency.value.value());
        each["used"] = point.used;
        each["probability_mistaken"] = answered ? number_of(point.wrong) : Json(nullptr);
        each["expected_reading"] = answered ? number_of(point.expected_reading) : Json(nullptr);
        each["off_Hz"] = answered ? number_of(point.off.value()) : Json(nullptr);
        each["times_scatter"] = answered ? number_of(point.times_scatter) : Json(nullptr);
        each["reason"] = with_plain_blanks(point.reason);
    }
    return points;
}

Json rows_of(const tuning::CalibrationReport& report) {
    Json rows = Json::array();
    for (const tuning::CalibrationRow& row : report.rows) {
        const auto& figure = row.calibrated;
        Json& each = rows.emplace_back();
        each["band"] = row.band.empty() ? Json(nullptr) : Json(row.band);
        each["frequency_Hz"] = number_of(row.frequency.value());
        put_figure(each, "dial_predicted", row.predicted);
        put_figure(each, "dial", figure);
        each["dial_uncertainty"] = figure ? number_of(std::max(figure->range.high - figure->reading,
                                                               figure->reading - figure->range.low))
                                          : Json(nullptr);
        each["resonance_low_Hz"] = figure ? number_of(figure->frequency_range.low.value()) : Json(nullptr);
        each["resonance_high_Hz"] = figure ? number_of(figure->frequency_range.high.value()) : Json(nullptr);
        each["within_stops"] = figure ? Json(figure->within_stops) : Json(nullptr);
    }
    return rows;
}

Json hardware_of(const tuning::CalibrationReport& report) {
    Json parts = Json::array();
    for (const tuning::FittedPart& part : report.dial.parts()) {
        parts.push_back({{"part", part.key},
                         {"name", with_plain_blanks(part.name)},
                         {"assumed", number_of(part.assumed)},
                         {"value", number_of(part.value)},
                         {"value_low", number_of(part.range.low)},
                         {"value_high", number_of(part.range.high)},
                         {"told_by_points", part.told}});
    }
    return parts;
}

} // namespace

std::string calibration_json(const tuning::CalibrationReport& report, const design::Design& design,
                             bool written) {
    Json object;
    object["schema"] = "loopwright-calibrate-1";
    object["title"] = design.title;
    object["model"] = name_of(loop::Model::full_wave);
    object["scale"] =
        design.capacitor.dial ? Json(design::name_of(design.capacitor.dial->scale)) : Json(nullptr);
    object["date"] = design.calibration ? Json(design.calibration->date) : Json(nullptr);
    object["note"] = design.calibration ? Json(design.calibration->note) : Json(nullptr);
    object["written"] = written;
    object["points"] = points_of(report);
    object["rows"] = rows_of(report);
    object["hardware"] = hardware_of(report);
    object["next"] = detail::next_points_of(report.next);
    object["notices"] = detail::notices_of(report.notices);
    return detail::text_of(object);
}

const std::vector<KeyMeaning>& calibration_keys() {
    static const std::vector<KeyMeaning> keys = {
        {"title", "of the design"},
        {"model", "`full-wave`"},
        {"scale", "`degrees`, `turns` or `divisions`: what readings are in"},
        {"date", "of the calibration, as the file or `--date` has it"},
        {"note", "likewise"},
        {"written", "whether the points were stored in the design file"},
        {"points", "array of objects `reading`, `frequency_Hz`, `used`, `probability_mistaken`, "
                   "`expected_reading` (by the other points and the model), `off_Hz` (measured less what the "
                   "others give for the reading), `times_scatter`, `reason`"},
        {"rows",
         "array of objects `band`, `frequency_Hz`, `dial_predicted` (file and model alone), `dial` "
         "(calibrated), both with `_low` and `_high` (95 %), `dial_uncertainty` (the wider side), "
         "`resonance_low_Hz` and `resonance_high_Hz` (95 %, with the dial at `dial`), `within_stops`"},
        {"hardware", "array of objects `part` (`stray_F`, `inductance_factor`, `capacitor_factor`, "
                     "`dial_offset`, `fixed_1_F` ..., `law_deviation`, `reading_error`), `name`, `assumed`, "
                     "`value`, `value_low`, `value_high` (95 %), `told_by_points` (false: the points say "
                     "little, the assumption stands)"},
        {"next", "array of the best further points, each after those before it: `frequency_Hz`, `reading`, "
                 "`mean_width` (of the 95 % intervals of `rows` now, in readings), `mean_width_after`"},
    };
    return keys;
}

} // namespace loopwright::report
