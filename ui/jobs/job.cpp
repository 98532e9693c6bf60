#include "jobs/job.hpp"

#include <QMetaObject>

#include <atomic>
#include <exception>
#include <utility>

namespace loopwright::jobs {

Job::Job(QObject* parent) : QObject(parent) {
    pool_.setMaxThreadCount(1);
}

Job::~Job() {
    waiting_ = nullptr;
    stop_.request_stop();
    pool_.waitForDone();
}

void Job::start_work(Work work) {
    ++generation_;
    busy_ = true;
    stop_.request_stop();
    if (running_) {
        waiting_ = std::move(work); // launched when the stopped worker reports
    } else {
        launch(std::move(work));
    }
    Q_EMIT started();
}

void Job::cancel() {
    if (running_ || waiting_) {
        ++generation_;
        busy_ = false;
        waiting_ = nullptr;
        stop_.request_stop();
        Q_EMIT cancelled();
    }
}

void Job::forget() {
    ++generation_;
    busy_ = false;
    waiting_ = nullptr;
    stop_.request_stop();
    result_.reset();
    result_generation_ = generation_;
    Q_EMIT cancelled();
}

/// In steps of a hundredth: the window needs no more, and its queue stays short. Called by several threads.
base::Progress Job::reporter(int generation) {
    const auto last = std::make_shared<std::atomic<int>>(-1);
    return [this, generation, last](double share) {
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
}

void Job::launch(Work work) {
    running_ = true;
    stop_ = base::StopToken();
    pool_.start([this, work = std::move(work), stop = stop_, generation = generation_,
                 progress = reporter(generation_)] {
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

void Job::take(int generation, const Outcome& outcome) {
    running_ = false;
    if (waiting_) {
        launch(std::exchange(waiting_, nullptr));
        return;
    }
    if (generation != generation_) {
        return; // cancelled meanwhile
    }
    busy_ = false;
    if (outcome.result) {
        result_ = outcome.result;
        result_generation_ = generation;
        Q_EMIT finished();
    } else if (!outcome.message.isEmpty()) {
        Q_EMIT failed(outcome.message);
    }
}

} // namespace loopwright::jobs
