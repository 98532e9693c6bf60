#include "report/detail/json_parts.hpp"
#include "report/keying.hpp"
#include "report/shown_units.hpp"
#include "report/words.hpp"
#include "units/constants.hpp"

namespace loopwright::report {
namespace {

using detail::Json;
using detail::number_of;

template <class Quantity>
Json number_or_null(const std::optional<Quantity>& value) {
    return value ? number_of(value->value()) : Json(nullptr);
}

Json distance_of(const survey::KeyingDistance& d) {
    Json json;
    json["limit"] = d.limit;
    json["tier"] = exposure::name_of(d.tier);
    json["standard"] = d.standard;
    json["table"] = d.table;
    json["from_memory"] = d.from_memory;
    json["electric_limit_rms_V_per_m"] = number_of(d.electric_limit.value());
    json["magnetic_limit_rms_A_per_m"] = number_of(d.magnetic_limit.value());
    json["duty"] = number_of(d.duty);
    json["averaged_power_W"] = number_of(d.averaged_power.value());
    const bool known = d.farthest.has_value();
    json["distance_m"] = known ? number_of(d.farthest->distance.value()) : Json(nullptr);
    json["distance_m_low"] = known ? number_of(d.range.low.value()) : Json(nullptr);
    json["distance_m_high"] = known ? number_of(d.range.high.value()) : Json(nullptr);
    json["distance_body_average_m"] = number_or_null(d.body_average);
    json["azimuth_deg"] = known ? number_of(d.farthest->azimuth.value() * degrees_per_radian) : Json(nullptr);
    json["height_m"] = known ? number_of(d.farthest->height.value()) : Json(nullptr);
    json["cause"] = !known                                           ? Json(nullptr)
                    : d.farthest->cause == exposure::Cause::electric ? Json("electric")
                                                                     : Json("magnetic");
    json["nearest_the_model_stands_for"] = known && d.farthest->at_model_edge;
    json["power_for_people_W"] = number_or_null(d.power_for_people);
    json["power_for_tuning_W"] = number_or_null(d.power_for_tuning);
    return json;
}

const char* word_of(capacitor::MemberKind kind) {
    switch (kind) {
    case capacitor::MemberKind::section:
        return "section";
    case capacitor::MemberKind::added:
        return "added";
    case capacitor::MemberKind::stray:
        break;
    }
    return "stray";
}

Json members_of(const survey::KeyingBand& band) {
    Json members = Json::array();
    if (band.load) {
        for (const capacitor::MemberLoad& m : band.load->members) {
            members.push_back({{"member", word_of(m.kind)},
                               {"index", m.index},
                               {"capacitance_F", number_of(m.capacitance.value())},
                               {"voltage_peak_V", number_of(m.voltage_peak.value())},
                               {"current_rms_A", number_of(m.current_rms.value())},
                               {"usable_voltage_V", number_or_null(m.usable_peak)},
                               {"current_rating_A", number_or_null(m.current_rating)}});
        }
    }
    return members;
}

void put_rise(Json& json, const std::string& key, const std::optional<loop::LoopHeating>& heating,
              bool conductor) {
    const loop::Heating* of = heating ? conductor ? &heating->conductor : &heating->capacitor : nullptr;
    const bool known = of != nullptr && of->rise_K.has_value();
    json[key] = known ? number_of(*of->rise_K) : Json(nullptr);
    json[key + "_low"] = known ? number_of(of->rise_range_K.low) : Json(nullptr);
    json[key + "_high"] = known ? number_of(of->rise_range_K.high) : Json(nullptr);
}

Json band_of(const survey::KeyingBand& band) {
    Json json;
    const auto& r = band.point.resonance;
    json["band"] = band.band.empty() ? Json(nullptr) : Json(band.band);
    json["frequency_Hz"] = number_of(band.point.frequency.value());
    json["power_W"] = number_of(band.point.power.value());
    json["capacitor_voltage_peak_V"] = r ? number_of(r->capacitor_voltage_peak.value()) : Json(nullptr);
    json["capacitor_voltage_peak_V_low"] = r ? number_of(band.voltage_peak.low.value()) : Json(nullptr);
    json["capacitor_voltage_peak_V_high"] = r ? number_of(band.voltage_peak.high.value()) : Json(nullptr);
    json["usable_voltage_V"] = number_or_null(band.usable_voltage);
    json["power_for_capacitor_W"] = number_or_null(band.power_for_capacitor);
    const auto greatest = survey::greatest_power(band);
    json["greatest_power_W"] = greatest ? number_of(greatest->power.value()) : Json(nullptr);
    json["greatest_power_by"] = !greatest             ? Json(nullptr)
                                : greatest->by_people ? Json("people")
                                                      : Json("capacitor");
    json["members"] = members_of(band);
    Json distances = Json::array();
    for (const survey::KeyingDistance& d : band.distances) {
        distances.push_back(distance_of(d));
    }
    json["distances"] = std::move(distances);
    json["touch_voltage_highest_rms_V"] =
        band.touch ? number_of(band.touch->highest_rms.value()) : Json(nullptr);
    json["touch_voltage_in_reach_rms_V"] = number_or_null(band.touch_in_reach_rms);
    json["touch_voltage_middle_rms_V"] =
        band.touch ? number_of(band.touch->at_middle_rms.value()) : Json(nullptr);
    json["conductor_loss_average_W"] =
        band.heating ? number_of(band.heating->conductor_average.value()) : Json(nullptr);
    json["capacitor_loss_average_W"] =
        band.heating ? number_of(band.heating->capacitor_average.value()) : Json(nullptr);
    put_rise(json, "conductor_rise_K", band.heating, true);
    put_rise(json, "capacitor_rise_K", band.heating, false);
    json["erp_W"] = r ? number_of(band.erp.value()) : Json(nullptr);
    json["fcc_exemption_erp_W"] = number_or_null(band.fcc_exempt_erp);
    json["verdict"] = survey::name_of(band.verdict);
    json["on_condition"] = band.on_condition;
    Json reasons = Json::array();
    for (const survey::KeyingReason& reason : band.reasons) {
        reasons.push_back(
            {{"verdict", survey::name_of(reason.verdict)},
             {"text", with_plain_blanks(reason.text)},
             {"fix", reason.fix.empty() ? Json(nullptr) : Json(with_plain_blanks(reason.fix))}});
    }
    json["reasons"] = std::move(reasons);
    json["remarks"] = band.remarks;
    base::Notices notices = band.point.notices;
    if (band.load) {
        notices.merge(band.load->notices);
    }
    json["notices"] = detail::notices_of(notices);
    return json;
}

} // namespace

std::string keying_json(const survey::Keying& keying) {
    const design::Design& design = keying.request.design;
    Json object;
    object["schema"] = "loopwright-keying-1";
    object["title"] = design.title;
    object["model"] = name_of(loop::Model::full_wave);
    object["emission"] = design.station.emission;
    object["power_W"] = number_of(design.station.power.value.value());
    object["intervals"] = keying.request.intervals;
    object["people_distance_m"] =
        design.site.people_distance ? number_of(design.site.people_distance->value.value()) : Json(nullptr);
    Json bands = Json::array();
    for (const survey::KeyingBand& band : keying.bands) {
        bands.push_back(band_of(band));
    }
    object["bands"] = std::move(bands);
    return detail::text_of(object);
}

} // namespace loopwright::report
