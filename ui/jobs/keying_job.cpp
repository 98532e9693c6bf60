#include "jobs/keying_job.hpp"

namespace loopwright::jobs {

namespace {
constexpr int keying_pause_ms = 300;
} // namespace

std::shared_ptr<const survey::Keying> run_keying(const survey::KeyingRequest& request,
                                                 const base::StopToken& stop,
                                                 const base::Progress& progress) {
    auto keying = std::make_shared<const survey::Keying>(survey::keying(request, stop, progress));
    return keying->complete ? keying : nullptr;
}

KeyingJob::KeyingJob(QObject* parent) : QObject(parent), nominal_(&run_keying), intervals_(&run_keying) {
    pause_.setSingleShot(true);
    pause_.setInterval(keying_pause_ms);
    connect(&nominal_, &Job::finished, this, [this] {
        take(nominal_);
        pause_.start();
    });
    connect(&pause_, &QTimer::timeout, this, [this] { intervals_.start(asked(true)); });
    connect(&intervals_, &Job::finished, this, [this] {
        running_ = false;
        take(intervals_);
    });
    for (Step* step : {&nominal_, &intervals_}) {
        connect(step, &Job::failed, this, &KeyingJob::fail);
    }
    connect(&intervals_, &Job::progressed, this, &KeyingJob::progressed);
}

KeyingJob::~KeyingJob() = default;

survey::KeyingRequest KeyingJob::asked(bool intervals) const {
    survey::KeyingRequest request;
    request.design = design_;
    request.intervals = intervals;
    return request;
}

void KeyingJob::announce() {
    soon_ = false;
    stale_ = true;
    running_ = true;
    pause_.stop();
    intervals_.cancel();
    nominal_.cancel();
    Q_EMIT started();
}

void KeyingJob::start(const design::Design& design) {
    if (result_ && result_->request.design == design) { // undone, or nothing that counts was changed
        nominal_.cancel();
        design_ = design;
        stale_ = false;
        running_ = !result_->request.intervals;
        if (running_) {
            pause_.start();
        }
        Q_EMIT updated();
        return;
    }
    stale_ = true;
    running_ = true;
    pause_.stop();
    intervals_.cancel();
    design_ = design;
    soon_ = result_ && result_->request.intervals && survey::same_fields(result_->request.design, design);
    if (soon_) {
        nominal_.cancel();
        intervals_.start(asked(true));
    } else {
        nominal_.start(asked(false));
    }
    Q_EMIT started();
}

void KeyingJob::cancel() {
    running_ = false;
    pause_.stop();
    intervals_.cancel();
    nominal_.cancel();
    Q_EMIT cancelled();
}

void KeyingJob::take(const Step& step) {
    result_ = step.result();
    stale_ = false;
    Q_EMIT updated();
}

void KeyingJob::fail(const QString& message) {
    running_ = false;
    Q_EMIT failed(message);
}

std::shared_ptr<const OutlinesResult> run_outlines(const OutlinesRequest& request,
                                                   const base::StopToken& stop,
                                                   const base::Progress& /*progress*/) {
    auto result = std::make_shared<OutlinesResult>();
    result->request = request;
    result->outlines = request.planned ? survey::planned_outlines(*request.planned, request.limit, stop)
                                       : survey::keying_outlines(request.design, request.frequency,
                                                                 request.limit, stop, request.upper);
    return result->outlines && !result->outlines->complete ? nullptr : result;
}

} // namespace loopwright::jobs
