#include "document/detail/keys.hpp"

#include <algorithm>
#include <stdexcept>
#include <utility>

namespace loopwright::document::detail {
namespace {

using KeyedPart = std::pair<std::string, std::vector<std::string>>;

const std::vector<KeyedPart>& all_parts() {
    static const std::vector<KeyedPart> parts{
        {"",
         {"format", "version", "title", "note", "loop", "conductor", "joints", "capacitor", "coupling",
          "feed_line", "site", "station", "calibration"}},
        {"loop",
         {"outline", "sides", "size", "size_is", "width", "height", "corner_down", "turns", "arrangement",
          "turn_spacing", "lead", "gap"}},
        {"conductor",
         {"form", "diameter", "wall", "width", "thickness", "metal", "temperature", "braid_factor",
          "stranded_factor"}},
        {"capacitor",
         {"minimum", "maximum", "stray", "loss", "contact_resistance", "rating", "arrangement", "added",
          "dial", "made", "temperature_coefficient"}},
        {"capacitor.loss", {"q", "series_resistance", "at", "exponent"}},
        {"capacitor.rating", {"peak_voltage", "gap", "plate_edges", "safety_factor", "current"}},
        {"capacitor.dial",
         {"law", "scale", "at_minimum", "at_maximum", "table", "hand_step", "reduction", "backlash"}},
        {"capacitor.made",
         {"kind", "least_overlap", "most_overlap", "width", "spacing", "thickness", "plates",
          "inner_diameter", "outer_diameter", "pairs", "relative_permittivity"}},
        {"coupling",
         {"kind", "diameter", "conductor_diameter", "axis_offset", "tap_length", "tap_spacing",
          "series_capacitor", "turns", "turn_inductance", "core_q", "leakage_share"}},
        {"feed_line", {"length", "impedance", "loss"}},
        {"site",
         {"plane", "tilt", "lowest_point", "standing_level", "ground", "altitude", "air_temperature",
          "people_distance"}},
        {"station",
         {"power", "emission", "region", "bands", "use", "limits", "own_limits", "reach",
          "working_frequencies"}},
        {"calibration", {"date", "note", "points"}},
    };
    return parts;
}

bool has_key(const KeyedPart& part, std::string_view key) {
    return std::find(part.second.begin(), part.second.end(), key) != part.second.end();
}

} // namespace

const std::vector<std::string>& keys_of(const std::string& part) {
    for (const KeyedPart& each : all_parts()) {
        if (each.first == part) {
            return each.second;
        }
    }
    throw std::out_of_range("no part " + part);
}

std::vector<std::string> parts_with(std::string_view key) {
    std::vector<std::string> names;
    for (const KeyedPart& part : all_parts()) {
        if (has_key(part, key)) {
            names.push_back(part.first.empty() ? "the document itself" : part.first);
        }
    }
    return names;
}

} // namespace loopwright::document::detail
