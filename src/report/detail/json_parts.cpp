#include "report/detail/json_parts.hpp"

#include "base/error.hpp"
#include "report/point_fields.hpp"
#include "report/words.hpp"

#include <cmath>
#include <string_view>

namespace loopwright::report::detail {

Json number_of(double value) {
    if (!std::isfinite(value)) {
        throw base::ProgramError("a number that is not finite reached a report");
    }
    return value;
}

Json decibels_of(const std::optional<units::Decibel>& value) {
    return value ? number_of(value->value) : Json(nullptr);
}

Json json_of(const Cell& cell) {
    if (const auto* number = std::get_if<double>(&cell)) {
        return number_of(*number);
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
        list.push_back({{"code", notice.code},
                        {"severity", base::name_of(notice.severity)},
                        {"text", with_plain_blanks(notice.text)}});
    }
    return list;
}

void put_point(Json& object, const loop::OperatingPoint& point) {
    object["schema"] = "loopwright-point-1";
    for (const PointField& field : point_fields()) {
        put(object, field.path, json_of(field.value(point)));
    }
    object["notices"] = notices_of(point.notices);
}

std::string text_of(const Json& json) {
    return json.dump(2, ' ', false, Json::error_handler_t::replace) + "\n";
}

} // namespace loopwright::report::detail
