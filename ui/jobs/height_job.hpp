#pragma once
// The sweep over heights away from the window's thread.
#include "jobs/job.hpp"
#include "survey/height.hpp"

namespace loopwright::jobs {

/// Throws base::InputError as survey::height_sweep does.
[[nodiscard]] std::shared_ptr<const survey::HeightSweep>
run_height(const survey::HeightRequest& request, const base::StopToken& stop, const base::Progress& progress);

class HeightJob : public JobOf<survey::HeightRequest, survey::HeightSweep> {
public:
    explicit HeightJob(QObject* parent = nullptr) : JobOf(&run_height, parent) {}
};

} // namespace loopwright::jobs
