#pragma once
// What the design does at the frequency in focus: by the model chosen, by the other one beside it where
// asked, and the current around the conductor.
#include "design/design.hpp"
#include "geometry/vector3.hpp"
#include "jobs/latest_job.hpp"
#include "loop/operating_point.hpp"

#include <vector>

namespace loopwright::jobs {

struct PointRequest {
    design::Design design;
    units::Frequency frequency{};
    loop::Model model = loop::Model::full_wave;
    bool other_beside = false; ///< the other model too
    double vswr_limit = 2.0;
};

/// The current at one place of the conductor, at the power of the point.
struct CurrentSample {
    double along_m = 0;      ///< along the conductor, from the middle of the capacitor's gap
    geometry::Vector3 place; ///< in the plane of the loop: x to the right, z up, y along the axis [m]
    double rms_A = 0;
    double phase_rad = 0; ///< against the current opposite the capacitor
};

struct PointResult {
    PointRequest request;
    loop::OperatingPoint point;
    std::optional<loop::OperatingPoint> other;
    /// Once around; empty where the full-wave model was not asked or does not stand behind the point.
    std::vector<CurrentSample> current;
};

/// The work itself. Throws base::InputError for a design or a frequency that the model does not take.
[[nodiscard]] PointResult compute(const PointRequest& request);

class PointJob : public JobFor<PointResult> {
    Q_OBJECT
public:
    using JobFor<PointResult>::JobFor;
    void start(const PointRequest& request);
};

} // namespace loopwright::jobs
