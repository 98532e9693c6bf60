#include "band/working_frequencies.hpp"

#include <algorithm>
#include <array>

namespace loopwright::band {
namespace {

constexpr const char* presets = "list of customary digital frequencies (docs/reference/bands.md)";
constexpr const char* plan = "IARU band plan of the region, centre of activity for low power";
constexpr const char* custom = "common practice, no source";

/// Which digital emissions have a frequency of their own on a band; the figures are those of usual_dial().
struct Digital {
    const char* emission;
    std::array<const char*, 11> bands;
    Status status;
};
const Digital digital[] = {
    {"ft8", {"160m", "80m", "60m", "40m", "30m", "20m", "17m", "15m", "12m", "10m", "6m"}, Status::confirmed},
    {"ft4", {"80m", "60m", "40m", "30m", "20m", "17m", "15m", "12m", "10m", "6m"}, Status::confirmed},
    {"wspr",
     {"160m", "80m", "60m", "40m", "30m", "20m", "17m", "15m", "12m", "10m", "6m"},
     Status::confirmed},
    {"psk31", {"80m", "40m", "30m", "20m", "17m"}, Status::common_practice},
    {"js8", {"20m"}, Status::common_practice},
};

struct Spoken {
    const char *emission, *band;
    std::array<double, 3> kHz; ///< regions 1, 2, 3
    std::array<Status, 3> statuses;
};
constexpr Status memory = Status::memory, common = Status::common_practice;
constexpr std::array<Status, 3> all_memory{memory, memory, memory}, all_common{common, common, common},
    first_memory{memory, common, common}, third_common{memory, memory, common};
constexpr std::array<double, 3> everywhere(double kHz) {
    return {kHz, kHz, kHz};
}
const Spoken spoken[] = {
    {"cw", "160m", {1836, 1810, 1836}, first_memory},   {"cw", "80m", everywhere(3560), all_memory},
    {"cw", "60m", everywhere(5353), all_common},        {"cw", "40m", everywhere(7030), all_memory},
    {"cw", "30m", everywhere(10116), first_memory},     {"cw", "20m", everywhere(14060), all_memory},
    {"cw", "17m", {18086, 18096, 18096}, first_memory}, {"cw", "15m", everywhere(21060), all_memory},
    {"cw", "12m", everywhere(24906), all_memory},       {"cw", "10m", everywhere(28060), all_memory},
    {"cw", "6m", everywhere(50090), first_memory},      {"ssb", "160m", {1845, 1910, 1845}, all_common},
    {"ssb", "80m", {3690, 3985, 3690}, third_common},   {"ssb", "60m", everywhere(5363), all_common},
    {"ssb", "40m", {7090, 7285, 7090}, third_common},   {"ssb", "20m", everywhere(14285), all_memory},
    {"ssb", "17m", everywhere(18130), all_memory},      {"ssb", "15m", everywhere(21285), all_memory},
    {"ssb", "12m", everywhere(24950), all_memory},      {"ssb", "10m", everywhere(28360), all_memory},
    {"ssb", "6m", {50150, 50125, 50150}, all_common},
};

bool lists(const Digital& row, std::string_view band_name) {
    return std::any_of(row.bands.begin(), row.bands.end(),
                       [&](const char* each) { return each != nullptr && band_name == each; });
}

/// Confirmed but for those that docs/reference/bands.md takes from memory.
Status status_of(const Digital& row, std::string_view band_name) {
    return std::string_view(row.emission) == "ft4" && band_name == "6m" ? memory : row.status;
}

WorkingFrequency made(const Band& band, const char* emission_id, units::Frequency dial, Status status,
                      const char* source) {
    const Emission emission = *find_emission(emission_id);
    WorkingFrequency row;
    row.band = band.name;
    row.emission = emission.id;
    row.kind = kind_of(emission);
    row.dial = dial;
    row.sideband = sideband_of(emission, dial);
    row.tuned = tuned_for(emission, row.sideband, dial);
    row.status = status;
    row.source = source;
    return row;
}

} // namespace

UseKind kind_of(const Emission& emission) noexcept {
    if (emission.id == "cw" || emission.id == "carrier") {
        return UseKind::telegraphy;
    }
    return emission.id == "ssb" || emission.id == "ssb_processed" ? UseKind::voice : UseKind::digital;
}

Sideband sideband_of(const Emission& emission, units::Frequency dial) noexcept {
    if (!(emission.centre_above_dial.value() > 0)) {
        return Sideband::none;
    }
    const bool sixty_metres = dial > units::kilohertz(5200) && dial < units::kilohertz(5500);
    const bool below = dial < units::megahertz(10) && !sixty_metres;
    return kind_of(emission) == UseKind::voice && below ? Sideband::lower : Sideband::upper;
}

units::Frequency tuned_for(const Emission& emission, Sideband sideband, units::Frequency dial) {
    if (sideband == Sideband::none) {
        return dial;
    }
    return sideband == Sideband::upper ? dial + emission.centre_above_dial
                                       : dial - emission.centre_above_dial;
}

std::vector<WorkingFrequency> working_frequencies(int region, std::string_view band_name) {
    std::vector<WorkingFrequency> rows;
    const auto band = find_band(region, band_name);
    if (!band) {
        return rows;
    }
    for (const Digital& row : digital) {
        if (lists(row, band->name)) {
            rows.push_back(made(*band, row.emission, usual_dial(region, *band, row.emission),
                                status_of(row, band->name), presets));
        }
    }
    const auto index = static_cast<std::size_t>(region - 1);
    for (const Spoken& row : spoken) {
        if (band->name == row.band) {
            const Status status = row.statuses.at(index);
            rows.push_back(made(*band, row.emission, units::kilohertz(row.kHz.at(index)), status,
                                status == memory ? plan : custom));
        }
    }
    std::stable_sort(rows.begin(), rows.end(),
                     [](const WorkingFrequency& a, const WorkingFrequency& b) { return a.tuned < b.tuned; });
    return rows;
}

} // namespace loopwright::band
