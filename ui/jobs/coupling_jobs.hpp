#pragma once
// Away from the window's thread: all that is asked of the match at one frequency, and the size of coupling
// that matches.
#include "coupling/feed_size.hpp"
#include "coupling/match_report.hpp"
#include "jobs/job.hpp"

#include <vector>

namespace loopwright::jobs {

struct MatchReportRequest {
    design::Design design;
    units::Frequency frequency{};
    double vswr_limit = 2.0;
};

struct MatchReportResult {
    MatchReportRequest request;
    coupling::MatchReport report;
};

/// Null after a stop. Throws base::InputError for a design without a coupling, or one that does not fit.
[[nodiscard]] std::shared_ptr<const MatchReportResult> run_match_report(const MatchReportRequest& request,
                                                                        const base::StopToken& stop,
                                                                        const base::Progress& progress);

class MatchReportJob : public JobOf<MatchReportRequest, MatchReportResult> {
public:
    explicit MatchReportJob(QObject* parent = nullptr) : JobOf(&run_match_report, parent) {}
};

struct SizingRequest {
    design::Design design;
    std::vector<units::Frequency> frequencies;
};

struct SizingResult {
    SizingRequest request;
    coupling::FeedSize size;
};

/// On the impedance of the feed line, without one 50 ohm. Throws base::InputError as coupling::feed_size.
[[nodiscard]] std::shared_ptr<const SizingResult>
run_sizing(const SizingRequest& request, const base::StopToken& stop, const base::Progress& progress);

class SizingJob : public JobOf<SizingRequest, SizingResult> {
public:
    explicit SizingJob(QObject* parent = nullptr) : JobOf(&run_sizing, parent) {}
};

} // namespace loopwright::jobs
