#pragma once
// Emissions: how wide they are and how much of the time they send.
#include "units/quantities.hpp"

#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace loopwright::band {

struct Emission {
    std::string id;                    ///< "ft8", "carrier", "cw", what the design file holds
    std::string name;                  ///< for people
    units::Frequency occupied_width{}; ///< of the signal itself
    /// What the loop must pass without retuning: for slot modes the audio passband a station works in (3
    /// kHz).
    units::Frequency working_width{};
    /// Where the middle of that window lies above the dial frequency (upper sideband digital: 1.5 kHz).
    units::Frequency centre_above_dial{};
    double keyed_share = 1; ///< of a transmit slot or over in which power is sent (source in emission.cpp)
    double average_to_peak = 1; ///< average power while keyed over peak envelope power
};

[[nodiscard]] const std::vector<Emission>& emissions();
[[nodiscard]] std::optional<Emission> find_emission(std::string_view id);

} // namespace loopwright::band
