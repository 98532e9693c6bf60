// The groups "Coupling" and "Feed line".
#include "coupling/coupling_size.hpp"
#include "pages/build_specs.hpp"

#include <QCoreApplication>

#include <utility>

namespace loopwright::pages {

namespace {

using design::CouplingKind;
using design::Design;

struct BuildCoupling {
    Q_DECLARE_TR_FUNCTIONS(BuildCoupling)
};

std::function<bool(const Design&)> is_kind(CouplingKind kind) {
    return [kind](const Design& d) { return d.coupling && d.coupling->kind == kind; };
}

/// A field of a typed quantity in a part that need not be there: `part` is a member of Design, `member` one
/// of the part. Read and set only where the part is.
template <class Part, class Quantity>
QuantitySpec part_quantity(FieldWords words, std::optional<Part> Design::*part,
                           units::Typed<Quantity> Part::*member) {
    QuantitySpec spec;
    spec.words = std::move(words);
    spec.kind = {units::DimensionOf<Quantity>::value};
    spec.get = [part, member](const Design& d) -> std::optional<inputs::Reading> {
        if (!(d.*part)) {
            return std::nullopt;
        }
        const auto& typed = (*(d.*part)).*member;
        return inputs::Reading{typed.value.value(), QString::fromStdString(typed.text)};
    };
    spec.set = [part, member](Design& d, double si, const std::string& text) {
        if (d.*part) {
            (*(d.*part)).*member = units::Typed<Quantity>(Quantity::from_value(si), text);
        }
    };
    return spec;
}

/// The same for a plain number of the coupling.
template <class Number>
QuantitySpec coupling_number(FieldWords words, Number design::Coupling::*member) {
    QuantitySpec spec;
    spec.words = std::move(words);
    spec.kind = {units::Dimension::number, std::is_integral_v<Number>};
    spec.get = [member](const Design& d) {
        return d.coupling ? std::optional<inputs::Reading>({static_cast<double>((*d.coupling).*member), {}})
                          : std::nullopt;
    };
    spec.set = [member](Design& d, double si, const std::string& /*text*/) {
        if (d.coupling) {
            (*d.coupling).*member = static_cast<Number>(si);
        }
    };
    return spec;
}

ChoiceSpec kind_choice() {
    ChoiceSpec spec;
    spec.words = {
        "coupling", BuildCoupling::tr("Co&upling"),
        BuildCoupling::tr("How the feed line is coupled, opposite the capacitor: by a small loop inside the "
                          "large one, by a rod tapped to the conductor, by a transformer core around it, or "
                          "not entered.")};
    spec.options = [](const Design&) {
        return QStringList{BuildCoupling::tr("none"), BuildCoupling::tr("small loop"),
                           BuildCoupling::tr("tap (rod beside the conductor)"),
                           BuildCoupling::tr("transformer (core around it)")};
    };
    spec.get = [](const Design& d) { return d.coupling ? 1 + static_cast<int>(d.coupling->kind) : 0; };
    spec.set = [](Design& d, int index) {
        if (index == 0) {
            d.coupling.reset();
        } else {
            d.coupling = coupling::coupling_of_kind(d, static_cast<CouplingKind>(index - 1));
        }
    };
    return spec;
}

std::vector<QuantitySpec> loop_fields() {
    FieldWords diameter{
        "coupling.diameter", BuildCoupling::tr("Coupling loop diameter"),
        BuildCoupling::tr("Diameter of the small loop that feeds the large one, of its centre line. "
                          "About a fifth of the large loop is usual.")};
    FieldWords wire{"coupling.conductor_diameter", BuildCoupling::tr("Its conductor"),
                    BuildCoupling::tr("Diameter of the coupling loop's conductor, of a tap's rod.")};
    FieldWords offset{
        "coupling.axis_offset", BuildCoupling::tr("Distance of the axes"),
        BuildCoupling::tr("Between the axes of both conductors where the coupling loop is nearest, "
                          "opposite the capacitor.")};
    diameter.applies = offset.applies = is_kind(CouplingKind::loop);
    wire.applies = [](const Design& d) {
        return d.coupling && d.coupling->kind != CouplingKind::transformer;
    };
    wire.label_for = [](const Design& d) {
        return d.coupling && d.coupling->kind == CouplingKind::tap ? BuildCoupling::tr("Rod diameter")
                                                                   : BuildCoupling::tr("Its conductor");
    };
    using design::Coupling;
    return {part_quantity(diameter, &Design::coupling, &Coupling::diameter),
            part_quantity(wire, &Design::coupling, &Coupling::conductor_diameter),
            part_quantity(offset, &Design::coupling, &Coupling::axis_offset)};
}

QuantitySpec series_capacitor_field() {
    QuantitySpec spec;
    spec.words = {
        "coupling.series_capacitor", BuildCoupling::tr("Series capacitor"),
        BuildCoupling::tr("Between the line and the rod, taken as without loss; tunes out the rod's own "
                          "inductance.")};
    spec.words.applies = is_kind(CouplingKind::tap);
    spec.kind = {units::Dimension::capacitance};
    spec.placeholder = BuildCoupling::tr("none");
    spec.get = [](const Design& d) -> std::optional<inputs::Reading> {
        if (!d.coupling || !d.coupling->series_capacitor) {
            return std::nullopt;
        }
        const auto& typed = *d.coupling->series_capacitor;
        return inputs::Reading{typed.value.value(), QString::fromStdString(typed.text)};
    };
    spec.set = [](Design& d, double si, const std::string& text) {
        if (d.coupling) {
            d.coupling->series_capacitor = units::Typed<units::Capacitance>(units::farads(si), text);
        }
    };
    spec.unset = [](Design& d) {
        if (d.coupling) {
            d.coupling->series_capacitor.reset();
        }
    };
    return spec;
}

std::vector<QuantitySpec> tap_fields() {
    FieldWords length{
        "coupling.tap_length", BuildCoupling::tr("Tap length"),
        BuildCoupling::tr(
            "Along the loop's conductor, from opposite the capacitor to where the rod is joined "
            "to it. It sets the match.")};
    FieldWords spacing{"coupling.tap_spacing", BuildCoupling::tr("Rod to conductor"),
                       BuildCoupling::tr("Distance between the axes of rod and conductor.")};
    length.applies = spacing.applies = is_kind(CouplingKind::tap);
    using design::Coupling;
    return {part_quantity(length, &Design::coupling, &Coupling::tap_length),
            part_quantity(spacing, &Design::coupling, &Coupling::tap_spacing), series_capacitor_field()};
}

std::vector<QuantitySpec> transformer_fields() {
    FieldWords turns{"coupling.turns", BuildCoupling::tr("Turns of the line"),
                     BuildCoupling::tr("Turns of the line's winding on the core; the loop's conductor is the "
                                       "one turn on the other side. They set the match.")};
    FieldWords core{
        "coupling.turn_inductance", BuildCoupling::tr("Core, for one turn"),
        BuildCoupling::tr("Inductance of one turn on the core at the frequencies in use (the maker's A_L)."
                          " The winding has it times the square of its turns.")};
    FieldWords q{"coupling.core_q", BuildCoupling::tr("Core Q"),
                 BuildCoupling::tr("Q of the winding's inductance at the frequency in use, from the loss of "
                                   "the core."),
                 true};
    FieldWords leakage{"coupling.leakage_share", BuildCoupling::tr("Leakage"),
                       BuildCoupling::tr("Leakage inductance as a share of the winding's inductance, 0 to "
                                         "0.49."),
                       true};
    turns.applies = core.applies = q.applies = leakage.applies = is_kind(CouplingKind::transformer);
    using design::Coupling;
    return {coupling_number(turns, &Coupling::turns),
            part_quantity(core, &Design::coupling, &Coupling::turn_inductance),
            coupling_number(q, &Coupling::core_q), coupling_number(leakage, &Coupling::leakage_share)};
}

} // namespace

GroupSpec coupling_group() {
    GroupSpec group{"coupling", BuildCoupling::tr("Coupling"), {}};
    group.fields.emplace_back(kind_choice());
    for (auto&& fields : {loop_fields(), tap_fields(), transformer_fields()}) {
        for (const QuantitySpec& spec : fields) {
            group.fields.emplace_back(spec);
        }
    }
    return group;
}

GroupSpec feed_line_group() {
    GroupSpec group{"feed_line", BuildCoupling::tr("Feed line"), {}};
    const auto given = [](const Design& d) { return d.feed_line.has_value(); };
    group.fields.emplace_back(
        CheckSpec{{"feed_line", BuildCoupling::tr("Feed line to the radio"),
                   BuildCoupling::tr("With it the VSWR at the radio and what the line takes are computed. "
                                     "Without it the figures are those at the loop, on 50 Ω.")},
                  given,
                  [](Design& d, bool on) {
                      if (!on) {
                          d.feed_line.reset();
                      } else if (!d.feed_line) {
                          d.feed_line = design::FeedLine{};
                      }
                  }});
    FieldWords length{"feed_line.length", BuildCoupling::tr("Line length"),
                      BuildCoupling::tr("Between the radio and the coupling.")};
    FieldWords impedance{"feed_line.impedance", BuildCoupling::tr("Line impedance"),
                         BuildCoupling::tr("Of the feed line; every VSWR is on it.")};
    length.applies = impedance.applies = given;
    group.fields.emplace_back(part_quantity(length, &Design::feed_line, &design::FeedLine::length));
    group.fields.emplace_back(part_quantity(impedance, &Design::feed_line, &design::FeedLine::impedance));
    return group;
}

} // namespace loopwright::pages
