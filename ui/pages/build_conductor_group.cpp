// The group "Conductor": form, measures, metal.
#include "conductor/metals.hpp"
#include "conductor/tube_sizes.hpp"
#include "pages/build_specs.hpp"

#include <QCoreApplication>

#include <cmath>
#include <utility>

namespace loopwright::pages {

namespace {

using design::ConductorForm;
using design::Design;

struct BuildConductor {
    Q_DECLARE_TR_FUNCTIONS(BuildConductor)
};

auto of_form(ConductorForm form) {
    return [form](const Design& d) { return d.conductor.form == form; };
}

bool has_own_metal(const Design& d) {
    return d.conductor.metal.name.empty();
}

ChoiceSpec form_choice() {
    return named_choice(
        {"conductor.form", BuildConductor::tr("For&m"),
         BuildConductor::tr("What the loop is made of. A tube is as good as a solid bar, because the "
                            "current keeps to the surface; braid is clearly worse.")},
        {BuildConductor::tr("Solid wire"), BuildConductor::tr("Tube"), BuildConductor::tr("Flat strip"),
         BuildConductor::tr("Coaxial cable's braid"), BuildConductor::tr("Stranded wire")},
        [](auto& d) -> auto& { return d.conductor.form; });
}

std::vector<QuantitySpec> measures() {
    FieldWords diameter{
        "conductor.diameter", BuildConductor::tr("Conductor diameter"),
        BuildConductor::tr("Outer diameter of the conductor, without insulation; of a cable: over its "
                           "braid. Twice the diameter is half the conductor's loss.")};
    diameter.applies = [](const Design& d) { return d.conductor.form != ConductorForm::strip; };
    FieldWords wall{
        "conductor.wall", BuildConductor::tr("Wall"),
        BuildConductor::tr("Wall thickness of the tube. It matters only when it is thinner than a few "
                           "skin depths, some hundredths of a millimetre of copper.")};
    wall.applies = of_form(ConductorForm::tube);
    FieldWords width{"conductor.width", BuildConductor::tr("Strip width"),
                     BuildConductor::tr("Width of the flat strip. The current crowds at its edges.")};
    FieldWords thickness{"conductor.thickness", BuildConductor::tr("Strip thickness"),
                         BuildConductor::tr("Thickness of the flat strip.")};
    width.applies = thickness.applies = of_form(ConductorForm::strip);
    return {typed_quantity(
                diameter, [](auto& d) -> auto& { return d.conductor.diameter; }),
            typed_quantity(
                wall, [](auto& d) -> auto& { return d.conductor.wall; }),
            typed_quantity(
                width, [](auto& d) -> auto& { return d.conductor.width; }),
            typed_quantity(
                thickness, [](auto& d) -> auto& { return d.conductor.thickness; })};
}

/// Sizes as they are sold; fills in diameter and wall.
ChoiceSpec tube_choice() {
    ChoiceSpec spec;
    spec.words = {
        "conductor.tube_size",
        BuildConductor::tr("Tube size"),
        BuildConductor::tr("Copper water tube as it is sold, US and European sizes. The outer diameter and "
                           "the wall count, not the nominal name."),
        false,
        of_form(ConductorForm::tube),
        {}};
    spec.options = [](const Design&) {
        QStringList names{BuildConductor::tr("own size")};
        for (const auto& size : conductor::tube_sizes()) {
            names << QStringLiteral("%1 (%2)").arg(QString::fromStdString(size.name),
                                                   QString::fromStdString(size.standard));
        }
        return names;
    };
    spec.get = [](const Design& d) {
        constexpr double same_m = 1e-6;
        const auto& all = conductor::tube_sizes();
        for (std::size_t i = 0; i < all.size(); ++i) {
            if (std::abs((all[i].diameter - d.conductor.diameter.value).value()) < same_m &&
                std::abs((all[i].wall - d.conductor.wall.value).value()) < same_m) {
                return static_cast<int>(i) + 1;
            }
        }
        return 0;
    };
    spec.set = [](Design& d, int index) {
        if (index > 0) {
            const auto& size = conductor::tube_sizes().at(static_cast<std::size_t>(index) - 1);
            d.conductor.diameter = {size.diameter, size.diameter_text};
            d.conductor.wall = {size.wall, size.wall_text};
        }
    };
    return spec;
}

ChoiceSpec metal_choice() {
    ChoiceSpec spec;
    spec.words = {
        "conductor.metal", BuildConductor::tr("Metal"),
        BuildConductor::tr("Metal of the surface that carries the current. Plumbing tube conducts less than "
                           "pure copper.")};
    spec.options = [](const Design&) {
        QStringList names;
        for (const auto& metal : conductor::metals()) {
            names << QString::fromStdString(metal.name);
        }
        return names << BuildConductor::tr("own values");
    };
    spec.get = [](const Design& d) {
        const auto& all = conductor::metals();
        for (std::size_t i = 0; i < all.size(); ++i) {
            if (all[i].name == d.conductor.metal.name) {
                return static_cast<int>(i);
            }
        }
        return has_own_metal(d) ? static_cast<int>(all.size()) : -1;
    };
    spec.set = [](Design& d, int index) {
        const auto& all = conductor::metals();
        const auto i = static_cast<std::size_t>(index);
        if (i < all.size()) {
            d.conductor.metal = {};
            d.conductor.metal.name = all[i].name;
            return;
        }
        if (has_own_metal(d)) {
            return;
        }
        const auto& from =
            conductor::find_metal(d.conductor.metal.name); // own values start where the named one is
        d.conductor.metal = {{}, from.conductivity, from.temperature_coefficient};
    };
    return spec;
}

std::vector<QuantitySpec> metal_values() {
    FieldWords conductivity{"conductor.metal.conductivity", BuildConductor::tr("Conductivity"),
                            BuildConductor::tr("Conductivity of the metal at 20 °C.")};
    FieldWords coefficient{
        "conductor.metal.temperature_coefficient", BuildConductor::tr("Temperature coefficient"),
        BuildConductor::tr("How much its resistance rises with each kelvin, referred to 20 °C.")};
    conductivity.applies = coefficient.applies = has_own_metal;
    return {typed_quantity(
                conductivity, [](auto& d) -> auto& { return d.conductor.metal.conductivity; }),
            typed_quantity(
                coefficient, [](auto& d) -> auto& { return d.conductor.metal.temperature_coefficient; })};
}

std::vector<QuantitySpec> rare_values() {
    FieldWords braid{
        "conductor.braid_factor", BuildConductor::tr("Braid factor"),
        BuildConductor::tr("Resistance of the braid over that of a smooth tube. It is poorly known, and "
                           "the results carry that as an interval.")};
    braid.applies = of_form(ConductorForm::braid);
    FieldWords stranded{
        "conductor.stranded_factor", BuildConductor::tr("Strand factor"),
        BuildConductor::tr("Resistance of the stranded wire over that of a solid one of the same "
                           "diameter.")};
    stranded.applies = of_form(ConductorForm::stranded);
    FieldWords temperature{
        "conductor.temperature", BuildConductor::tr("Temperature"),
        BuildConductor::tr("Temperature of the conductor. Ten kelvin more is about 2 % more "
                           "resistance at radio frequency.")};
    temperature.rare = true;
    return {plain_number(
                braid, [](auto& d) -> auto& { return d.conductor.braid_factor; }),
            plain_number(
                stranded, [](auto& d) -> auto& { return d.conductor.stranded_factor; }),
            typed_quantity(
                temperature, [](auto& d) -> auto& { return d.conductor.temperature; })};
}

} // namespace

GroupSpec conductor_group() {
    GroupSpec group{"conductor", BuildConductor::tr("Conductor"), {}};
    group.fields.emplace_back(form_choice());
    group.fields.emplace_back(tube_choice());
    for (QuantitySpec& spec : measures()) {
        group.fields.emplace_back(std::move(spec));
    }
    group.fields.emplace_back(metal_choice());
    for (QuantitySpec& spec : metal_values()) {
        group.fields.emplace_back(std::move(spec));
    }
    for (QuantitySpec& spec : rare_values()) {
        group.fields.emplace_back(std::move(spec));
    }
    return group;
}

} // namespace loopwright::pages
