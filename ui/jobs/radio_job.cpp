#include "jobs/radio_job.hpp"

#include <QMetaObject>

namespace loopwright::jobs {

RadioJob::RadioJob(QObject* parent) : QObject(parent) {}

RadioJob::~RadioJob() = default; // the follower is stopped while this object still stands

void RadioJob::follow(const radio::Connection& connection, const radio::Pace& pace) {
    radio::require_usable(connection);
    follower_.reset();
    last_read_.reset();
    report_ = {radio::State::connecting, std::nullopt, {}, std::chrono::milliseconds{0}};
    const int round = ++round_;
    follower_ = std::make_unique<radio::Follower>(
        connection,
        [this, round](const radio::Report& report) {
            QMetaObject::invokeMethod(
                this,
                [this, round, report] {
                    if (round == round_) {
                        take(report);
                    }
                },
                Qt::QueuedConnection);
        },
        pace);
    Q_EMIT changed();
}

void RadioJob::stop() {
    if (!follower_) {
        return;
    }
    ++round_;
    follower_.reset();
    last_read_.reset();
    report_ = {};
    Q_EMIT changed();
}

void RadioJob::take(const radio::Report& report) {
    report_ = report;
    const bool other = report.frequency && report.frequency != last_read_;
    if (report.frequency) {
        last_read_ = report.frequency;
    }
    Q_EMIT changed();
    if (other) {
        Q_EMIT tuned(report.frequency->value());
    }
}

} // namespace loopwright::jobs
