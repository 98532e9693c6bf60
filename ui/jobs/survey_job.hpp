#pragma once
// A survey away from the window's thread: a frozen copy of the request goes to a worker, the result comes
// back with a generation number. The newest request wins; the last result stays, stale, until the new one is
// there.
#include "survey/survey.hpp"

#include <QObject>
#include <QString>
#include <QThreadPool>

#include <memory>
#include <optional>

namespace loopwright::jobs {

class SurveyJob : public QObject {
    Q_OBJECT
public:
    explicit SurveyJob(QObject* parent = nullptr);
    /// Stops the worker and waits for it.
    ~SurveyJob() override;

    /// Asks for a survey. One that is running is told to stop and its result is dropped.
    void start(const survey::Request& request);
    /// Stops and forgets the result (no comparison any more). Emits cleared().
    void clear();

    /// The newest finished survey, or nothing yet.
    [[nodiscard]] const std::shared_ptr<const survey::Survey>& result() const { return result_; }
    /// True while result() belongs to an older request than the newest one: show it greyed.
    [[nodiscard]] bool stale() const { return result_generation_ != generation_; }
    [[nodiscard]] bool running() const { return running_; }
    /// Counts the requests.
    [[nodiscard]] int generation() const { return generation_; }

Q_SIGNALS:
    void started();
    /// 0 to 1, of the newest request.
    void progressed(double share);
    void finished(std::shared_ptr<const loopwright::survey::Survey> survey);
    /// One sentence. result() stays what it was, stale.
    void failed(const QString& message);
    void cleared();

private:
    struct Outcome {
        std::shared_ptr<const survey::Survey> survey;
        QString message;
    };
    void launch(const survey::Request& request);
    void take(int generation, const Outcome& outcome);
    QThreadPool pool_;
    base::StopToken stop_;
    std::optional<survey::Request> waiting_;
    std::shared_ptr<const survey::Survey> result_;
    int generation_ = 0;
    int result_generation_ = 0;
    bool running_ = false;
};

} // namespace loopwright::jobs
