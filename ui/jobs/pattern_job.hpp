#pragma once
// The pattern at one frequency, with a dipole beside it, away from the window's thread.
#include "field/pattern.hpp"
#include "jobs/job.hpp"

namespace loopwright::jobs {

struct PatternJobRequest {
    design::Design design;
    units::Frequency frequency = units::megahertz(7.074);
    field::PatternRequest pattern;
};

struct PatternResult {
    PatternJobRequest request;
    std::optional<field::Pattern> pattern; ///< absent: not established
    base::Notices notices;                 ///< then says why
};

/// Throws base::InputError as field::pattern does.
[[nodiscard]] std::shared_ptr<const PatternResult>
run_pattern(const PatternJobRequest& request, const base::StopToken& stop, const base::Progress& progress);

class PatternJob : public JobOf<PatternJobRequest, PatternResult> {
public:
    explicit PatternJob(QObject* parent = nullptr) : JobOf(&run_pattern, parent) {}
};

} // namespace loopwright::jobs
