#include "support/fullwave_cases.hpp"

#include <fstream>
#include <nlohmann/json.hpp>
#include <sstream>

namespace loopwright::support {

namespace {

using Json = nlohmann::json;
using Point = std::array<double, 3>;

Json part(const FullwaveCase& c, const char* section) {
    return Json::parse(c.json).at(section);
}

} // namespace

double FullwaveCase::in(const std::string& name) const {
    return part(*this, "in").at(name).get<double>();
}
double FullwaveCase::out(const std::string& name) const {
    return part(*this, "out").at(name).get<double>();
}
std::string FullwaveCase::text(const std::string& name) const {
    return part(*this, "in").at(name).get<std::string>();
}
bool FullwaveCase::has(const std::string& name) const {
    return part(*this, "in").contains(name);
}
Point FullwaveCase::point(const std::string& name) const {
    return part(*this, "in").at(name).get<Point>();
}
std::vector<Point> FullwaveCase::vertices() const {
    return part(*this, "in").at("vertices_closed").get<std::vector<Point>>();
}
std::array<double, 2> FullwaveCase::input_impedance() const {
    return part(*this, "out").at("Zin").get<std::array<double, 2>>();
}

std::vector<FullwaveCase::Near> FullwaveCase::near_fields() const {
    std::vector<Near> all;
    const Json out = part(*this, "out");
    for (const Json& one : out.at("near_rms")) {
        all.push_back({one.at("p").get<Point>(), one.at("E").get<double>(), one.at("H").get<double>()});
    }
    return all;
}

std::vector<FullwaveCase::Gain> FullwaveCase::gains() const {
    const Json table = part(*this, "out").at("gain_dBi");
    const auto elevations = table.at("elev").get<std::vector<double>>();
    std::vector<Gain> all;
    for (const double azimuth : {0.0, 90.0}) {
        const auto gains = table.at(azimuth == 0.0 ? "az0" : "az90").get<std::vector<double>>();
        for (std::size_t i = 0; i < elevations.size(); ++i) {
            all.push_back({elevations[i], azimuth, gains.at(i)});
        }
    }
    return all;
}

std::vector<FullwaveCase> fullwave_cases() {
    std::ifstream file(LOOPWRIGHT_SOURCE_DIR "/tests/reference/data/independent_fullwave_cases.json");
    std::vector<FullwaveCase> all;
    const Json root = Json::parse(file);
    for (const Json& one : root.at("cases")) {
        all.push_back({one.at("id").get<std::string>(), one.dump()});
    }
    return all;
}

std::string place_text(const std::array<double, 3>& p) {
    std::ostringstream text;
    text << " at (" << p[0] << ", " << p[1] << ", " << p[2] << ") m";
    return text.str();
}
std::string direction_text(const FullwaveCase::Gain& gain) {
    std::ostringstream text;
    text << "gain, elevation " << gain.elevation_deg << ", azimuth " << gain.azimuth_deg << " [dBi]";
    return text.str();
}

} // namespace loopwright::support
