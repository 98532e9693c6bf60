#include "report/near_field.hpp"

#include "report/cautions.hpp"
#include "report/detail/json_parts.hpp"
#include "report/words.hpp"
#include "survey/verdict.hpp"

namespace loopwright::report {
namespace {

using detail::Json;
using detail::number_of;

template <class Quantity>
Json number_or_null(const std::optional<Quantity>& value) {
    return value ? number_of(value->value()) : Json(nullptr);
}

template <class Quantity>
Cell cell_of(const std::optional<Quantity>& value) {
    return value ? Cell(value->value()) : Cell();
}

} // namespace

std::string field_json(const FieldAnswer& answer) {
    Json object;
    object["schema"] = "loopwright-field-1";
    object["title"] = answer.design.title;
    object["model"] = name_of(loop::Model::full_wave);
    object["frequency_Hz"] = number_of(answer.frequency.value());
    object["power_W"] = number_of(answer.power.value());
    Json points = Json::array();
    for (const FieldPoint& point : answer.points) {
        points.push_back({{"position_m",
                           {number_of(point.position[0].value()), number_of(point.position[1].value()),
                            number_of(point.position[2].value())}},
                          {"electric_field_rms_V_per_m", number_or_null(point.electric)},
                          {"magnetic_field_rms_A_per_m", number_or_null(point.magnetic)}});
    }
    object["points"] = std::move(points);
    object["notices"] = detail::notices_of(answer.notices);
    return detail::text_of(object);
}

Table field_data(const FieldAnswer& answer) {
    Table table;
    table.columns = {{"x_m", "x", "m", 1},
                     {"y_m", "y", "m", 1},
                     {"z_m", "z", "m", 1},
                     {"electric_field_rms_V_per_m", "Electric field, rms", "V/m", 1},
                     {"magnetic_field_rms_A_per_m", "Magnetic field, rms", "A/m", 1}};
    for (const FieldPoint& point : answer.points) {
        table.rows.push_back({point.position[0].value(), point.position[1].value(), point.position[2].value(),
                              cell_of(point.electric), cell_of(point.magnetic)});
    }
    return table;
}

Page field_page(const FieldAnswer& answer) {
    Page page;
    page.title = answer.design.title.empty() ? "Loop without a title" : answer.design.title;
    page.subtitle = "Fields at " + with_plain_blanks(survey::given_text(answer.frequency)) + " with " +
                    with_plain_blanks(survey::given_text(answer.power)) + " on the air all the time, model " +
                    name_of(loop::Model::full_wave);
    Section section{"fields", "Fields", {}, std::nullopt};
    if (answer.points.empty()) {
        section.sentences.push_back({"not_established", "The figures are not established here; the reason "
                                                        "stands under Assumptions."});
    } else {
        section.table = field_data(answer);
        section.sentences.push_back(
            {"field_convention",
             "Root of the sum of the squares of the components, rms. x lies in the plane of a vertical loop, "
             "y "
             "along its axis, z up from the ground below the loop's centre (free space: from the centre)."});
        section.sentences.push_back(
            {"field_no_verdict",
             "No limit is applied here. Metal nearby, reflections, contact and implants are not covered."});
    }
    page.sections.push_back(std::move(section));
    page.sections.push_back(
        {"assumptions", "Assumptions", assumptions(loop::Model::full_wave, answer.notices), std::nullopt});
    page.sections.push_back({"cautions", "Cautions", cautions(), std::nullopt});
    return page;
}

} // namespace loopwright::report
