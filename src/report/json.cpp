#include "report/json.hpp"

#include "base/error.hpp"
#include "report/point_fields.hpp"
#include "report/words.hpp"

#include <nlohmann/json.hpp>

#include <cmath>
#include <string_view>

namespace loopwright::report {
namespace {

using Json = nlohmann::ordered_json;

constexpr const char* point_schema = "loopwright-point-1";

Json json_of(const Cell& cell) {
    if (const auto* number = std::get_if<double>(&cell)) {
        if (!std::isfinite(*number)) {
            throw base::ProgramError("a number that is not finite reached a report");
        }
        return *number;
    }
    if (const auto* flag = std::get_if<bool>(&cell)) {
        return *flag;
    }
    const auto* text = std::get_if<std::string>(&cell);
    return text != nullptr ? Json(*text) : Json(nullptr);
}

void put(Json& object, std::string_view path, Json value) {
    const auto dot = path.find('.');
    if (dot == std::string_view::npos) {
        object[std::string(path)] = std::move(value);
    } else {
        put(object[std::string(path.substr(0, dot))], path.substr(dot + 1), std::move(value));
    }
}

Json notices_of(const base::Notices& notices) {
    Json list = Json::array();
    for (const base::Notice& notice : notices.worst_first()) {
        list.push_back(
            {{"code", notice.code}, {"severity", base::name_of(notice.severity)}, {"text", notice.text}});
    }
    return list;
}

void put_point(Json& object, const loop::OperatingPoint& point) {
    object["schema"] = point_schema;
    for (const PointField& field : point_fields()) {
        put(object, field.path, json_of(field.value(point)));
    }
    object["notices"] = notices_of(point.notices);
}

Json head(const char* schema, const survey::Survey& survey) {
    const survey::Request& request = survey.request;
    Json object;
    object["schema"] = schema;
    object["title"] = request.design.title;
    object["model"] = name_of(request.model);
    object["power_W"] = request.design.station.power.value.value();
    object["vswr"] = request.vswr_limit;
    object["emission"] = request.design.station.emission;
    return object;
}

/// Text of a person's file is UTF-8 by then; should it not be, a replacement character is better than no
/// answer.
std::string text_of(const Json& json) {
    return json.dump(2, ' ', false, Json::error_handler_t::replace) + "\n";
}

} // namespace

std::string point_json(const loop::OperatingPoint& point) {
    Json object;
    put_point(object, point);
    return text_of(object);
}

std::string sweep_json(const survey::Survey& survey) {
    Json object = head("loopwright-sweep-1", survey);
    Json rows = Json::array();
    for (const loop::OperatingPoint& point : survey.curve) {
        put_point(rows.emplace_back(), point);
    }
    object["rows"] = std::move(rows);
    return text_of(object);
}

std::string bands_json(const survey::Survey& survey) {
    Json object = head("loopwright-bands-1", survey);
    Json bands = Json::array();
    for (const survey::BandRow& row : survey.bands) {
        Json& band = bands.emplace_back();
        band["band"] = row.band.name;
        band["verdict"] = survey::name_of(row.verdict);
        band["verdict_text"] = with_plain_blanks(row.verdict_text);
        Json further = Json::array();
        for (const survey::Reason& reason : row.further) {
            further.push_back(
                {{"verdict", survey::name_of(reason.verdict)}, {"text", with_plain_blanks(reason.text)}});
        }
        band["further"] = std::move(further);
        put_point(band, row.point);
    }
    object["bands"] = std::move(bands);
    return text_of(object);
}

} // namespace loopwright::report
