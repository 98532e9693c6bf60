// The groups "Site" and "Station".
#include "band/emission.hpp"
#include "design/soil.hpp"
#include "ground/ground_classes.hpp"
#include "pages/build_specs.hpp"

#include <QCoreApplication>

#include <utility>

namespace loopwright::pages {

namespace {

using design::Design;
using design::GroundKind;
using design::Plane;

struct BuildStation {
    Q_DECLARE_TR_FUNCTIONS(BuildStation)
};

QStringList soil_classes() {
    QStringList names;
    for (const std::string& name : ground::ground_class_names()) {
        names << QString::fromStdString(name);
    }
    return names;
}

ChoiceSpec ground_choice() {
    ChoiceSpec spec;
    spec.words = {
        "site.ground", BuildStation::tr("Ground"),
        BuildStation::tr("What lies below the loop: a class of soil by name, or values of your own. The "
                         "closed form computes for free space and says so.")};
    spec.options = [](const Design&) {
        return QStringList{BuildStation::tr("free space"), BuildStation::tr("perfect ground")} +
               soil_classes() + QStringList{BuildStation::tr("own values")};
    };
    spec.get = [](const Design& d) {
        const design::Ground& ground = d.site.ground;
        if (ground.kind != GroundKind::soil) {
            return ground.kind == GroundKind::free_space ? 0 : 1;
        }
        const auto index = soil_classes().indexOf(QString::fromStdString(ground.class_name));
        return static_cast<int>(index < 0 ? 2 + soil_classes().size() : 2 + index);
    };
    spec.set = [](Design& d, int index) {
        design::Ground& ground = d.site.ground;
        if (index < 2) {
            ground = {};
            ground.kind = index == 0 ? GroundKind::free_space : GroundKind::perfect;
            return;
        }
        ground.kind = GroundKind::soil;
        const QString name = soil_classes().value(index - 2);
        if (name.isEmpty() && !ground.class_name.empty()) { // own values start where the class is
            const ground::Soil soil = design::soil_of(ground);
            ground.relative_permittivity = soil.relative_permittivity;
            ground.conductivity = soil.conductivity;
        }
        ground.class_name = name.toStdString();
    };
    return spec;
}

std::vector<QuantitySpec> soil_fields() {
    const auto own_soil = [](const Design& d) {
        return d.site.ground.kind == GroundKind::soil && d.site.ground.class_name.empty();
    };
    FieldWords permittivity{"site.ground.relative_permittivity", BuildStation::tr("Relative permittivity"),
                            BuildStation::tr("Of the soil, 1 (none) to about 80 (water).")};
    FieldWords conductivity{
        "site.ground.conductivity", BuildStation::tr("Soil conductivity"),
        BuildStation::tr("Of the soil; from 0.1 mS/m for dry rock to 5 S/m for sea water.")};
    permittivity.applies = conductivity.applies = own_soil;
    return {plain_number(
                permittivity, [](auto& d) -> auto& { return d.site.ground.relative_permittivity; }),
            typed_quantity(
                conductivity, [](auto& d) -> auto& { return d.site.ground.conductivity; })};
}

std::vector<QuantitySpec> place_fields() {
    FieldWords tilt{"site.tilt", BuildStation::tr("Tilt"),
                    BuildStation::tr("How far a vertical loop leans from the vertical.")};
    tilt.applies = [](const Design& d) { return d.site.plane == Plane::vertical; };
    FieldWords lowest{
        "site.lowest_point", BuildStation::tr("Lowest point"),
        BuildStation::tr("Height of the lowest point of the loop's centre line above the ground.")};
    return {typed_quantity(
                lowest, [](auto& d) -> auto& { return d.site.lowest_point; }),
            typed_quantity(
                tilt, [](auto& d) -> auto& { return d.site.tilt; }),
            standing_field()};
}

/// What thins the air: it breaks down earlier then.
std::vector<QuantitySpec> air_fields() {
    return {typed_quantity(
                {"site.altitude", BuildStation::tr("Altitude"),
                 BuildStation::tr("Of the site above the sea. Thin air breaks down earlier: what an air "
                                  "capacitor stands falls by about a tenth for each kilometre. Counts where "
                                  "its plates' distance is given."),
                 true},
                [](auto& d) -> auto& { return d.site.altitude; }),
            typed_quantity(
                {"site.air_temperature", BuildStation::tr("Air temperature"),
                 BuildStation::tr("Of the air in the capacitor. Warm air is thinner and breaks down earlier; "
                                  "counts where its plates' distance is given."),
                 true},
                [](auto& d) -> auto& { return d.site.air_temperature; })};
}

ChoiceSpec region_choice() {
    ChoiceSpec spec;
    spec.words = {"station.region", BuildStation::tr("ITU region"),
                  BuildStation::tr("Which of the three regions the band edges are taken from."), true};
    spec.options = [](const Design&) {
        return QStringList{BuildStation::tr("1: Europe, Africa, Middle East"),
                           BuildStation::tr("2: the Americas"), BuildStation::tr("3: Asia, Oceania")};
    };
    spec.get = [](const Design& d) { return d.station.region - 1; };
    spec.set = [](Design& d, int index) {
        d.station.region = index + 1;
        d.station.bands.clear(); // names of one region need not exist in another
    };
    return spec;
}

} // namespace

QuantitySpec power_field() {
    return typed_quantity(
        {"station.power", BuildStation::tr("Po&wer"),
         BuildStation::tr("Peak envelope power that the loop accepts. Volts and currents follow from it.")},
        [](auto& d) -> auto& { return d.station.power; });
}

QuantitySpec standing_field() {
    return typed_quantity(
        {"site.standing_level", BuildStation::tr("People stand at"),
         BuildStation::tr("Height above the ground of the floor that people stand on: 0 on the "
                          "ground, more on a balcony or a roof. Used for distances.")},
        [](auto& d) -> auto& { return d.site.standing_level; });
}

ChoiceSpec emission_choice() {
    ChoiceSpec spec;
    spec.words = {"station.emission", BuildStation::tr("Emission"),
                  BuildStation::tr("What is sent. Its width is what the loop must pass without retuning.")};
    spec.options = [](const Design&) {
        QStringList names;
        for (const band::Emission& emission : band::emissions()) {
            names << QString::fromStdString(emission.name);
        }
        return names;
    };
    spec.get = [](const Design& d) {
        const auto& all = band::emissions();
        for (std::size_t i = 0; i < all.size(); ++i) {
            if (all[i].id == d.station.emission) {
                return static_cast<int>(i);
            }
        }
        return -1;
    };
    spec.set = [](Design& d, int index) {
        const band::Emission& emission = band::emissions().at(static_cast<std::size_t>(index));
        d.station.emission = emission.id;
        const bool in_turns = d.station.use && d.station.use->habit == design::Habit::listening_turns;
        if (d.station.use && d.station.use->habit != design::Habit::continuous &&
            in_turns == emission.has_slots()) {
            d.station.use.reset(); // a habit that it cannot have
        }
    };
    return spec;
}

GroupSpec site_group() {
    GroupSpec group{"site", BuildStation::tr("Site"), {}};
    group.fields.emplace_back(named_choice(
        {"site.plane", BuildStation::tr("P&lane"),
         BuildStation::tr(
             "A vertical loop radiates along the ground in its own plane; a horizontal one needs height.")},
        {BuildStation::tr("Vertical"), BuildStation::tr("Horizontal")},
        [](auto& d) -> auto& { return d.site.plane; }));
    group.fields.emplace_back(ground_choice());
    for (QuantitySpec& spec : soil_fields()) {
        group.fields.emplace_back(std::move(spec));
    }
    for (QuantitySpec& spec : place_fields()) {
        group.fields.emplace_back(std::move(spec));
    }
    for (QuantitySpec& spec : air_fields()) {
        group.fields.emplace_back(std::move(spec));
    }
    return group;
}

GroupSpec station_group() {
    GroupSpec group{"station", BuildStation::tr("Station"), {}};
    group.fields.emplace_back(power_field());
    group.fields.emplace_back(emission_choice());
    group.fields.emplace_back(region_choice());
    return group;
}

} // namespace loopwright::pages
