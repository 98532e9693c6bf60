#include "jobs/pattern_job.hpp"

namespace loopwright::jobs {

std::shared_ptr<const PatternResult> run_pattern(const PatternJobRequest& request,
                                                 const base::StopToken& stop,
                                                 const base::Progress& /*progress*/) {
    auto result = std::make_shared<PatternResult>();
    result->request = request;
    // One solve of loop and dipole: too short to be stopped half-way, but not
    // begun for nothing.
    if (stop.stop_requested()) {
        return nullptr;
    }
    result->pattern = field::pattern(request.design, request.frequency, request.pattern, &result->notices);
    return stop.stop_requested() ? nullptr : result;
}

} // namespace loopwright::jobs
