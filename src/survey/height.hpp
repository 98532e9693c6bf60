#pragma once
// What height does: one frequency, the loop's lowest point moved, in parallel.
#include "base/job.hpp"
#include "design/design.hpp"
#include "loop/operating_point.hpp"

#include <vector>

namespace loopwright::survey {

struct HeightRequest {
    design::Design design;
    units::Frequency frequency{units::megahertz(14.1)};
    double vswr_limit = 2.0;
    units::Length from{units::metres(0.1)}; ///< height of the lowest point
    units::Length to{units::metres(20)};
    int points = 24; ///< spaced evenly in ratio, both ends included
};

struct HeightRow {
    units::Length lowest_point{};
    loop::OperatingPoint point;
};

struct HeightSweep {
    HeightRequest request;
    std::vector<HeightRow> rows; ///< ascending
    bool complete = false;       ///< false after a stop: what was not reached is missing
};

/// The full-wave model at each height, the capacitor tuned anew. Throws base::InputError for a design with
/// refusals, a design in free space ("site.ground"), a range outside 0.1 m to 100 m or that does not ascend,
/// points outside 2 to 1000.
[[nodiscard]] HeightSweep height_sweep(const HeightRequest& request, const base::StopToken& stop = {},
                                       const base::Progress& progress = {});

} // namespace loopwright::survey
