#include "document/detail/write.hpp"

#include "design/made.hpp"
#include "design/names.hpp"
#include "document/detail/part.hpp"
#include "document/detail/parts.hpp"
#include "document/detail/write_hazards.hpp"
#include "document/detail/write_retune.hpp"

namespace loopwright::document::detail {
namespace {

Json loop_part(const design::LoopShape& loop) {
    const design::LoopShape standard;
    const bool rectangle = loop.outline == design::Outline::rectangle;
    const bool polygon = loop.outline == design::Outline::polygon;
    const bool several = loop.turns > 1;
    Part part;
    part.used("outline", design::name_of(loop.outline));
    part.maybe(polygon, "sides", loop.sides, standard.sides);
    part.maybe(!rectangle, "size", loop.size, standard.size);
    part.maybe(!rectangle, "size_is", design::name_of(loop.size_is), design::name_of(standard.size_is));
    part.maybe(rectangle, "width", loop.width, standard.width);
    part.maybe(rectangle, "height", loop.height, standard.height);
    part.maybe(polygon, "corner_down", loop.corner_down, standard.corner_down);
    part.used("turns", loop.turns);
    part.maybe(several, "arrangement", design::name_of(loop.arrangement),
               design::name_of(standard.arrangement));
    part.maybe(several, "turn_spacing", loop.turn_spacing, standard.turn_spacing);
    part.maybe(several, "lead", loop.lead, standard.lead);
    part.used("gap", loop.gap);
    return part.take();
}

Json metal_part(const design::Metal& metal) {
    if (!metal.name.empty()) {
        return metal.name;
    }
    return {{"conductivity", quantity(metal.conductivity)},
            {"temperature_coefficient", quantity(metal.temperature_coefficient)}};
}

Json conductor_part(const design::Conductor& conductor) {
    using F = design::ConductorForm;
    const design::Conductor standard;
    const bool strip = conductor.form == F::strip;
    Part part;
    part.used("form", design::name_of(conductor.form));
    part.maybe(!strip, "diameter", conductor.diameter, standard.diameter);
    part.maybe(conductor.form == F::tube, "wall", conductor.wall, standard.wall);
    part.maybe(strip, "width", conductor.width, standard.width);
    part.maybe(strip, "thickness", conductor.thickness, standard.thickness);
    part.used("metal", metal_part(conductor.metal));
    part.used("temperature", conductor.temperature);
    part.maybe(conductor.form == F::braid, "braid_factor", number(conductor.braid_factor),
               number(standard.braid_factor));
    part.maybe(conductor.form == F::stranded, "stranded_factor", number(conductor.stranded_factor),
               number(standard.stranded_factor));
    return part.take();
}

Json joints_part(const std::vector<design::Joint>& joints) {
    Json list = Json::array();
    for (const design::Joint& joint : joints) {
        list.push_back({{"count", joint.count}, {"resistance", quantity(joint.resistance)}});
    }
    return list;
}

Json loss_part(const design::CapacitorLoss& loss) {
    const design::CapacitorLoss standard;
    const bool series = loss.series_resistance.has_value();
    Part part;
    if (loss.q) {
        part.used("q", number(*loss.q));
    }
    if (series) {
        part.used("series_resistance", *loss.series_resistance);
    }
    part.maybe(series, "at", loss.at, standard.at);
    part.maybe(series, "exponent", number(loss.exponent), number(standard.exponent));
    return part.take();
}

Json capacitor_part(const design::Capacitor& capacitor) {
    Part part;
    if (!design::minimum_follows(capacitor)) {
        part.used("minimum", capacitor.minimum);
    }
    if (!design::maximum_follows(capacitor)) {
        part.used("maximum", capacitor.maximum);
    }
    part.used("stray", capacitor.stray);
    part.maybe(false, "loss", loss_part(capacitor.loss), Json(Json::object()));
    part.used("contact_resistance", capacitor.contact_resistance);
    part.maybe(false, "rating", rating_part(capacitor.rating), Json(Json::object()));
    part.maybe(false, "arrangement", design::name_of(capacitor.arrangement),
               design::name_of(design::SectionArrangement::single));
    part.maybe(false, "added", added_part(capacitor.added), Json(Json::array()));
    if (capacitor.dial) {
        part.used("dial", dial_part(*capacitor.dial));
    }
    if (capacitor.made) {
        part.used("made", made_part(*capacitor.made));
    }
    part.given("temperature_coefficient", capacitor.temperature_coefficient);
    return part.take();
}

Json coupling_part(const design::Coupling& coupling) {
    using K = design::CouplingKind;
    const design::Coupling standard;
    const bool loop = coupling.kind == K::loop;
    const bool tap = coupling.kind == K::tap;
    const bool transformer = coupling.kind == K::transformer;
    Part part;
    part.used("kind", design::name_of(coupling.kind));
    part.maybe(loop, "diameter", coupling.diameter, standard.diameter);
    part.maybe(loop || tap, "conductor_diameter", coupling.conductor_diameter, standard.conductor_diameter);
    part.maybe(loop, "axis_offset", coupling.axis_offset, standard.axis_offset);
    part.maybe(tap, "tap_length", coupling.tap_length, standard.tap_length);
    part.maybe(tap, "tap_spacing", coupling.tap_spacing, standard.tap_spacing);
    if (coupling.series_capacitor) {
        part.used("series_capacitor", *coupling.series_capacitor);
    }
    part.maybe(transformer, "turns", coupling.turns, standard.turns);
    part.maybe(transformer, "turn_inductance", coupling.turn_inductance, standard.turn_inductance);
    part.maybe(transformer, "core_q", number(coupling.core_q), number(standard.core_q));
    part.maybe(transformer, "leakage_share", number(coupling.leakage_share), number(standard.leakage_share));
    return part.take();
}

Json feed_line_part(const design::FeedLine& line) {
    Part part;
    part.used("length", line.length);
    part.used("impedance", line.impedance);
    Json loss = Json::array();
    for (const design::LineLoss& point : line.loss) {
        loss.push_back({{"frequency", quantity(point.frequency)}, {"loss", quantity(point.loss)}});
    }
    part.used("loss", loss);
    return part.take();
}

Json ground_part(const design::Ground& ground) {
    if (ground.kind != design::GroundKind::soil) {
        return ground.kind == design::GroundKind::perfect ? "perfect" : "free space";
    }
    if (!ground.class_name.empty()) {
        return ground.class_name;
    }
    return {{"relative_permittivity", number(ground.relative_permittivity)},
            {"conductivity", quantity(ground.conductivity)}};
}

Json site_part(const design::Site& site) {
    Part part;
    part.used("plane", design::name_of(site.plane));
    part.used("tilt", site.tilt);
    part.used("lowest_point", site.lowest_point);
    part.used("standing_level", site.standing_level);
    part.used("ground", ground_part(site.ground));
    const design::Site standard;
    part.maybe(false, "altitude", site.altitude, standard.altitude);
    part.maybe(false, "air_temperature", site.air_temperature, standard.air_temperature);
    part.given("people_distance", site.people_distance);
    return part.take();
}

Json station_part(const design::Station& station) {
    Part part;
    part.used("power", station.power);
    part.used("emission", station.emission);
    part.used("region", station.region);
    part.used("bands", station.bands);
    if (station.use) {
        part.used("use", use_part(*station.use));
    }
    part.maybe(false, "limits", station.limits, std::vector<std::string>());
    part.maybe(false, "own_limits", own_limits_part(station.own_limits), Json(Json::array()));
    part.given("reach", station.reach);
    part.maybe(false, "working_frequencies", working_frequencies_part(station.working_frequencies),
               Json(Json::array()));
    return part.take();
}

} // namespace

std::string document_text(const design::Design& design) {
    Part part;
    part.used("format", design_format);
    part.used("version", known_version);
    part.used("title", design.title);
    part.used("note", design.note);
    part.used("loop", loop_part(design.loop));
    part.used("conductor", conductor_part(design.conductor));
    part.used("joints", joints_part(design.joints));
    part.used("capacitor", capacitor_part(design.capacitor));
    if (design.coupling) {
        part.used("coupling", coupling_part(*design.coupling));
    }
    if (design.feed_line) {
        part.used("feed_line", feed_line_part(*design.feed_line));
    }
    part.used("site", site_part(design.site));
    part.used("station", station_part(design.station));
    if (design.calibration) {
        part.used("calibration", calibration_part(*design.calibration));
    }
    return part.take().dump(2, ' ', false, Json::error_handler_t::replace) + "\n";
}

} // namespace loopwright::document::detail
