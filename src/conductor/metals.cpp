#include "conductor/metals.hpp"

#include "base/error.hpp"
#include "base/nearest.hpp"

#include <cctype>
#include <cmath>

namespace loopwright::conductor {
namespace {

struct Row {
    const char* name;
    double nominal_MS_m, low_MS_m, high_MS_m, alpha_per_K;
    const char* source;
};

MetalData metal_from(const Row& row) {
    return {row.name,
            units::siemens_per_metre(row.nominal_MS_m * 1e6),
            units::per_kelvin(row.alpha_per_K),
            row.source,
            {units::siemens_per_metre(row.low_MS_m * 1e6), units::siemens_per_metre(row.high_MS_m * 1e6)}};
}

// 100 % IACS = 58.0 MS/m. "From memory" marks what was not seen in a copy of the document.
const Row table[] = {
    {"copper", 58.0, 58.0, 58.0, 0.00393,
     "annealed copper, 100 % IACS: NBS Handbook 100 (1966), NBS Circular 31"},
    {"hard-drawn copper", 56.4, 56.4, 56.4, 0.00381, "ASTM B1, 97.2 % IACS; from memory"},
    {"plumbing copper", 49.3, 49.3, 53.9, 0.0034,
     "Cu-DHP (CW024A, C12200), tube to EN 1057 or ASTM B88: 85 % IACS in a data sheet to DEF STAN 02-837, "
     "90-93 % "
     "in producers' sheets; temperature coefficient from memory (0.00393 x 0.85)"},
    {"silver", 61.4, 60.9, 62.9, 0.0038,
     "eddy-current conductivity table (105 % IACS) and resistivity tables; temperature coefficient from "
     "memory"},
    {"aluminium 1350", 35.4, 34.8, 36.0, 0.00403, "bus-bar handbook and alloy table, 60-62 % IACS"},
    {"aluminium 6101", 31.9, 31.9, 33.1, 0.00363, "bus-bar handbook (6101-T6), 55-57 % IACS"},
    {"aluminium 6063", 30.7, 30.7, 31.9, 0.0036,
     "alloy sheets, temper T6 53 %, T5 55 % IACS; temperature coefficient from memory"},
    {"aluminium 6061", 24.4, 24.4, 25.1, 0.0033,
     "eddy-current conductivity table (T6, 42 % IACS) and alloy table (43 %); temperature coefficient from "
     "memory"},
    {"brass", 16.2, 15.6, 16.2, 0.0013,
     "C26000 (70-30), 28 % IACS: eddy-current conductivity table, alloy data base; temperature coefficient "
     "from "
     "memory (0.0010-0.0016)"},
    {"phosphor bronze", 6.4, 6.4, 8.7, 0.0018,
     "C51000, 11 % IACS: eddy-current conductivity table (15 % from memory); temperature coefficient from "
     "memory"},
    {"tin", 8.7, 8.7, 8.7, 0.0045,
     "eddy-current conductivity table, 15 % IACS; temperature coefficient from memory (0.0042-0.0047)"},
    {"zinc", 16.2, 16.2, 16.9, 0.0039,
     "eddy-current conductivity table, 28 % IACS; resistivity 59 nohm m; temperature coefficient from "
     "memory"},
    {"stainless steel", 1.45, 1.39, 1.45, 0.001,
     "austenitic 304, 2.5 % IACS: eddy-current conductivity table (690-720 nohm m), taken as non-magnetic; "
     "temperature coefficient from memory"},
};

std::string plain(std::string_view name) {
    std::string text;
    for (const char raw : name) {
        const auto letter = static_cast<unsigned char>(raw);
        if (std::isspace(letter) != 0) {
            if (!text.empty() && text.back() != ' ') {
                text.push_back(' ');
            }
        } else {
            text.push_back(static_cast<char>(std::tolower(letter)));
        }
    }
    if (!text.empty() && text.back() == ' ') {
        text.pop_back();
    }
    const auto spelling = text.find("aluminum");
    return spelling == std::string::npos ? text : text.replace(spelling, 8, "aluminium");
}

std::vector<std::string> names() {
    std::vector<std::string> all;
    for (const MetalData& metal : metals()) {
        all.push_back(metal.name);
    }
    return all;
}

// The metal that was meant: by spelling, else one whose name holds the word ("aluminium") or is held by it.
std::string meant_by(const std::string& word) {
    std::string meant = base::nearest(word, names());
    for (const std::string& name : names()) {
        const bool part =
            !word.empty() && (name.find(word) != std::string::npos || word.find(name) != std::string::npos);
        if (meant.empty() && part) {
            meant = name;
        }
    }
    return meant;
}

} // namespace

const std::vector<MetalData>& metals() {
    static const std::vector<MetalData> list = [] {
        std::vector<MetalData> all;
        for (const Row& row : table) {
            all.push_back(metal_from(row));
        }
        return all;
    }();
    return list;
}

const MetalData& find_metal(std::string_view name, const std::string& where) {
    const std::string wanted = plain(name);
    for (const MetalData& metal : metals()) {
        if (metal.name == wanted) {
            return metal;
        }
    }
    const std::string meant = meant_by(wanted.substr(0, 60));
    throw base::InputError(where, std::string(name.substr(0, 60)),
                           (meant.empty() ? "" : "perhaps '" + meant + "' is meant; ") + "known metals are " +
                               base::listed(names()) + "; or give conductivity and temperature coefficient");
}

units::Conductivity conductivity_at(units::Conductivity at_20_celsius,
                                    units::PerKelvin temperature_coefficient, units::Temperature temperature,
                                    const std::string& where) {
    const double celsius = temperature.value() - 273.15;
    if (!(celsius >= -100.0 - 1e-9 && celsius <= 250.0 + 1e-9)) {
        throw base::InputError(where, std::to_string(celsius) + " degC",
                               "a temperature from -100 degC to 250 degC");
    }
    const double relative_resistivity = 1.0 + temperature_coefficient.value() * (celsius - 20.0);
    if (!(at_20_celsius.value() > 0.0 && relative_resistivity > 0.0) ||
        !std::isfinite(at_20_celsius.value())) {
        throw base::ProgramError("conductivity_at: conductivity not positive, or coefficient out of range");
    }
    return at_20_celsius / relative_resistivity;
}

units::Conductivity conductivity_at(const MetalData& metal, units::Temperature temperature) {
    return conductivity_at(metal.conductivity, metal.temperature_coefficient, temperature);
}

} // namespace loopwright::conductor
