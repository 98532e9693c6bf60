#include "jobs/survey_job.hpp"

#include <QMetaObject>

#include <atomic>
#include <exception>
#include <utility>

namespace loopwright::jobs {

SurveyJob::SurveyJob(QObject* parent) : QObject(parent) {
    pool_.setMaxThreadCount(1); // the survey itself spreads over the cores
}

SurveyJob::~SurveyJob() {
    waiting_.reset();
    stop_.request_stop();
    pool_.waitForDone();
}

void SurveyJob::start(const survey::Request& request) {
    ++generation_;
    stop_.request_stop();
    if (running_) {
        waiting_ = request; // launched when the stopped worker reports
    } else {
        launch(request);
    }
    Q_EMIT started();
}

void SurveyJob::clear() {
    ++generation_;
    waiting_.reset();
    stop_.request_stop();
    result_.reset();
    result_generation_ = generation_;
    Q_EMIT cleared();
}

void SurveyJob::launch(const survey::Request& request) {
    running_ = true;
    stop_ = base::StopToken();
    pool_.start([this, request, stop = stop_, generation = generation_] {
        Outcome outcome;
        // In steps of a hundredth: the window needs no more, and its queue stays short. Called by several
        // threads.
        const auto last = std::make_shared<std::atomic<int>>(-1);
        const auto progress = [this, generation, last](double share) {
            const int step = static_cast<int>(share * 100.0);
            if (step <= last->exchange(step)) {
                return;
            }
            QMetaObject::invokeMethod(
                this,
                [this, generation, share] {
                    if (generation == generation_) {
                        Q_EMIT progressed(share);
                    }
                },
                Qt::QueuedConnection);
        };
        try {
            outcome.survey = std::make_shared<const survey::Survey>(survey::run(request, stop, progress));
        } catch (const std::exception& error) {
            outcome.message = QString::fromUtf8(error.what());
        }
        QMetaObject::invokeMethod(
            this, [this, generation, outcome] { take(generation, outcome); }, Qt::QueuedConnection);
    });
}

void SurveyJob::take(int generation, const Outcome& outcome) {
    running_ = false;
    if (waiting_) {
        const survey::Request request = *std::exchange(waiting_, std::nullopt);
        launch(request);
        return;
    }
    if (generation != generation_) {
        return; // cleared meanwhile
    }
    if (outcome.survey && outcome.survey->complete) {
        result_ = outcome.survey;
        result_generation_ = generation;
        Q_EMIT finished(result_);
    } else if (!outcome.survey) {
        Q_EMIT failed(outcome.message);
    }
}

} // namespace loopwright::jobs
