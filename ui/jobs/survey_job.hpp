#pragma once
// A survey away from the window's thread.
#include "jobs/job.hpp"
#include "survey/survey.hpp"

namespace loopwright::jobs {

/// Null after a stop. Throws base::InputError as survey::run does.
[[nodiscard]] std::shared_ptr<const survey::Survey>
run_survey(const survey::Request& request, const base::StopToken& stop, const base::Progress& progress);

class SurveyJob : public JobOf<survey::Request, survey::Survey> {
public:
    explicit SurveyJob(QObject* parent = nullptr) : JobOf(&run_survey, parent) {}
};

} // namespace loopwright::jobs
