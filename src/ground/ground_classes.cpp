#include "ground/ground_classes.hpp"

#include <cctype>

namespace loopwright::ground {
namespace {

GroundClass row(const char* name, double permittivity, double siemens_per_metre, const char* source) {
    return {name, {permittivity, units::siemens_per_metre(siemens_per_metre)}, source};
}

std::string plain(std::string_view name) {
    std::string text;
    for (const char c : name) {
        text += static_cast<char>(std::tolower(static_cast<unsigned char>(c)));
    }
    const auto first = text.find_first_not_of(' ');
    return first == std::string::npos ? "" : text.substr(first, text.find_last_not_of(' ') + 1 - first);
}

} // namespace

const std::vector<GroundClass>& ground_classes() {
    static const std::vector<GroundClass> all{
        row("sea water", 70, 5, "ITU-R P.527-3, Fig. 1 and eq. (1), average salinity at 20 degC"),
        row("fresh water", 80, 3e-3, "ITU-R P.527-3, 20 degC; conductivity from memory"),
        row("wet ground", 30, 10e-3, "ITU-R P.527-3; conductivity from the pair used with its curves"),
        row("medium dry ground", 15, 1e-3, "ITU-R P.527-3"),
        row("very dry ground", 3, 0.1e-3, "ITU-R P.527-3"),
        row("average ground", 13, 5e-3, "common practice, no source"),
    };
    return all;
}

std::optional<GroundClass> find_ground_class(std::string_view name) {
    const std::string wanted = plain(name.substr(0, 100));
    for (const GroundClass& one : ground_classes()) {
        if (one.name == wanted) {
            return one;
        }
    }
    return std::nullopt;
}

std::vector<std::string> ground_class_names() {
    std::vector<std::string> names;
    for (const GroundClass& one : ground_classes()) {
        names.push_back(one.name);
    }
    return names;
}

} // namespace loopwright::ground
