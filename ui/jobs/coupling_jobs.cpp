#include "jobs/coupling_jobs.hpp"

namespace loopwright::jobs {

std::shared_ptr<const MatchReportResult> run_match_report(const MatchReportRequest& request,
                                                          const base::StopToken& stop,
                                                          const base::Progress& /*progress*/) {
    if (stop.stop_requested()) {
        return nullptr;
    }
    auto result = std::make_shared<MatchReportResult>();
    result->request = request;
    result->report = coupling::match_report(request.design, request.frequency,
                                            request.design.station.power.value, request.vswr_limit, stop);
    return result->report.complete ? result : nullptr;
}

std::shared_ptr<const SizingResult> run_sizing(const SizingRequest& request, const base::StopToken& stop,
                                               const base::Progress& progress) {
    auto result = std::make_shared<SizingResult>();
    result->request = request;
    const auto& line = request.design.feed_line;
    result->size = coupling::feed_size(request.design, request.frequencies,
                                       line ? line->impedance.value : units::ohms(50), stop, progress);
    return result->size.complete ? result : nullptr;
}

} // namespace loopwright::jobs
