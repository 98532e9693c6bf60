#pragma once
// Outlines of the space in which thresholds are exceeded, for maps: from above and from the side. Of one loop
// at one frequency, or of several frequencies together (their union).
#include "exposure/surroundings.hpp"
#include "units/quantities.hpp"

#include <optional>
#include <vector>

namespace loopwright::exposure {

/// One frequency: its surroundings (not null) and what may not be exceeded there.
struct Held {
    Surroundings* around = nullptr;
    Threshold threshold;
};

/// Distance in each of `count` even azimuths from 0, people standing, to half a centimetre or 1 %: of the
/// farthest of all. 0 where nothing is exceeded; nothing where one lies beyond 100 m.
[[nodiscard]] std::optional<std::vector<units::Length>> outline_from_above(const std::vector<Held>& all,
                                                                           int count);

/// At one height, between the outermost two places where the limit is met; horizontal from the vertical axis,
/// positive toward the outline's azimuth.
struct SideRow {
    units::Length height{}, left{}, right{};
};

struct SideOutline {
    /// Ascending rows of each part that stands alone; nothing is exceeded between them.
    std::vector<std::vector<SideRow>> pieces;
    /// Reaches higher than is drawn: the fields are tabulated to 12 m above loop and people.
    bool cut_above = false;
};

/// In the vertical plane of one azimuth. Rows every 0.1 m, or a fortieth of the distance from which on
/// nothing is exceeded where that is more; a piece's upper and lower end are found to 5 mm, with more rows
/// near them, since the outline runs level there. Horizontally a place is looked at every 4 cm near the axis,
/// every 12 % of the distance farther out, from outside inward, then halved to 5 mm or 1 %; what lies between
/// two exceeded places counts as exceeded. Nothing where it reaches beyond 100 m.
[[nodiscard]] std::optional<SideOutline> outline_from_the_side(const std::vector<Held>& all,
                                                               units::Angle azimuth);

} // namespace loopwright::exposure
