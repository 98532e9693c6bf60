#include "report/json.hpp"

#include "report/detail/json_parts.hpp"
#include "report/hazards.hpp"
#include "report/words.hpp"
#include "survey/site_voltage.hpp"

namespace loopwright::report {
namespace {

using detail::Json;
using detail::put_point;
using detail::text_of;

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

void put_distance(Json& object, const survey::KeyingDistance* distance) {
    const bool known = distance != nullptr;
    object["distance_m"] = known ? detail::number_of(distance->farthest->distance.value()) : Json(nullptr);
    object["distance_m_high"] = known ? detail::number_of(distance->range.high.value()) : Json(nullptr);
    object["distance_limit"] = known ? Json(distance->limit) : Json(nullptr);
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

std::string bands_json(const survey::Survey& survey, const survey::Keying* keying) {
    Json object = head("loopwright-bands-1", survey);
    Json bands = Json::array();
    for (const survey::BandRow& row : survey::rows_of(survey, keying)) {
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
        put_distance(band, distance_on(keying, row.band.name));
    }
    const auto near = keying != nullptr ? people_too_near(*keying) : std::nullopt;
    object["people_too_near"] = near ? Json(*near) : Json(nullptr);
    object["bands"] = std::move(bands);
    return text_of(object);
}

} // namespace loopwright::report
