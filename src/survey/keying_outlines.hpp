#pragma once
// Where a limit is exceeded around the loop at one frequency, as outlines for maps, and its distance over
// power.
#include "base/job.hpp"
#include "base/notice.hpp"
#include "design/design.hpp"
#include "exposure/limits.hpp"
#include "exposure/surroundings.hpp"

#include <optional>
#include <string>
#include <vector>

namespace loopwright::survey {

struct DistanceAtPower {
    units::Power power{};                  ///< peak envelope power
    std::optional<units::Length> distance; ///< nothing: beyond 100 m
};

/// One tier of the limit.
struct TierOutlines {
    exposure::Tier tier = exposure::Tier::general_public;
    bool from_memory = false;
    double duty = 1; ///< average over the limit's time, worst window, over peak power
    std::optional<exposure::Farthest> farthest;
    /// Horizontal distances from the axis in even azimuths from 0, people standing. Nothing beyond 100 m.
    std::optional<std::vector<units::Length>> from_above;
    /// At each of `heights`: toward `side_azimuth`, and the opposite way.
    std::optional<std::vector<units::Length>> toward, away;
    std::vector<DistanceAtPower> over_power; ///< ascending
};

struct KeyingOutlines {
    design::Design design;
    units::Frequency frequency{};
    std::string limit, standard;
    units::Angle side_azimuth{};        ///< of the worst direction of the first tier
    std::vector<units::Length> heights; ///< above the ground, ascending; free space: above the centre
    std::vector<TierOutlines> tiers;    ///< general public first; empty: the limit has no row here
    bool complete = false;              ///< false after a stop
};

/// Powers that over_power is for.
inline constexpr double lowest_power_W = 0.5, highest_power_W = 1500;

/// Of a limit by id, own ones ("own_1") too. Nominal: soil, height and losses as entered. Nothing
/// where the full-wave model does not solve the loop. Throws base::InputError for a design with refusals and
/// for an unknown id.
[[nodiscard]] std::optional<KeyingOutlines> keying_outlines(const design::Design& design,
                                                            units::Frequency frequency,
                                                            const std::string& limit,
                                                            const base::StopToken& stop = {});

} // namespace loopwright::survey
