#pragma once
// Emissions: how wide they are and how much of the time they send.
#include "band/status.hpp"
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
    /// Where the middle of that window lies above the dial frequency (upper sideband; in lower sideband it
    /// lies as far below).
    units::Frequency centre_above_dial{};
    double keyed_share = 1;     ///< of a transmit slot or over in which power is sent, 0 to 1
    double average_to_peak = 1; ///< average power while keyed over peak envelope power, 0 to 1
    std::string width_source;
    Status width_status = Status::confirmed;
    std::string duty_source; ///< of keyed_share and average_to_peak
    Status duty_status = Status::confirmed;
    units::Time slot{}; ///< emissions in fixed time slots: how long one is; 0 for all others
    units::Time sent{}; ///< of a slot; keyed_share = sent / slot
    [[nodiscard]] bool has_slots() const { return slot.value() > 0; }
    bool operator==(const Emission&) const = default;
};

/// All emissions, the carrier first. Sources of every figure stand in it; docs/reference/bands.md lists them.
[[nodiscard]] const std::vector<Emission>& emissions();

/// An emission by its id (case ignored), or nothing.
[[nodiscard]] std::optional<Emission> find_emission(std::string_view id);

[[nodiscard]] std::vector<std::string> emission_ids();

} // namespace loopwright::band
