#pragma once
// What of the report before keying stands on the retune card.
#include "survey/keying.hpp"

namespace loopwright::survey {

struct CardSafety {
    /// Peak voltage, upper end, on the band where it comes nearest to the rating (worst_voltage()); nothing
    /// where the capacitor reaches none.
    std::optional<units::Voltage> voltage_peak;
    std::string voltage_band;
    std::optional<units::Voltage> usable_voltage; ///< there
    bool voltage_complete = true;                 ///< false: on some band none is established
    /// The distance that people must keep, upper end; nothing where it is not established on every band.
    std::optional<units::Length> distance;
    std::string distance_band, distance_standard;
    std::optional<units::Length> reach; ///< of the tuning operator, as the design says
    /// The greatest carrier for tuning at that reach: the least over bands and public limits, no credit for
    /// averaging; nothing where one is not established.
    std::optional<units::Power> tuning_power;
};

[[nodiscard]] CardSafety safety_of(const Keying& keying);

} // namespace loopwright::survey
