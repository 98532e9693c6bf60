#include "band/band.hpp"

#include "base/error.hpp"

#include <algorithm>
#include <array>
#include <cctype>

namespace loopwright::band {
namespace {

struct Edges {
    double low_kHz, high_kHz;
};

struct BandRow {
    const char* name;
    std::array<Edges, 3> edges; ///< regions 1, 2, 3
    double usual_kHz;
    const char* source;
    const char* remark;
};

constexpr const char* same_in_part_97 = "ITU Radio Regulations, article 5; region 2 as in 47 CFR 97.301";

constexpr std::array<Edges, 3> everywhere(double low_kHz, double high_kHz) {
    return {{{low_kHz, high_kHz}, {low_kHz, high_kHz}, {low_kHz, high_kHz}}};
}

const BandRow rows[] = {
    {"160m",
     {{{1810, 1850}, {1800, 2000}, {1800, 2000}}},
     1840,
     same_in_part_97,
     "Region 1: wider in some countries, to 2000 kHz. Regions 2 and 3: shared above 1850 kHz (from memory)."},
    {"80m", {{{3500, 3800}, {3500, 4000}, {3500, 3900}}}, 3573, same_in_part_97, ""},
    {"60m", everywhere(5351.5, 5366.5), 5357, "ITU Radio Regulations, WRC-15",
     "Secondary, 15 W EIRP; 20 or 25 W in some countries, other channels in others, none in some."},
    {"40m", {{{7000, 7200}, {7000, 7300}, {7000, 7200}}}, 7074, same_in_part_97, ""},
    {"30m", everywhere(10100, 10150), 10136, same_in_part_97, "Secondary."},
    {"20m", everywhere(14000, 14350), 14074, same_in_part_97, ""},
    {"17m", everywhere(18068, 18168), 18100, same_in_part_97, ""},
    {"15m", everywhere(21000, 21450), 21074, same_in_part_97, ""},
    {"12m", everywhere(24890, 24990), 24915, same_in_part_97, ""},
    {"10m", everywhere(28000, 29700), 28074, same_in_part_97, ""},
    {"6m",
     {{{50000, 52000}, {50000, 54000}, {50000, 54000}}},
     50313,
     "ITU Radio Regulations, WRC-19",
     "Region 1: secondary; 50.0-50.5 MHz primary in 14 European countries, 50-54 MHz primary in 26 African "
     "and Middle East states, 50.080-50.280 MHz in the Russian Federation."},
};

struct Dial {
    const char* emission;
    const char* band;
    double kHz;
};
// Where the customary dial is not the band's usual one (that of FT8). 60 m WSPR: the one inside the band.
const Dial dials[] = {
    {"ft4", "80m", 3575},     {"ft4", "40m", 7047.5},   {"ft4", "30m", 10140},    {"ft4", "20m", 14080},
    {"ft4", "17m", 18104},    {"ft4", "15m", 21140},    {"ft4", "12m", 24919},    {"ft4", "10m", 28180},
    {"ft4", "6m", 50318},     {"wspr", "160m", 1836.6}, {"wspr", "80m", 3568.6},  {"wspr", "60m", 5364.7},
    {"wspr", "40m", 7038.6},  {"wspr", "30m", 10138.7}, {"wspr", "20m", 14095.6}, {"wspr", "17m", 18104.6},
    {"wspr", "15m", 21094.6}, {"wspr", "12m", 24924.6}, {"wspr", "10m", 28124.6}, {"wspr", "6m", 50293},
    {"js8", "20m", 14078},    {"psk31", "80m", 3580},   {"psk31", "40m", 7040},   {"psk31", "30m", 10142},
    {"psk31", "20m", 14070},
};

std::vector<Band> made_for(int region) {
    std::vector<Band> bands;
    for (const BandRow& row : rows) {
        const Edges& edges = row.edges.at(static_cast<std::size_t>(region - 1));
        bands.push_back({row.name, units::kilohertz(edges.low_kHz), units::kilohertz(edges.high_kHz),
                         units::kilohertz(row.usual_kHz), Status::confirmed, row.source, row.remark});
    }
    return bands;
}

std::string plain(std::string_view name) {
    std::string text;
    for (const char c : name) {
        if (c != ' ') {
            text += static_cast<char>(std::tolower(static_cast<unsigned char>(c)));
        }
    }
    return text;
}

} // namespace

const std::vector<Band>& bands_of(int region) {
    static const std::array<std::vector<Band>, 3> all{made_for(1), made_for(2), made_for(3)};
    if (region < 1 || region > 3) {
        throw base::InputError("station.region", std::to_string(region), "an ITU region: 1, 2 or 3");
    }
    return all.at(static_cast<std::size_t>(region - 1));
}

std::optional<Band> find_band(int region, std::string_view name) {
    const std::string wanted = plain(name);
    for (const Band& band : bands_of(region)) {
        if (band.name == wanted) {
            return band;
        }
    }
    return std::nullopt;
}

std::size_t nearest_band(int region, units::Frequency frequency) {
    const std::vector<Band>& bands = bands_of(region);
    // Both edges against the frequency; within a band neither ratio is above 1.
    const auto away = [&](const Band& band) {
        const double under = band.low.value() / frequency.value();
        const double over = frequency.value() / band.high.value();
        return std::max({under, over, 1.0});
    };
    const auto nearest = std::min_element(bands.begin(), bands.end(),
                                          [&](const Band& a, const Band& b) { return away(a) < away(b); });
    return static_cast<std::size_t>(nearest - bands.begin());
}

std::vector<std::string> band_names(int region) {
    std::vector<std::string> names;
    for (const Band& band : bands_of(region)) {
        names.push_back(band.name);
    }
    return names;
}

units::Frequency usual_dial(int region, const Band& band, std::string_view emission_id) {
    if (region == 3 && emission_id == "ft4" && band.name == "80m") {
        return units::kilohertz(3568);
    }
    for (const Dial& dial : dials) {
        if (band.name == dial.band && emission_id == dial.emission) {
            return units::kilohertz(dial.kHz);
        }
    }
    return band.usual;
}

} // namespace loopwright::band
