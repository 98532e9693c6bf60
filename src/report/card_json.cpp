#include "report/card.hpp"
#include "report/card_fields.hpp"
#include "report/detail/json_parts.hpp"
#include "report/detail/next_points.hpp"
#include "report/hazards.hpp"
#include "report/words.hpp"
#include "survey/card_safety.hpp"
#include "survey/voltage_standing.hpp"

#include <utility>

namespace loopwright::report {
namespace {

using detail::Json;
using detail::number_of;
using detail::si_of;

Json row_json(const survey::CardRow& row) {
    Json json = Json::object();
    for (const CardField& field : card_fields()) {
        detail::put(json, field.path, detail::json_of(field.value(row)));
    }
    if (!row.shortfall || !row.shortfall->remedy) {
        json["fixed_capacitor"] = nullptr;
    }
    Json plugged = Json::array();
    for (const std::size_t index : row.plugged) {
        plugged.push_back(index);
    }
    json["plugged"] = std::move(plugged);
    Json shared = Json::array();
    for (const std::string& use : row.shared_with) {
        shared.push_back(use);
    }
    json["without_retuning"] = std::move(shared);
    Json remarks = Json::array();
    for (const survey::CardRemark& remark : row.remarks) {
        remarks.push_back({{"kind", survey::name_of(remark.kind)}, {"text", with_plain_blanks(remark.text)}});
    }
    json["remarks"] = std::move(remarks);
    return json;
}

void put_head(Json& object, const char* schema, const survey::CardRequest& request) {
    const design::Design& design = request.design;
    object["schema"] = schema;
    object["title"] = design.title;
    object["model"] = name_of(loop::Model::full_wave);
    object["region"] = design.station.region;
    object["power_W"] = number_of(design.station.power.value.value());
    object["vswr"] = number_of(request.vswr_limit);
}

/// Highest and nearest are two things: the highest may be far below a higher rating.
void put_voltage(Json& object, const survey::VoltageStanding& standing) {
    const auto text = [](const auto& at) { return at ? Json(at->where) : Json(nullptr); };
    const auto peak = [](const auto& at) { return at ? number_of(at->peak.value()) : Json(nullptr); };
    const auto usable = [](const auto& at) { return at ? si_of(at->usable) : Json(nullptr); };
    object["highest_voltage_peak_V"] = peak(standing.highest);
    object["highest_voltage_at"] = text(standing.highest);
    object["usable_voltage_V"] = usable(standing.highest);
    object["nearest_rating_voltage_peak_V"] = peak(standing.nearest);
    object["nearest_rating_at"] = text(standing.nearest);
    object["nearest_rating_usable_voltage_V"] = usable(standing.nearest);
    object["unrated_at"] = standing.unrated;
}

void put_safety(Json& object, const survey::Card& card, const survey::Keying* keying) {
    const survey::CardSafety safety = keying != nullptr ? survey::safety_of(*keying) : survey::CardSafety{};
    const survey::VoltageStanding standing =
        keying != nullptr ? survey::voltage_standing(*keying, card) : survey::VoltageStanding{};
    put_voltage(object, standing);
    object["voltage_verdict"] = keying != nullptr ? Json(survey::name_of(standing.verdict)) : Json(nullptr);
    object["keep_out_distance_m"] = si_of(safety.distance);
    const auto near = keying != nullptr ? people_too_near(*keying) : std::nullopt;
    object["people_too_near"] = near ? Json(*near) : Json(nullptr);
    object["keep_out_emission"] = card.request.design.station.emission;
    Json more = Json::array();
    if (keying != nullptr) {
        for (const band::Emission& emission : survey::emissions_asking_more(card, *keying)) {
            more.push_back(emission.id);
        }
    }
    object["emissions_asking_more"] = std::move(more);
    object["reach_m"] = si_of(safety.reach);
    object["tuning_power_W"] = si_of(safety.tuning_power);
}

} // namespace

std::string card_json(const survey::Card& card, const survey::Keying* keying) {
    Json object;
    put_head(object, "loopwright-card-1", card.request);
    put_safety(object, card, keying);
    Json rows = Json::array();
    base::Notices notices;
    for (const survey::CardRow& row : card.rows) {
        rows.push_back(row_json(row));
        notices.merge(row.point.notices);
    }
    object["rows"] = std::move(rows);
    object["next"] = detail::next_points_of(card.next);
    object["notices"] = detail::notices_of(notices);
    return detail::text_of(object);
}

std::string card_row_json(const survey::CardRow& row, const survey::CardRequest& request) {
    Json object;
    put_head(object, "loopwright-dial-1", request);
    object.update(row_json(row));
    object["notices"] = detail::notices_of(row.point.notices);
    return detail::text_of(object);
}

} // namespace loopwright::report
