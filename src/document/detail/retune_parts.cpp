#include "document/detail/retune_parts.hpp"

#include "band/band.hpp"
#include "design/made.hpp"
#include "design/names.hpp"
#include "document/detail/choice.hpp"
#include "document/detail/keys.hpp"

namespace loopwright::document::detail {
namespace {

void read_table(const Fields& dial, std::vector<design::DialEntry>& table) {
    for (const Fields& fields : dial.objects("table", {"reading", "capacitance"})) {
        design::DialEntry& entry = table.emplace_back();
        fields.need("reading", "the reading of the dial");
        fields.number("reading", entry.reading);
        fields.need("capacitance", "the capacitance measured there");
        fields.quantity("capacitance", entry.capacitance);
    }
}

void read_dial(const Fields& fields, design::Dial& dial) {
    choice(fields, "law", dial.law);
    choice(fields, "scale", dial.scale);
    if (dial.law == design::DialLaw::table) {
        fields.need("table", "the measured table");
    } else if (dial.scale != design::DialScale::degrees) {
        fields.need("at_minimum", "the reading at the stop of least capacitance");
        fields.need("at_maximum", "the reading at the stop of most capacitance");
    }
    fields.number("at_minimum", dial.at_minimum);
    fields.number("at_maximum", dial.at_maximum);
    read_table(fields, dial.table);
    fields.number("hand_step", dial.hand_step);
    fields.number("reduction", dial.reduction);
    fields.number("backlash", dial.backlash);
}

void read_made(const Fields& fields, design::MadeCapacitor& made) {
    fields.need("kind", "plates or trombone");
    choice(fields, "kind", made.kind);
    fields.need("least_overlap", "the overlap along the travel at the stop of least capacitance");
    fields.need("most_overlap", "the overlap along the travel at the stop of most capacitance");
    if (made.kind == design::MadeKind::plates) {
        fields.need("width", "the width of the plates across the travel");
        fields.need("spacing", "the spacing of neighbouring faces");
    } else {
        fields.need("inner_diameter", "the outside diameter of the inner tube");
        fields.need("outer_diameter", "the inside diameter of the outer tube");
    }
    fields.quantity("least_overlap", made.least_overlap);
    fields.quantity("most_overlap", made.most_overlap);
    fields.quantity("width", made.width);
    fields.quantity("spacing", made.spacing);
    fields.quantity("thickness", made.thickness);
    fields.whole("plates", made.plates);
    fields.quantity("inner_diameter", made.inner_diameter);
    fields.quantity("outer_diameter", made.outer_diameter);
    fields.whole("pairs", made.pairs);
    fields.number("relative_permittivity", made.relative_permittivity);
}

} // namespace

void read_setting(const Fields& fields, design::Capacitor& capacitor) {
    if (const auto dial = fields.object("dial", keys_of("capacitor.dial"))) {
        read_dial(*dial, capacitor.dial.emplace());
    }
    if (const auto made = fields.object("made", keys_of("capacitor.made"))) {
        read_made(*made, capacitor.made.emplace());
        design::follow_made(capacitor, !fields.has("minimum"), !fields.has("maximum"));
    }
    fields.quantity("temperature_coefficient", capacitor.temperature_coefficient);
}

std::vector<std::string> read_bands_of_any_region(const Fields& fields) {
    std::vector<std::string> names = fields.words("bands");
    for (std::string& name : names) {
        for (const int region : {1, 2, 3}) {
            if (const auto band = band::find_band(region, name)) {
                name = band->name;
            }
        }
    }
    return names;
}

std::vector<design::WorkingFrequency> read_working_frequencies(const Fields& station) {
    std::vector<design::WorkingFrequency> all;
    for (const Fields& fields : station.objects("working_frequencies", {"frequency", "use"})) {
        design::WorkingFrequency& each = all.emplace_back();
        fields.need("frequency", "the frequency that the radio shows");
        fields.quantity("frequency", each.frequency);
        fields.text("use", each.use, 200, false);
    }
    return all;
}

void read_calibration(const Fields& fields, design::Calibration& calibration) {
    fields.text("date", calibration.date, 100, false);
    fields.text("note", calibration.note, 2000, true);
    for (const Fields& each : fields.objects("points", {"reading", "frequency"})) {
        design::CalibrationPoint& point = calibration.points.emplace_back();
        each.need("reading", "the reading of the dial");
        each.number("reading", point.reading);
        each.need("frequency", "the frequency of resonance there");
        each.quantity("frequency", point.frequency);
    }
}

} // namespace loopwright::document::detail
