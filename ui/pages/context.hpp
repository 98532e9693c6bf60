#pragma once
// What every page is given: the one design, the one focus, the one set of settings, the surveys of the design
// and of the one it is compared with. Owned by the window; outlives the pages.
#include "jobs/keying_job.hpp"
#include "jobs/point_job.hpp"
#include "jobs/survey_job.hpp"
#include "session/comparison.hpp"
#include "session/document.hpp"
#include "session/focus.hpp"
#include "settings/settings.hpp"

namespace loopwright::pages {

struct Context {
    settings::Settings& settings;
    session::Document& document;
    session::Focus& focus;
    session::Comparison& comparison;
    jobs::SurveyJob& survey;          ///< of the document's design; started by the window on every edit
    jobs::PointJob& point;            ///< at the frequency in focus; started by the window on every edit
    jobs::SurveyJob& compared_survey; ///< of the comparison's design; cleared when there is none
    jobs::KeyingJob& keying;          ///< of the document's design; started by the window on every edit
};

} // namespace loopwright::pages
