#pragma once
// Work away from the window's thread, of which only the newest matters: a new one tells the old one to stop
// and its result is dropped. The last result stays, stale, until the new one is there.
#include "base/job.hpp"

#include <QObject>
#include <QString>
#include <QThreadPool>

#include <functional>
#include <memory>
#include <optional>

namespace loopwright::jobs {

/// The part that does not depend on what is computed.
class LatestJob : public QObject {
    Q_OBJECT
public:
    explicit LatestJob(QObject* parent = nullptr);
    /// Stops the worker and waits for it.
    ~LatestJob() override;

    /// Stops what runs, keeps the last result. Emits stopped() where something ran.
    void stop();
    /// Stops and forgets the result. Emits cleared().
    void clear();

    /// True while the result belongs to an older request than the newest one: show it greyed.
    [[nodiscard]] bool stale() const { return result_generation_ != generation_; }
    /// True while the newest request is being worked on.
    [[nodiscard]] bool running() const { return wanted_; }

Q_SIGNALS:
    void started();
    /// 0 to 1, of the newest request.
    void progressed(double share);
    void finished();
    /// One sentence. The result stays what it was, stale.
    void failed(const QString& message);
    void stopped();
    void cleared();

protected:
    using Result = std::shared_ptr<const void>;
    /// An empty result: stopped on the way.
    using Work = std::function<Result(const base::StopToken&, const base::Progress&)>;
    void start_work(Work work);
    [[nodiscard]] const Result& any_result() const { return result_; }

private:
    struct Outcome {
        Result result;
        QString message; ///< of a failure
    };
    void launch(const Work& work);
    void take(int generation, const Outcome& outcome);
    QThreadPool pool_;
    base::StopToken stop_;
    std::optional<Work> waiting_;
    Result result_;
    int generation_ = 0;
    int result_generation_ = 0;
    bool busy_ = false;   ///< a worker is under way, perhaps one that was told to stop
    bool wanted_ = false; ///< the newest request has neither ended nor been stopped
};

/// The newest result of one type.
template <class Value>
class JobFor : public LatestJob {
public:
    using LatestJob::LatestJob;
    /// Nothing yet: null.
    [[nodiscard]] std::shared_ptr<const Value> result() const {
        return std::static_pointer_cast<const Value>(any_result());
    }
};

} // namespace loopwright::jobs
