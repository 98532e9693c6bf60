// Rules of conductor, joints, capacitor, site and station.
#include "band/band.hpp"
#include "band/emission.hpp"
#include "conductor/metals.hpp"
#include "design/detail/refusals.hpp"
#include "ground/ground_classes.hpp"

#include <algorithm>

namespace loopwright::design::detail {
namespace {

using units::farads;
using units::hertz;
using units::metres;
using units::millimetres;
using units::ohms;
using units::per_kelvin;
using units::picofarads;
using units::siemens_per_metre;
using units::watts;

void check_metal(const Metal& metal, Refusals& refusals) {
    if (metal.name.empty()) {
        refusals.range("conductor.metal.conductivity", metal.conductivity, siemens_per_metre(1e4),
                       siemens_per_metre(1e9));
        refusals.range("conductor.metal.temperature_coefficient", metal.temperature_coefficient,
                       per_kelvin(-0.002), per_kelvin(0.008));
        return;
    }
    try {
        (void)conductor::find_metal(metal.name, "conductor.metal");
    } catch (const base::InputError& error) {
        refusals.add(error);
    }
}

void check_form(const Conductor& conductor, Refusals& refusals) {
    const auto low = millimetres(0.01);
    const auto high = metres(1);
    if (conductor.form == ConductorForm::strip) {
        refusals.range("conductor.width", conductor.width, low, high);
        refusals.range("conductor.thickness", conductor.thickness, millimetres(0.001), high);
        return;
    }
    const bool diameter = refusals.range("conductor.diameter", conductor.diameter, low, high);
    if (conductor.form == ConductorForm::tube &&
        refusals.range("conductor.wall", conductor.wall, millimetres(0.001), high) && diameter) {
        // A billionth for walls typed as half of a diameter that is no exact double.
        if (conductor.wall.value > conductor.diameter.value / 2.0 * (1 + 1e-9)) {
            refusals.add("conductor.wall", as_typed(conductor.wall),
                         "at most half the diameter (" + units::shown(conductor.diameter.value / 2.0) + ")");
        }
    }
}

void check_loss(const CapacitorLoss& loss, Refusals& refusals) {
    if (loss.q) {
        refusals.range("capacitor.loss.q", *loss.q, 10.0, 1e12);
    }
    if (loss.series_resistance) {
        refusals.range("capacitor.loss.series_resistance", *loss.series_resistance, ohms(0), ohms(1000));
        refusals.range("capacitor.loss.at", loss.at, hertz(1e4), hertz(1e9));
        refusals.range("capacitor.loss.exponent", loss.exponent, -2.0, 2.0);
        if (loss.q) {
            refusals.add("capacitor.loss", "q and series_resistance", "one of the two, or neither");
        }
    }
}

} // namespace

void check_conductor(const Conductor& conductor, Refusals& refusals) {
    check_form(conductor, refusals);
    check_metal(conductor.metal, refusals);
    refusals.range("conductor.temperature", conductor.temperature, units::degrees_celsius(-100),
                   units::degrees_celsius(250));
    if (conductor.form == ConductorForm::braid) {
        refusals.range("conductor.braid_factor", conductor.braid_factor, 1.0, 20.0);
    }
    if (conductor.form == ConductorForm::stranded) {
        refusals.range("conductor.stranded_factor", conductor.stranded_factor, 1.0, 20.0);
    }
}

void check_joints(const std::vector<Joint>& joints, Refusals& refusals) {
    for (std::size_t i = 0; i < joints.size(); ++i) {
        refusals.range(item("joints", i) + ".count", joints[i].count, 0, 10000);
        refusals.range(item("joints", i) + ".resistance", joints[i].resistance, ohms(0), ohms(1000));
    }
}

void check_capacitor(const Capacitor& capacitor, Refusals& refusals) {
    const auto low = picofarads(0.01);
    const auto high = farads(1e-6);
    const bool minimum = refusals.range("capacitor.minimum", capacitor.minimum, low, high);
    const bool maximum = refusals.range("capacitor.maximum", capacitor.maximum, low, high);
    if (minimum && maximum && capacitor.minimum.value > capacitor.maximum.value) {
        refusals.add("capacitor.maximum", as_typed(capacitor.maximum),
                     "a capacitance not below the minimum (" + as_typed(capacitor.minimum) + ")");
    }
    refusals.range("capacitor.stray", capacitor.stray, picofarads(0), high);
    check_loss(capacitor.loss, refusals);
    refusals.range("capacitor.contact_resistance", capacitor.contact_resistance, ohms(0), ohms(1000));
    check_rating(capacitor.rating, refusals);
    check_added(capacitor.added, refusals);
    check_setting(capacitor, refusals);
}

void check_site(const Design& design, Refusals& refusals) {
    const Site& site = design.site;
    refusals.range("site.tilt", site.tilt, units::degrees(-90), units::degrees(90));
    const bool height = refusals.range("site.lowest_point", site.lowest_point, metres(0), metres(1000));
    refusals.range("site.standing_level", site.standing_level, metres(0), metres(1000));
    if (site.people_distance) {
        refusals.range("site.people_distance", *site.people_distance, metres(0.1), metres(100));
    }
    refusals.range("site.altitude", site.altitude, metres(-500), metres(9000));
    refusals.range("site.air_temperature", site.air_temperature, units::degrees_celsius(-60),
                   units::degrees_celsius(60));
    const Ground& ground = site.ground;
    if (ground.kind == GroundKind::free_space) {
        return;
    }
    const Conductor& conductor = design.conductor;
    const bool strip = conductor.form == ConductorForm::strip;
    const auto half = (strip ? conductor.width : conductor.diameter).value / 2.0;
    if (height && std::isfinite(half.value()) && !(site.lowest_point.value > half)) {
        refusals.add("site.lowest_point", as_typed(site.lowest_point),
                     "more than half the conductor's size (" + units::shown(half) +
                         "): the loop would touch the ground");
    }
    if (ground.kind != GroundKind::soil) {
        return;
    }
    if (!ground.class_name.empty()) {
        if (!ground::find_ground_class(ground.class_name)) {
            refusals.add("site.ground", ground.class_name,
                         base::listed(ground::ground_class_names()) + ", free space or perfect");
        }
        return;
    }
    refusals.range("site.ground.relative_permittivity", ground.relative_permittivity, 1.0, 100.0);
    refusals.range("site.ground.conductivity", ground.conductivity, siemens_per_metre(0),
                   siemens_per_metre(100));
}

void check_station(const Station& station, Refusals& refusals) {
    refusals.range("station.power", station.power, watts(1e-6), watts(1e6));
    if (!band::find_emission(station.emission)) {
        refusals.add("station.emission", station.emission, base::listed(band::emission_ids()));
    }
    if (!refusals.range("station.region", station.region, 1, 3)) {
        return;
    }
    for (std::size_t i = 0; i < station.bands.size(); ++i) {
        const std::string& name = station.bands[i];
        const auto begin = station.bands.begin();
        if (!band::find_band(station.region, name)) {
            refusals.add(item("station.bands", i), name,
                         "a band: " + base::listed(band::band_names(station.region)));
        } else if (std::find(begin, begin + static_cast<std::ptrdiff_t>(i), name) !=
                   begin + static_cast<std::ptrdiff_t>(i)) {
            refusals.add(item("station.bands", i), name, "each band once");
        }
    }
    check_exposure(station, refusals);
    check_working_frequencies(station.working_frequencies, refusals);
}

} // namespace loopwright::design::detail
