#include "jobs/survey_job.hpp"

namespace loopwright::jobs {

std::shared_ptr<const survey::Survey> run_survey(const survey::Request& request, const base::StopToken& stop,
                                                 const base::Progress& progress) {
    const auto survey = std::make_shared<const survey::Survey>(survey::run(request, stop, progress));
    return survey->complete ? survey : nullptr;
}

} // namespace loopwright::jobs
