#include "report/design_words.hpp"

#include "band/emission.hpp"
#include "base/nearest.hpp"
#include "design/names.hpp"
#include "survey/verdict.hpp"

#include <string>

namespace loopwright::report {
namespace {

template <class Quantity>
std::string said(const units::Typed<Quantity>& typed) {
    return typed.text.empty() ? survey::given_text(typed.value) : typed.text;
}

std::string said(double number) {
    return survey::given_text(number, units::Dimension::number);
}

const char* words_of(design::SizeMeaning meaning) {
    switch (meaning) {
    case design::SizeMeaning::diameter:
        return "diameter";
    case design::SizeMeaning::across_flats:
        return "across flats";
    case design::SizeMeaning::across_corners:
        return "across corners";
    case design::SizeMeaning::side:
        return "a side";
    case design::SizeMeaning::conductor_length:
        return "of conductor";
    }
    return "";
}

std::string outline(const design::LoopShape& loop) {
    if (loop.outline == design::Outline::rectangle) {
        return "rectangle, " + said(loop.width) + " wide, " + said(loop.height) + " high";
    }
    const std::string size = said(loop.size) + " " + words_of(loop.size_is);
    if (loop.outline == design::Outline::circle) {
        return "circle, " + size;
    }
    return "polygon of " + std::to_string(loop.sides) + " sides, " + size +
           (loop.corner_down ? ", corner down" : "");
}

std::string loop_words(const design::LoopShape& loop) {
    std::string text = "Loop: " + outline(loop) + " (centre line)";
    if (loop.turns == 1) {
        text += ", 1 turn";
    } else {
        text += ", " + std::to_string(loop.turns) + " turns as a " +
                (loop.arrangement == design::Arrangement::stack ? "stack" : "flat spiral") + ", " +
                said(loop.turn_spacing) + " apart";
    }
    return text + ", gap " + said(loop.gap) + ".";
}

std::string conductor_words(const design::Conductor& c) {
    using design::ConductorForm;
    std::string text = "Conductor: ";
    switch (c.form) {
    case ConductorForm::wire:
        text += "solid wire, " + said(c.diameter);
        break;
    case ConductorForm::tube:
        text += "tube, " + said(c.diameter) + ", wall " + said(c.wall);
        break;
    case ConductorForm::strip:
        text += "strip, " + said(c.width) + " by " + said(c.thickness);
        break;
    case ConductorForm::braid:
        text += "braid, " + said(c.diameter) + ", factor " + said(c.braid_factor) + " over a smooth tube";
        break;
    case ConductorForm::stranded:
        text += "stranded wire, " + said(c.diameter) + ", factor " + said(c.stranded_factor) +
                " over a solid one";
        break;
    }
    const std::string metal =
        c.metal.name.empty() ? "metal of " + said(c.metal.conductivity) + " at 20 degC" : c.metal.name;
    return text + ", " + metal + ", at " + said(c.temperature) + ".";
}

std::string joint_words(const std::vector<design::Joint>& joints) {
    if (joints.empty()) {
        return "Joints: none entered.";
    }
    std::string text;
    for (const design::Joint& joint : joints) {
        text += (text.empty() ? "Joints: " : "; ") + std::to_string(joint.count) + " of " +
                said(joint.resistance);
    }
    return text + ".";
}

std::string rating_words(const design::CapacitorRating& rating) {
    std::string text;
    if (rating.peak_voltage) {
        text += ", rated " + said(*rating.peak_voltage) + " peak";
    }
    if (rating.gap) {
        text += ", plates " + said(*rating.gap) + " apart with " + design::name_of(rating.plate_edges) +
                " edges, breakdown divided by " + said(rating.safety_factor);
    }
    if (rating.current) {
        text += ", rated " + said(*rating.current) + " rms";
    }
    return rating.peak_voltage || rating.gap ? text : text + ", no voltage rating given";
}

std::string added_words(const std::vector<design::AddedCapacitor>& added) {
    std::string text;
    for (const design::AddedCapacitor& each : added) {
        text += (text.empty() ? " Added: " : "; ") + said(each.capacitance) + " " +
                (each.connection == design::AddedConnection::series ? "in series" : "in parallel") +
                (each.peak_voltage ? ", rated " + said(*each.peak_voltage) + " peak" : "") +
                (each.current ? ", rated " + said(*each.current) + " rms" : "") +
                (each.bands.empty() ? "" : ", on " + base::listed(each.bands) + " only");
    }
    return text.empty() ? text : text + ".";
}

std::string capacitor_words(const design::Capacitor& c) {
    std::string text =
        "Capacitor: " + said(c.minimum) + " to " + said(c.maximum) + ", stray " + said(c.stray);
    if (c.loss.q) {
        text += ", Q " + said(*c.loss.q);
    } else if (c.loss.series_resistance) {
        text += ", series resistance " + said(*c.loss.series_resistance) + " at " + said(c.loss.at);
    } else {
        text += ", loss not given";
    }
    text += ", contacts " + said(c.contact_resistance);
    if (c.arrangement != design::SectionArrangement::single) {
        text += c.arrangement == design::SectionArrangement::butterfly ? ", butterfly" : ", split stator";
    }
    return text + rating_words(c.rating) + "." + added_words(c.added);
}

std::string site_words(const design::Site& site) {
    std::string text =
        std::string("Site: ") + (site.plane == design::Plane::vertical ? "vertical" : "horizontal");
    if (site.tilt.value.value() != 0) {
        text += ", tilt " + said(site.tilt);
    }
    if (site.ground.kind != design::GroundKind::free_space) {
        text += ", lowest point at " + said(site.lowest_point);
    }
    return text + ", " + ground_words(site.ground) + ".";
}

std::string station_words(const design::Station& station) {
    const auto emission = band::find_emission(station.emission);
    std::string text = "Station: " + said(station.power) + ", " +
                       (emission ? emission->name : station.emission) + ", ITU region " +
                       std::to_string(station.region) + ", ";
    if (station.bands.empty()) {
        return text + "all bands.";
    }
    std::string bands;
    for (const std::string& band : station.bands) {
        bands += (bands.empty() ? "" : ", ") + band;
    }
    return text + "planned: " + bands + ".";
}

std::string coupling_words(const design::Coupling& c) {
    switch (c.kind) {
    case design::CouplingKind::loop:
        return "Coupling loop: " + said(c.diameter) + " diameter, conductor " + said(c.conductor_diameter) +
               ", " + said(c.axis_offset) + " from the loop's conductor.";
    case design::CouplingKind::tap:
        return "Tap: " + said(c.tap_length) + " along the conductor, rod of " + said(c.conductor_diameter) +
               " at " + said(c.tap_spacing) +
               (c.series_capacitor ? ", " + said(*c.series_capacitor) + " in series." : ".");
    case design::CouplingKind::transformer:
        return "Transformer: " + std::to_string(c.turns) + " turns on a core of " + said(c.turn_inductance) +
               " a turn squared, Q " + said(c.core_q) + ".";
    }
    return "";
}

std::string feed_line_words(const design::FeedLine& line) {
    std::string text = "Feed line: " + said(line.length) + " of " + said(line.impedance);
    for (const design::LineLoss& point : line.loss) {
        text += ", " + said(point.loss) + " at " + said(point.frequency);
    }
    return text + (line.loss.empty() ? ", no loss given: taken as none." : ".");
}

} // namespace

std::vector<Sentence> design_words(const design::Design& design) {
    std::vector<Sentence> all;
    if (!design.note.empty()) {
        all.push_back({"note", "Note: " + design.note});
    }
    all.push_back({"loop", loop_words(design.loop)});
    all.push_back({"conductor", conductor_words(design.conductor)});
    all.push_back({"joints", joint_words(design.joints)});
    all.push_back({"capacitor", capacitor_words(design.capacitor)});
    if (design.coupling) {
        all.push_back({"coupling", coupling_words(*design.coupling)});
    }
    if (design.feed_line) {
        all.push_back({"feed_line", feed_line_words(*design.feed_line)});
    }
    all.push_back({"site", site_words(design.site)});
    all.push_back({"station", station_words(design.station)});
    return all;
}

std::string ground_words(const design::Ground& ground) {
    switch (ground.kind) {
    case design::GroundKind::free_space:
        return "in free space";
    case design::GroundKind::perfect:
        return "over a perfect ground";
    case design::GroundKind::soil:
        break;
    }
    return ground.class_name.empty()
               ? "over ground of relative permittivity " + said(ground.relative_permittivity) + " and " +
                     said(ground.conductivity)
               : "over " + ground.class_name;
}

} // namespace loopwright::report
