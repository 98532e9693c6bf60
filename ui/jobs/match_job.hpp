#pragma once
// The match at one frequency and the curve around it, away from the window's thread.
#include "coupling/coupled_loop.hpp"
#include "jobs/job.hpp"

namespace loopwright::jobs {

struct MatchRequest {
    design::Design design;
    units::Frequency frequency = units::megahertz(7.074);
    units::Resistance line = units::ohms(50);
    double vswr_limit = 2.0;
    int points = 101; ///< of the curve
};

struct MatchResult {
    MatchRequest request;
    coupling::Match match;
    std::vector<coupling::MatchPoint>
        curve; ///< wide enough that the VSWR at both ends is well above the limit
};

/// Throws base::InputError as coupling::CoupledLoop does (no coupling loop, one that does not fit, a
/// frequency that the loop cannot be tuned to).
[[nodiscard]] std::shared_ptr<const MatchResult>
run_match(const MatchRequest& request, const base::StopToken& stop, const base::Progress& progress);

class MatchJob : public JobOf<MatchRequest, MatchResult> {
public:
    explicit MatchJob(QObject* parent = nullptr) : JobOf(&run_match, parent) {}
};

} // namespace loopwright::jobs
