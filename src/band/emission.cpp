#include "band/emission.hpp"

#include <algorithm>
#include <cctype>

namespace loopwright::band {
namespace {

constexpr const char* bulletin = "FCC OET Bulletin 65, Supplement B (Ed. 97-01), Table 2";
constexpr const char* sm_1138 = "ITU-R SM.1138, necessary bandwidth";
constexpr const char* passband = "the 0.2 to 3 kHz of audio that stations of this mode share";

// hertz; keyed share and average to peak as fractions
struct EmissionRow {
    const char *id, *name;
    double occupied_Hz, working_Hz, centre_Hz, keyed, average;
    const char *width_source, *duty_source;
    Status width_status, duty_status;
    double slot_s = 0, sent_s = 0; // of emissions in fixed slots
};

const EmissionRow emission_rows[] = {
    // An unmodulated carrier has no width; 1 Hz stands for it, so that ratios stay finite.
    {"carrier", "Carrier, tuning up", 1, 1, 0, 1, 1, "none: 1 Hz stands for no width", bulletin,
     Status::common_practice, Status::confirmed},
    // 25 words a minute: 20 baud, K = 5.
    {"cw", "CW", 100, 500, 0, 0.4, 1, sm_1138, bulletin, Status::memory, Status::confirmed},
    {"ssb", "SSB voice", 2700, 3000, 1500, 1, 0.2, sm_1138, bulletin, Status::memory, Status::confirmed},
    {"ssb_processed", "SSB voice, speech processor", 2700, 3000, 1500, 1, 0.5, sm_1138, bulletin,
     Status::memory, Status::confirmed},
    // 45.45 baud, shift 170 Hz: B + 2 * 1.2 * 85 Hz.
    {"rtty", "RTTY", 249, 500, 0, 1, 1, sm_1138, bulletin, Status::memory, Status::confirmed},
    // Cosine-shaped reversals: half the power while idle, all of it where no reversal is sent; text between.
    {"psk31", "PSK31", 62.5, 3000, 1500, 1, 0.8, "two idle tones of 31.25 baud, 62.5 Hz null to null",
     "cosine-shaped reversals: 0.5 idle, 1 without reversals; 0.8 taken for text", Status::memory,
     Status::common_practice},
    {"ft8", "FT8", 50, 3000, 1500, 12.64 / 15, 1, passband,
     "79 symbols of 0.160 s in a slot of 15 s, constant envelope", Status::confirmed, Status::confirmed, 15,
     12.64},
    {"ft4", "FT4", 83.3, 3000, 1500, 5.04 / 7.5, 1, passband,
     "105 symbols at 20.8333 baud in a slot of 7.5 s, constant envelope", Status::confirmed,
     Status::confirmed, 7.5, 5.04},
    {"js8", "JS8, normal speed", 50, 3000, 1500, 12.64 / 15, 1, passband,
     "79 symbols of 0.160 s in a frame of 15 s, frames may follow each other, constant envelope",
     Status::memory, Status::memory, 15, 12.64},
    {"wspr", "WSPR", 5.9, 200, 1500, 110.6 / 120, 1, "window of 1.4 to 1.6 kHz of audio",
     "162 symbols at 1.4648 baud in a slot of 120 s, constant envelope", Status::memory, Status::confirmed,
     120, 110.6},
};

std::vector<Emission> made() {
    std::vector<Emission> all;
    for (const EmissionRow& row : emission_rows) {
        all.push_back({row.id, row.name, units::hertz(row.occupied_Hz), units::hertz(row.working_Hz),
                       units::hertz(row.centre_Hz), row.keyed, row.average, row.width_source,
                       row.width_status, row.duty_source, row.duty_status, units::seconds(row.slot_s),
                       units::seconds(row.sent_s)});
    }
    return all;
}

} // namespace

const std::vector<Emission>& emissions() {
    static const std::vector<Emission> all = made();
    return all;
}

std::optional<Emission> find_emission(std::string_view id) {
    std::string wanted(id);
    std::transform(wanted.begin(), wanted.end(), wanted.begin(),
                   [](char c) { return static_cast<char>(std::tolower(static_cast<unsigned char>(c))); });
    for (const Emission& emission : emissions()) {
        if (emission.id == wanted) {
            return emission;
        }
    }
    return std::nullopt;
}

std::vector<std::string> emission_ids() {
    std::vector<std::string> ids;
    for (const Emission& emission : emissions()) {
        ids.push_back(emission.id);
    }
    return ids;
}

} // namespace loopwright::band
