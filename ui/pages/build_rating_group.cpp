// What the variable capacitor stands, and how its sections are wired: fields of the group "Capacitor".
#include "pages/build_specs.hpp"

#include <QCoreApplication>

namespace loopwright::pages {

namespace {

using design::Design;

struct BuildRating {
    Q_DECLARE_TR_FUNCTIONS(BuildRating)
};

bool by_air_gap(const Design& d) {
    return d.capacitor.rating.gap.has_value();
}

ChoiceSpec sections_choice() {
    return named_choice(
        {"capacitor.arrangement", BuildRating::tr("Sections"),
         BuildRating::tr("Split stator and butterfly: two equal sections in series, each with half the "
                         "voltage, no wiping contact. Minimum, maximum and peak voltage rating are those of "
                         "the whole.")},
        {BuildRating::tr("One"), BuildRating::tr("Split stator (two in series)"),
         BuildRating::tr("Butterfly (two in series)")},
        [](auto& d) -> auto& { return d.capacitor.arrangement; });
}

QuantitySpec peak_voltage_field() {
    return optional_quantity(
        {"capacitor.rating.peak_voltage", BuildRating::tr("Peak voltage rating"),
         BuildRating::tr(
             "The peak voltage the capacitor may carry. Without it there is no verdict on volts. A few "
             "watts put kilovolts on it.")},
        BuildRating::tr("not given"), [](auto& d) -> auto& { return d.capacitor.rating.peak_voltage; });
}

QuantitySpec air_gap_field() {
    return optional_quantity(
        {"capacitor.rating.gap", BuildRating::tr("Air between plates"),
         BuildRating::tr("Distance between neighbouring plates, face to face, of one section. From it the "
                         "voltage is computed that the air stands at the site's altitude. Beside a peak "
                         "voltage rating the lower of both counts.")},
        BuildRating::tr("not given"), [](auto& d) -> auto& { return d.capacitor.rating.gap; });
}

ChoiceSpec plate_edges_choice() {
    FieldWords words{"capacitor.rating.plate_edges", BuildRating::tr("Edges of the plates"),
                     BuildRating::tr("Air breaks down first at an edge: sharp or rough edges stand much less "
                                     "than rounded, polished ones.")};
    words.applies = by_air_gap;
    return named_choice(
        words, {BuildRating::tr("Rounded"), BuildRating::tr("Plain"), BuildRating::tr("Sharp or rough")},
        [](auto& d) -> auto& { return d.capacitor.rating.plate_edges; });
}

QuantitySpec safety_factor_field() {
    FieldWords words{"capacitor.rating.safety_factor", BuildRating::tr("Breakdown margin"),
                     BuildRating::tr("The voltage of breakdown is divided by it, 1 to 10: for dust, damp and "
                                     "plates that are not quite parallel. 1.5 is a choice of this program, "
                                     "no rule.")};
    words.applies = by_air_gap;
    return plain_number(
        words, [](auto& d) -> auto& { return d.capacitor.rating.safety_factor; });
}

QuantitySpec current_field() {
    return optional_quantity(
        {"capacitor.rating.current", BuildRating::tr("Current rating (rms)"),
         BuildRating::tr("The current the capacitor may carry, rms: a limit by heat, usual for vacuum and "
                         "fixed capacitors. The loop's current flows through it."),
         true},
        BuildRating::tr("not given"), [](auto& d) -> auto& { return d.capacitor.rating.current; });
}

} // namespace

std::vector<FieldSpec> rating_fields() {
    std::vector<FieldSpec> fields;
    fields.emplace_back(sections_choice());
    fields.emplace_back(peak_voltage_field());
    fields.emplace_back(air_gap_field());
    fields.emplace_back(plate_edges_choice());
    fields.emplace_back(safety_factor_field());
    fields.emplace_back(current_field());
    return fields;
}

} // namespace loopwright::pages
