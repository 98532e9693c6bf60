#include "jobs/latest_job.hpp"

#include <QMetaObject>

#include <atomic>
#include <exception>
#include <utility>

namespace loopwright::jobs {

LatestJob::LatestJob(QObject* parent) : QObject(parent) {
    pool_.setMaxThreadCount(1); // the work itself spreads over the cores
}

LatestJob::~LatestJob() {
    waiting_.reset();
    stop_.request_stop();
    pool_.waitForDone();
}

void LatestJob::start_work(Work work) {
    ++generation_;
    wanted_ = true;
    stop_.request_stop();
    if (busy_) {
        waiting_ = std::move(work); // launched when the stopped worker reports
    } else {
        launch(work);
    }
    Q_EMIT started();
}

void LatestJob::stop() {
    if (!wanted_) {
        return;
    }
    ++generation_;
    wanted_ = false;
    waiting_.reset();
    stop_.request_stop();
    Q_EMIT stopped();
}

void LatestJob::clear() {
    ++generation_;
    wanted_ = false;
    waiting_.reset();
    stop_.request_stop();
    result_.reset();
    result_generation_ = generation_;
    Q_EMIT cleared();
}

void LatestJob::launch(const Work& work) {
    busy_ = true;
    stop_ = base::StopToken();
    pool_.start([this, work, stop = stop_, generation = generation_] {
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
        Outcome outcome;
        try {
            outcome.result = work(stop, progress);
        } catch (const std::exception& error) {
            outcome.message = QString::fromUtf8(error.what());
        }
        QMetaObject::invokeMethod(
            this, [this, generation, outcome] { take(generation, outcome); }, Qt::QueuedConnection);
    });
}

void LatestJob::take(int generation, const Outcome& outcome) {
    busy_ = false;
    if (waiting_) {
        launch(*std::exchange(waiting_, std::nullopt));
        return;
    }
    if (generation != generation_) {
        return; // stopped or cleared meanwhile
    }
    wanted_ = false;
    if (outcome.result) {
        result_ = outcome.result;
        result_generation_ = generation;
        Q_EMIT finished();
    } else if (!outcome.message.isEmpty()) {
        Q_EMIT failed(outcome.message);
    }
}

} // namespace loopwright::jobs
