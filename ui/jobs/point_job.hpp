#pragma once
// What the design does at the frequency in focus: by the model chosen, by the other one beside it where
// asked, and the current around the conductor.
#include "design/design.hpp"
#include "jobs/job.hpp"
#include "loop/operating_point.hpp"

#include <memory>
#include <optional>
#include <vector>

namespace loopwright::jobs {

struct PointRequest {
    design::Design design;
    units::Frequency frequency{};
    loop::Model model = loop::Model::full_wave;
    bool other_beside = false; ///< the other model too
    bool with_current = false; ///< the current around the conductor too
    double vswr_limit = 2.0;
};

/// The current at one place of the conductor, at the power of the point.
struct CurrentSample {
    double share = 0; ///< of the conductor's length, from one side of the capacitor's gap to the other
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

/// Throws base::InputError for a design or a frequency that the model does not take.
[[nodiscard]] std::shared_ptr<const PointResult>
compute_point(const PointRequest& request, const base::StopToken& stop, const base::Progress& progress);

class PointJob : public JobOf<PointRequest, PointResult> {
public:
    explicit PointJob(QObject* parent = nullptr) : JobOf(&compute_point, parent) {}
};

} // namespace loopwright::jobs
