#include "document/detail/parts.hpp"

#include "band/band.hpp"
#include "band/emission.hpp"
#include "base/error.hpp"
#include "base/nearest.hpp"
#include "design/names.hpp"
#include "document/detail/choice.hpp"
#include "document/detail/hazard_parts.hpp"
#include "document/detail/keys.hpp"
#include "document/detail/retune_parts.hpp"
#include "ground/ground_classes.hpp"

namespace loopwright::document::detail {
namespace {

void read_loop(const Fields& fields, design::LoopShape& loop) {
    fields.need("outline", "circle, polygon or rectangle");
    choice(fields, "outline", loop.outline);
    fields.whole("sides", loop.sides);
    if (loop.outline == design::Outline::rectangle) {
        fields.need("width", "the width of the rectangle");
        fields.need("height", "the height of the rectangle");
    } else {
        fields.need("size", "the size of the " + design::name_of(loop.outline));
        loop.size_is = design::size_meanings(loop.outline, loop.sides).front();
    }
    choice(fields, "size_is", loop.size_is);
    fields.quantity("size", loop.size);
    fields.quantity("width", loop.width);
    fields.quantity("height", loop.height);
    fields.boolean("corner_down", loop.corner_down);
    fields.whole("turns", loop.turns);
    choice(fields, "arrangement", loop.arrangement);
    fields.quantity("turn_spacing", loop.turn_spacing);
    fields.quantity("lead", loop.lead);
    fields.quantity("gap", loop.gap);
}

void read_metal(const Fields& fields, design::Metal& metal) {
    const Node* node = fields.raw("metal");
    if (node->kind == Node::Kind::text) {
        fields.text("metal", metal.name, 100, false);
        if (metal.name.empty()) {
            fields.refuse("metal", "the name of a metal, such as copper");
        }
        return;
    }
    if (node->kind != Node::Kind::object) {
        fields.refuse("metal", "the name of a metal in quotes, or an object with its conductivity");
    }
    metal.name.clear();
    const auto own = fields.object("metal", {"conductivity", "temperature_coefficient"});
    own->need("conductivity", "the conductivity at 20 °C");
    own->quantity("conductivity", metal.conductivity);
    own->quantity("temperature_coefficient", metal.temperature_coefficient);
}

void need_sizes(const Fields& fields, design::ConductorForm form) {
    using F = design::ConductorForm;
    const std::string of = " of the " + design::name_of(form);
    if (form == F::strip) {
        fields.need("width", "the width" + of);
        fields.need("thickness", "the thickness" + of);
        return;
    }
    fields.need("diameter", "the outer diameter" + of);
    if (form == F::tube) {
        fields.need("wall", "the wall thickness" + of);
    }
}

void read_conductor(const Fields& fields, design::Conductor& conductor) {
    fields.need("form", base::listed(design::names<design::ConductorForm>()));
    choice(fields, "form", conductor.form);
    need_sizes(fields, conductor.form);
    fields.quantity("diameter", conductor.diameter);
    fields.quantity("wall", conductor.wall);
    fields.quantity("width", conductor.width);
    fields.quantity("thickness", conductor.thickness);
    fields.need("metal", "the name of a metal or its conductivity");
    read_metal(fields, conductor.metal);
    fields.quantity("temperature", conductor.temperature);
    fields.number("braid_factor", conductor.braid_factor);
    fields.number("stranded_factor", conductor.stranded_factor);
}

std::vector<design::Joint> read_joints(const Fields& document) {
    std::vector<design::Joint> joints;
    for (const Fields& fields : document.objects("joints", {"count", "resistance"})) {
        design::Joint joint;
        fields.whole("count", joint.count);
        fields.need("resistance", "the resistance of each joint");
        fields.quantity("resistance", joint.resistance);
        joints.push_back(std::move(joint));
    }
    return joints;
}

void read_coupling(const Fields& fields, design::Coupling& coupling) {
    choice(fields, "kind", coupling.kind);
    if (coupling.kind == design::CouplingKind::tap) {
        fields.need("tap_length", "how far along the conductor the tap is");
    }
    if (coupling.kind == design::CouplingKind::transformer) {
        fields.need("turns", "the turns of the line's winding");
        fields.need("turn_inductance", "the core's inductance for one turn (A_L) at the frequencies in use");
    }
    fields.quantity("diameter", coupling.diameter);
    fields.quantity("conductor_diameter", coupling.conductor_diameter);
    fields.quantity("axis_offset", coupling.axis_offset);
    fields.quantity("tap_length", coupling.tap_length);
    fields.quantity("tap_spacing", coupling.tap_spacing);
    fields.quantity("series_capacitor", coupling.series_capacitor);
    fields.whole("turns", coupling.turns);
    fields.quantity("turn_inductance", coupling.turn_inductance);
    fields.number("core_q", coupling.core_q);
    fields.number("leakage_share", coupling.leakage_share);
}

void read_feed_line(const Fields& fields, design::FeedLine& line) {
    fields.need("length", "the length of the feed line");
    fields.quantity("length", line.length);
    fields.quantity("impedance", line.impedance);
    for (const Fields& each : fields.objects("loss", {"frequency", "loss"})) {
        design::LineLoss point;
        each.need("frequency", "the frequency that the loss is printed for");
        each.need("loss", "the matched loss there, such as '4 dB/100m'");
        each.quantity("frequency", point.frequency);
        each.quantity("loss", point.loss);
        line.loss.push_back(std::move(point));
    }
}

void read_named_ground(const Fields& fields, design::Ground& ground) {
    std::string word;
    fields.text("ground", word, 100, false);
    if (word == "free space" || word == "perfect") {
        ground.kind = word == "perfect" ? design::GroundKind::perfect : design::GroundKind::free_space;
        return;
    }
    ground.kind = design::GroundKind::soil;
    const auto known = ground::find_ground_class(word);
    if (!known) {
        std::vector<std::string> words = ground::ground_class_names();
        words.insert(words.begin(), {"free space", "perfect"});
        const std::string meant = base::nearest(word, words);
        fields.refuse("ground", base::listed(words) +
                                    ", or an object with relative_permittivity and conductivity" +
                                    (meant.empty() ? "" : "; the nearest is '" + meant + "'"));
    }
    ground.class_name = known->name;
    ground.relative_permittivity = known->soil.relative_permittivity;
    ground.conductivity = known->soil.conductivity;
}

void read_ground(const Fields& fields, design::Ground& ground) {
    const Node* node = fields.raw("ground");
    if (node == nullptr) {
        return;
    }
    if (node->kind != Node::Kind::object) {
        read_named_ground(fields, ground);
        return;
    }
    ground.kind = design::GroundKind::soil;
    const auto own = fields.object("ground", {"relative_permittivity", "conductivity"});
    own->need("relative_permittivity", "the relative permittivity of the soil");
    own->need("conductivity", "the conductivity of the soil");
    own->number("relative_permittivity", ground.relative_permittivity);
    own->quantity("conductivity", ground.conductivity);
}

void read_site(const Fields& fields, design::Site& site) {
    choice(fields, "plane", site.plane);
    fields.quantity("tilt", site.tilt);
    fields.quantity("lowest_point", site.lowest_point);
    fields.quantity("standing_level", site.standing_level);
    read_ground(fields, site.ground);
    fields.quantity("altitude", site.altitude);
    fields.quantity("air_temperature", site.air_temperature);
    fields.quantity("people_distance", site.people_distance);
}

// Ids and names are stored as the tables spell them; what is unknown is kept, and refused by the validation.
void read_station(const Fields& fields, design::Station& station) {
    fields.quantity("power", station.power);
    fields.text("emission", station.emission, 100, false);
    if (const auto emission = band::find_emission(station.emission)) {
        station.emission = emission->id;
    }
    fields.whole("region", station.region);
    station.bands = fields.words("bands");
    for (std::string& name : station.bands) {
        const bool known_region = station.region >= 1 && station.region <= 3;
        if (const auto band = known_region ? band::find_band(station.region, name) : std::nullopt) {
            name = band->name;
        }
    }
    if (const auto use = fields.object("use", {"habit", "share", "over"})) {
        read_use(*use, station.use.emplace());
    }
    station.limits = fields.words("limits");
    station.own_limits = read_own_limits(fields);
    fields.quantity("reach", station.reach);
    station.working_frequencies = read_working_frequencies(fields);
}

} // namespace

void check_format(const Node& root, const std::string& format, const std::string& name) {
    const auto refuse = [&](const std::string& key, const Node& at, const std::string& text) {
        throw base::InputError::sentence(key, text).at(name, at.line);
    };
    if (root.kind != Node::Kind::object) {
        refuse("", root, "this is no file of this program: it has to start with {");
    }
    const Node* given = root.find("format");
    if (given == nullptr || given->kind != Node::Kind::text || given->text != format) {
        refuse("format", given == nullptr ? root : *given,
               (given == nullptr ? "this part is missing" : "'" + given->shown() + "' is not accepted") +
                   "; '" + format + "' is needed");
    }
    const Node* version = root.find("version");
    if (version == nullptr || version->kind != Node::Kind::number) {
        refuse("version", version == nullptr ? root : *version,
               (version == nullptr ? "this part is missing" : "'" + version->shown() + "' is not accepted") +
                   "; the plain number " + std::to_string(known_version) + " is needed");
    }
    if (version->number > known_version) {
        refuse("version", *version,
               "the file is of version " + version->shown() + ", newer than this program knows (" +
                   std::to_string(known_version) + "); a newer version of the program can open it");
    }
    if (version->number != known_version) {
        refuse("version", *version,
               "'" + version->shown() + "' is not accepted; the number " + std::to_string(known_version) +
                   " is needed");
    }
}

const std::vector<std::string>& capacitor_keys() {
    return keys_of("capacitor");
}

design::Capacitor read_capacitor(const Fields& fields) {
    design::Capacitor capacitor;
    if (!fields.has("made")) {
        fields.need("minimum", "the least capacitance");
        fields.need("maximum", "the largest capacitance");
    }
    fields.quantity("minimum", capacitor.minimum);
    fields.quantity("maximum", capacitor.maximum);
    fields.quantity("stray", capacitor.stray);
    if (const auto loss = fields.object("loss", keys_of("capacitor.loss"))) {
        loss->number("q", capacitor.loss.q);
        loss->quantity("series_resistance", capacitor.loss.series_resistance);
        loss->quantity("at", capacitor.loss.at);
        loss->number("exponent", capacitor.loss.exponent);
    }
    fields.quantity("contact_resistance", capacitor.contact_resistance);
    if (const auto rating = fields.object("rating", keys_of("capacitor.rating"))) {
        read_rating(*rating, capacitor.rating);
    }
    choice(fields, "arrangement", capacitor.arrangement);
    capacitor.added = read_added(fields);
    read_setting(fields, capacitor);
    return capacitor;
}

design::Design read_document(const Node& root, const std::string& name) {
    const Fields document(root, "", name, keys_of(""));
    design::Design design;
    document.text("title", design.title, 200, false);
    document.text("note", design.note, 20000, true);
    document.need("loop", "the loop's outline and size");
    read_loop(*document.object("loop", keys_of("loop")), design.loop);
    document.need("conductor", "the conductor's form, sizes and metal");
    read_conductor(*document.object("conductor", keys_of("conductor")), design.conductor);
    design.joints = read_joints(document);
    document.need("capacitor", "the capacitor's minimum and maximum");
    design.capacitor = read_capacitor(*document.object("capacitor", capacitor_keys()));
    if (const auto coupling = document.object("coupling", keys_of("coupling"))) {
        read_coupling(*coupling, design.coupling.emplace());
    }
    if (const auto line = document.object("feed_line", keys_of("feed_line"))) {
        read_feed_line(*line, design.feed_line.emplace());
    }
    if (const auto site = document.object("site", keys_of("site"))) {
        read_site(*site, design.site);
    }
    if (const auto station = document.object("station", keys_of("station"))) {
        read_station(*station, design.station);
    }
    if (const auto calibration = document.object("calibration", keys_of("calibration"))) {
        read_calibration(*calibration, design.calibration.emplace());
    }
    return design;
}

} // namespace loopwright::document::detail
