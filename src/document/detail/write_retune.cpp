#include "document/detail/write_retune.hpp"

#include "design/names.hpp"

namespace loopwright::document::detail {
namespace {

Json table_part(const std::vector<design::DialEntry>& table) {
    Json list = Json::array();
    for (const design::DialEntry& entry : table) {
        Part part;
        part.used("reading", number(entry.reading));
        part.used("capacitance", entry.capacitance);
        list.push_back(part.take());
    }
    return list;
}

} // namespace

Json dial_part(const design::Dial& dial) {
    const design::Dial standard;
    const bool table = dial.law == design::DialLaw::table;
    Part part;
    part.used("law", design::name_of(dial.law));
    part.used("scale", design::name_of(dial.scale));
    part.maybe(!table, "at_minimum", number(dial.at_minimum), number(standard.at_minimum));
    part.maybe(!table, "at_maximum", number(dial.at_maximum), number(standard.at_maximum));
    part.maybe(table, "table", table_part(dial.table), Json(Json::array()));
    part.used("hand_step", number(dial.hand_step));
    part.used("reduction", number(dial.reduction));
    part.used("backlash", number(dial.backlash));
    return part.take();
}

Json made_part(const design::MadeCapacitor& made) {
    const design::MadeCapacitor standard;
    const bool plates = made.kind == design::MadeKind::plates;
    Part part;
    part.used("kind", design::name_of(made.kind));
    part.used("least_overlap", made.least_overlap);
    part.used("most_overlap", made.most_overlap);
    part.maybe(plates, "width", made.width, standard.width);
    part.maybe(plates, "spacing", made.spacing, standard.spacing);
    part.maybe(plates, "thickness", made.thickness, standard.thickness);
    part.maybe(plates, "plates", made.plates, standard.plates);
    part.maybe(!plates, "inner_diameter", made.inner_diameter, standard.inner_diameter);
    part.maybe(!plates, "outer_diameter", made.outer_diameter, standard.outer_diameter);
    part.maybe(!plates, "pairs", made.pairs, standard.pairs);
    part.used("relative_permittivity", number(made.relative_permittivity));
    return part.take();
}

Json working_frequencies_part(const std::vector<design::WorkingFrequency>& all) {
    Json list = Json::array();
    for (const design::WorkingFrequency& each : all) {
        Part part;
        part.used("frequency", each.frequency);
        part.maybe(false, "use", each.use, std::string());
        list.push_back(part.take());
    }
    return list;
}

Json calibration_part(const design::Calibration& calibration) {
    Json points = Json::array();
    for (const design::CalibrationPoint& point : calibration.points) {
        Part part;
        part.used("reading", number(point.reading));
        part.used("frequency", point.frequency);
        points.push_back(part.take());
    }
    Part part;
    part.used("date", calibration.date);
    part.used("note", calibration.note);
    part.used("points", points);
    return part.take();
}

} // namespace loopwright::document::detail
