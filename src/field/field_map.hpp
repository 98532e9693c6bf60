#pragma once
// Fields on a plane through the site.
#include "base/job.hpp"
#include "base/notice.hpp"
#include "design/design.hpp"
#include "units/quantities.hpp"

#include <array>
#include <optional>
#include <vector>

namespace loopwright::field {

/// xy: at a height; xz: along the loop's plane; yz: along its axis. Directions as everywhere.
enum class MapPlane { xy, xz, yz };

struct MapRequest {
    MapPlane plane = MapPlane::xz;
    units::Length offset{};                     ///< z of xy, y of xz, x of yz
    units::Length half_width{units::metres(3)}; ///< first coordinate from -half_width to +half_width
    /// Second coordinate: xy the same; xz and yz over ground from 0 to twice this, in free space as the
    /// first.
    int points = 61; ///< along each side, 2 to 401
};

/// What stands nearer than 0.2 m to the conductor has no number.
struct MapPoint {
    std::array<double, 3> position_m{};
    std::optional<units::ElectricField> electric; ///< rms
    std::optional<units::MagneticField> magnetic;
};

struct FieldMap {
    MapRequest request;
    units::Frequency frequency{};
    units::Power power{};
    std::vector<MapPoint> points; ///< row by row, the first coordinate fastest
    bool complete = false;        ///< false after a stop: no points
};

/// For the power accepted by the tuned loop; all cores. Nothing where the model does not stand behind a
/// number; `notices` then says why. Throws base::InputError for a design with refusals, a size outside 0.1 m
/// to 50 m, an offset beyond 50 m or below the ground, points outside 2 to 401.
[[nodiscard]] std::optional<FieldMap> field_map(const design::Design& design, units::Frequency frequency,
                                                units::Power power, const MapRequest& request,
                                                const base::StopToken& stop = {},
                                                base::Notices* notices = nullptr);

} // namespace loopwright::field
