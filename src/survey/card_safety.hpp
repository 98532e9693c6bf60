#pragma once
// What of the report before keying stands on the retune card; its volts: voltage_standing.hpp.
#include "band/emission.hpp"
#include "survey/card.hpp"
#include "survey/keying.hpp"

#include <vector>

namespace loopwright::survey {

struct CardSafety {
    /// The distance that people must keep, upper end; nothing where it is not established on every band.
    std::optional<units::Length> distance;
    std::string distance_band, distance_standard;
    std::optional<units::Length> reach; ///< of the tuning operator, as the design says
    /// The greatest carrier for tuning at that reach: the least over bands and public limits, no credit for
    /// averaging; nothing where one is not established.
    std::optional<units::Power> tuning_power;
};

[[nodiscard]] CardSafety safety_of(const Keying& keying);

/// The report before keying is for one emission, a card has rows of several. Those rows' emissions, each
/// once, that under some public limit are held with more average power (their usual habit) than the report
/// is: they ask for a greater distance than it names.
[[nodiscard]] std::vector<band::Emission> emissions_asking_more(const Card& card, const Keying& keying);

} // namespace loopwright::survey
