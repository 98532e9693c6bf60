#pragma once
// Long work away from the window's thread, for the charts that need it: a frozen copy of the request goes to
// a worker, the result comes back with a generation number. The newest request wins; the last result stays,
// stale, until the new one is there.
#include "base/job.hpp"

#include <QObject>
#include <QString>
#include <QThreadPool>

#include <functional>
#include <memory>
#include <optional>

namespace loopwright::jobs {

class Job : public QObject {
    Q_OBJECT
public:
    explicit Job(QObject* parent = nullptr);
    /// Stops the worker and waits for it.
    ~Job() override;

    /// True while the result belongs to an older request than the newest one: show it greyed.
    [[nodiscard]] bool stale() const { return result_generation_ != generation_; }
    [[nodiscard]] bool running() const { return running_; }
    /// True while the newest request is under way or waits for a stopped one; false once it is done, failed
    /// or cancelled.
    [[nodiscard]] bool busy() const { return busy_; }
    /// Counts the requests.
    [[nodiscard]] int generation() const { return generation_; }
    /// Stops; the last result stays, stale. Emits cancelled().
    void cancel();

Q_SIGNALS:
    void started();
    /// 0 to 1, of the newest request.
    void progressed(double share);
    /// The newest request is done: there is a result that is not stale.
    void finished();
    /// One sentence. The result stays what it was, stale.
    void failed(const QString& message);
    void cancelled();

protected:
    /// The result, or null after a stop. Runs on the worker; may throw.
    using Work = std::function<std::shared_ptr<const void>(const base::StopToken&, const base::Progress&)>;
    void start_work(Work work);
    void forget();
    [[nodiscard]] const std::shared_ptr<const void>& stored() const { return result_; }

private:
    struct Outcome {
        std::shared_ptr<const void> result;
        QString message;
    };
    void launch(Work work);
    void take(int generation, const Outcome& outcome);
    [[nodiscard]] base::Progress reporter(int generation);
    QThreadPool pool_;
    base::StopToken stop_;
    Work waiting_;
    std::shared_ptr<const void> result_;
    int generation_ = 0;
    int result_generation_ = 0;
    bool running_ = false;
    bool busy_ = false;
};

/// A job with its kinds of request and result.
template <class Request, class Result>
class JobOf : public Job {
public:
    /// Null after a stop; throws with one sentence. Called on a worker.
    using Run = std::shared_ptr<const Result> (*)(const Request&, const base::StopToken&,
                                                  const base::Progress&);
    explicit JobOf(Run run, QObject* parent = nullptr) : Job(parent), run_(run) {}

    /// One that is running is told to stop and its result is dropped.
    void start(const Request& request) {
        start_work([run = run_, request](const base::StopToken& stop, const base::Progress& progress) {
            return std::shared_ptr<const void>(run(request, stop, progress));
        });
    }
    /// Stops and forgets the result.
    void clear() { forget(); }
    /// The newest finished result, or nothing yet.
    [[nodiscard]] std::shared_ptr<const Result> result() const {
        return std::static_pointer_cast<const Result>(stored());
    }

private:
    Run run_;
};

} // namespace loopwright::jobs
