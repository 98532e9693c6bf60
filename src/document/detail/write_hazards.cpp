#include "document/detail/write_hazards.hpp"

#include "design/names.hpp"

namespace loopwright::document::detail {

Json rating_part(const design::CapacitorRating& rating) {
    const design::CapacitorRating standard;
    Part part;
    part.given("peak_voltage", rating.peak_voltage);
    part.given("gap", rating.gap);
    part.maybe(rating.gap.has_value(), "plate_edges", design::name_of(rating.plate_edges),
               design::name_of(standard.plate_edges));
    part.maybe(rating.gap.has_value(), "safety_factor", number(rating.safety_factor),
               number(standard.safety_factor));
    part.given("current", rating.current);
    return part.take();
}

Json added_part(const std::vector<design::AddedCapacitor>& added) {
    Json list = Json::array();
    for (const design::AddedCapacitor& each : added) {
        Part part;
        part.used("capacitance", each.capacitance);
        part.used("connection", design::name_of(each.connection));
        part.given("peak_voltage", each.peak_voltage);
        part.given("current", each.current);
        if (each.q) {
            part.used("q", number(*each.q));
        }
        part.maybe(false, "note", each.note, std::string());
        part.maybe(false, "bands", each.bands, std::vector<std::string>());
        list.push_back(part.take());
    }
    return list;
}

Json use_part(const design::Use& use) {
    const design::Use standard;
    Part part;
    part.used("habit", design::name_of(use.habit));
    part.maybe(use.habit == design::Habit::share_of_slots, "share", number(use.share),
               number(standard.share));
    part.maybe(use.habit == design::Habit::listening_turns, "over", use.over, standard.over);
    return part.take();
}

Json own_limits_part(const std::vector<design::OwnLimit>& own) {
    Json list = Json::array();
    for (const design::OwnLimit& each : own) {
        Part part;
        part.used("name", each.name);
        part.used("electric", each.electric);
        part.used("magnetic", each.magnetic);
        part.given("averaging", each.averaging);
        part.used("tier", design::name_of(each.tier));
        list.push_back(part.take());
    }
    return list;
}

} // namespace loopwright::document::detail
