#include "jobs/height_job.hpp"

namespace loopwright::jobs {

std::shared_ptr<const survey::HeightSweep> run_height(const survey::HeightRequest& request,
                                                      const base::StopToken& stop,
                                                      const base::Progress& progress) {
    auto sweep = std::make_shared<const survey::HeightSweep>(survey::height_sweep(request, stop, progress));
    return sweep->complete ? sweep : nullptr;
}

} // namespace loopwright::jobs
