#pragma once
// Where a limit is exceeded around the loop at one frequency, as outlines for maps, and its distance over
// power.
#include "base/job.hpp"
#include "base/notice.hpp"
#include "design/design.hpp"
#include "exposure/limits.hpp"
#include "exposure/outlines.hpp"
#include "exposure/surroundings.hpp"
#include "survey/keying.hpp"

#include <optional>
#include <string>
#include <vector>

namespace loopwright::survey {

struct DistanceAtPower {
    units::Power power{};                  ///< peak envelope power
    std::optional<units::Length> distance; ///< as entered; nothing: beyond 100 m
    /// With the power ratio that puts the distance at the design's power to its upper end. Nothing: beyond
    /// 100 m, or no upper end given.
    std::optional<units::Length> upper;
};

/// An outline: from above as distances in even azimuths from 0, people standing; from the side in the plane
/// of KeyingOutlines::side_azimuth. Nothing beyond 100 m.
struct Outline {
    std::optional<std::vector<units::Length>> from_above;
    std::optional<exposure::SideOutline> side;
};

/// One tier of the limit.
struct TierOutlines {
    exposure::Tier tier = exposure::Tier::general_public;
    bool from_memory = false;
    double duty = 1; ///< average over the limit's time, worst window, over peak power
    std::optional<exposure::Farthest> farthest;
    Outline nominal;
    /// The upper end of the distance, where one was given, and the outline that reaches it: that of the power
    /// at which the nominal fields meet the limit there.
    std::optional<units::Length> upper_distance;
    std::optional<Outline> upper;
    std::vector<DistanceAtPower> over_power; ///< ascending
};

struct KeyingOutlines {
    design::Design design;
    units::Frequency frequency{};    ///< of one band; 0: all of `bands` together
    std::vector<std::string> bands;  ///< of a planned set, ascending in frequency; empty: one frequency
    std::string limit, standard;     ///< empty: the strictest of several limits at each place
    units::Angle side_azimuth{};     ///< of the worst direction of the first tier
    std::vector<TierOutlines> tiers; ///< general public first; empty: the limit has no row here
    bool complete = false;           ///< false after a stop
};

/// Powers that over_power is for.
inline constexpr double lowest_power_W = 0.5, highest_power_W = 1500;

/// The unfavourable end of one tier's distance, as survey::keying found it.
struct UpperEnd {
    exposure::Tier tier = exposure::Tier::general_public;
    units::Length distance{};
    [[nodiscard]] bool operator==(const UpperEnd& other) const {
        return tier == other.tier && distance == other.distance;
    }
};

/// Those of a limit on one band; empty where the report has no intervals.
[[nodiscard]] std::vector<UpperEnd> upper_ends(const Keying& keying, const KeyingBand& band,
                                               const std::string& limit);

/// Of a limit by id, own ones ("own_1") too. Nominal: soil, height and losses as entered. Nothing
/// where the full-wave model does not solve the loop. Throws base::InputError for a design with refusals and
/// for an unknown id. upper: of tiers whose interval is known; they get a second outline.
[[nodiscard]] std::optional<KeyingOutlines>
keying_outlines(const design::Design& design, units::Frequency frequency, const std::string& limit,
                const base::StopToken& stop = {}, const std::vector<UpperEnd>& upper = {});

/// The planned set together: inside an outline the fields exceed the limit on one band at least. Of the bands
/// of a complete report that the capacitor reaches; with their upper ends where the report has intervals.
/// limit: an id, or empty for every limit of the report together. A band that a limit has no row for does not
/// count under it. Nothing where the full-wave model does not solve the loop on one of the bands, or none is
/// reached.
[[nodiscard]] std::optional<KeyingOutlines> planned_outlines(const Keying& keying, const std::string& limit,
                                                             const base::StopToken& stop = {});

} // namespace loopwright::survey
