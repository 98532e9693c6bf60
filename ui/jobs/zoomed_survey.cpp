#include "jobs/zoomed_survey.hpp"

#include "settings/measures.hpp"

#include <algorithm>

namespace loopwright::jobs {

namespace {

constexpr int pause_ms = 120;
/// Fewer over the width of a chart leave corners that the eye sees; so many are computed then.
constexpr long enough_points = 60;
constexpr int dense_points = 161;

long points_between(const survey::Survey& survey, units::Frequency low, units::Frequency high) {
    return std::count_if(survey.curve.begin(), survey.curve.end(), [&](const loop::OperatingPoint& point) {
        return point.frequency >= low && point.frequency <= high;
    });
}

/// The dense points in place of those between their ends.
std::shared_ptr<const survey::Survey> merged(const survey::Survey& base, const survey::Survey& dense) {
    auto both = std::make_shared<survey::Survey>(base);
    std::erase_if(both->curve, [&](const loop::OperatingPoint& point) {
        return point.frequency >= dense.request.from && point.frequency <= dense.request.to;
    });
    const auto at = std::find_if(both->curve.begin(), both->curve.end(), [&](const loop::OperatingPoint& p) {
        return p.frequency > dense.request.to;
    });
    both->curve.insert(at, dense.curve.begin(), dense.curve.end());
    return both;
}

} // namespace

ZoomedSurvey::ZoomedSurvey(QObject* parent) : QObject(parent) {
    pause_.setSingleShot(true);
    pause_.setInterval(pause_ms);
    patience_.setSingleShot(true);
    patience_.setInterval(patience_ms);
    connect(&pause_, &QTimer::timeout, this, &ZoomedSurvey::start);
    connect(&patience_, &QTimer::timeout, this, &ZoomedSurvey::state_changed);
    connect(&job_, &Job::finished, this, [this] {
        dense_ = job_.result();
        merged_ = merged(*base_, *dense_);
        if (enough()) { // else the range has moved on meanwhile
            settle();
        }
        Q_EMIT refined();
    });
    // The lines between the few points are all there is then; the axis says how few.
    connect(&job_, &Job::failed, this, &ZoomedSurvey::settle);
}

void ZoomedSurvey::set_base(const Shared& base) {
    if (base == base_) {
        return;
    }
    job_.cancel(); // it was for another one
    base_ = merged_ = base;
    dense_.reset();
    want();
}

void ZoomedSurvey::look_at(units::Frequency low, units::Frequency high) {
    low_ = low;
    high_ = high;
    want();
}

void ZoomedSurvey::set_seen(bool seen) {
    seen_ = seen;
    want();
}

bool ZoomedSurvey::enough() const {
    if (!base_ || !(low_ < high_) || base_->request.points == 0) {
        return true;
    }
    const units::Frequency low = std::max(low_, base_->request.from);
    const units::Frequency high = std::min(high_, base_->request.to);
    const bool inside = dense_ && dense_->request.from <= low && dense_->request.to >= high;
    return !(low < high) || points_between(*base_, low, high) >= enough_points ||
           (inside && points_between(*dense_, low, high) >= enough_points);
}

void ZoomedSurvey::want() {
    if (!seen_ || enough()) {
        pause_.stop();
        job_.cancel();
        settle();
        return;
    }
    pause_.start();
    if (!waiting_) {
        waiting_ = true;
        patience_.start();
    }
}

void ZoomedSurvey::start() {
    survey::Request request = base_->request;
    request.with_bands = false;
    request.from = std::max(low_, request.from);
    request.to = std::min(high_, request.to);
    request.points = dense_points;
    job_.start(request);
}

void ZoomedSurvey::settle() {
    patience_.stop();
    if (waiting_) {
        waiting_ = false;
        Q_EMIT state_changed();
    }
}

} // namespace loopwright::jobs
