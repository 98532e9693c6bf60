#pragma once
// What the radio sees with the dial where it stands: the design's own coupling, the capacitor left.
#include "coupling/coupled_loop.hpp"
#include "jobs/job.hpp"

#include <vector>

namespace loopwright::jobs {

struct PresentMatchRequest {
    design::Design design;
    units::Frequency resonance{}; ///< the capacitor stands where this one has its least VSWR
    units::Frequency wanted{};    ///< the radio is here
    bool operator==(const PresentMatchRequest&) const = default;
};

struct PresentMatchResult {
    PresentMatchRequest request;
    units::Resistance line{};                ///< what the VSWR is on, at the coupling's feed point
    std::vector<coupling::MatchPoint> curve; ///< ascending; 4 half-power bandwidths around the resonance
    double vswr_wanted = 1;
};

/// Null after a stop. Throws base::InputError for a design without a coupling, one that does not fit, or a
/// frequency that no capacitor tunes the loop to.
[[nodiscard]] std::shared_ptr<const PresentMatchResult> run_present_match(const PresentMatchRequest& request,
                                                                          const base::StopToken& stop,
                                                                          const base::Progress& progress);

class PresentMatchJob : public JobOf<PresentMatchRequest, PresentMatchResult> {
public:
    explicit PresentMatchJob(QObject* parent = nullptr) : JobOf(&run_present_match, parent) {}
};

} // namespace loopwright::jobs
