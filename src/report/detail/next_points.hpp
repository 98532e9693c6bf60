#pragma once
// Where to measure next, as JSON.
#include "report/detail/json_parts.hpp"
#include "tuning/calibration.hpp"

#include <vector>

namespace loopwright::report::detail {

/// Each after those before it; widths in readings.
[[nodiscard]] inline Json next_points_of(const std::vector<tuning::NextPoint>& points) {
    Json next = Json::array();
    for (const tuning::NextPoint& point : points) {
        next.push_back({{"frequency_Hz", number_of(point.frequency.value())},
                        {"reading", number_of(point.reading)},
                        {"mean_width", number_of(point.width_now)},
                        {"mean_width_after", number_of(point.width_after)}});
    }
    return next;
}

} // namespace loopwright::report::detail
