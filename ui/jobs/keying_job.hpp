#pragma once
// The sheet before keying away from the window's thread, in two steps: the figures as entered at once, then
// with what soil, height and losses may do to them. In one step where the fields are remembered (an edit of
// power, duty, limits or people): the first would stand for some milliseconds only.
#include "jobs/job.hpp"
#include "survey/keying.hpp"
#include "survey/keying_outlines.hpp"

#include <QTimer>

#include <vector>

namespace loopwright::jobs {

/// Null after a stop. Throws base::InputError as survey::keying does.
[[nodiscard]] std::shared_ptr<const survey::Keying>
run_keying(const survey::KeyingRequest& request, const base::StopToken& stop, const base::Progress& progress);

class KeyingJob : public QObject {
    Q_OBJECT
public:
    explicit KeyingJob(QObject* parent = nullptr);
    ~KeyingJob() override;

    /// The design has changed and will be asked for soon: what is there is stale from now on.
    void announce();
    /// The newest request wins. Does nothing but signal where the result is of this design already.
    void start(const design::Design& design);
    /// Stops; what is there stays: stale, or without its intervals.
    void cancel();

    /// The newest result, or nothing yet.
    [[nodiscard]] const std::shared_ptr<const survey::Keying>& result() const { return result_; }
    /// True while the result belongs to an older design than the newest one: show it greyed.
    [[nodiscard]] bool stale() const { return stale_; }
    /// Whether the result holds the unfavourable ends. Without them nothing may be called within limits.
    [[nodiscard]] bool settled() const { return result_ && !stale_ && result_->request.intervals; }
    [[nodiscard]] bool running() const { return running_; }
    /// Whether the newest request is answered in one step.
    [[nodiscard]] bool soon() const { return soon_; }

Q_SIGNALS:
    void started();
    void progressed(double share);
    /// There is a newer result: nominal, then settled; settled at once where it was soon().
    void updated();
    /// One sentence; the result stays, stale or without its intervals.
    void failed(const QString& message);
    void cancelled();

private:
    using Step = JobOf<survey::KeyingRequest, survey::Keying>;
    [[nodiscard]] survey::KeyingRequest asked(bool intervals) const;
    void take(const Step& step);
    void fail(const QString& message);
    Step nominal_, intervals_;
    QTimer pause_; ///< typing may go on
    design::Design design_;
    std::shared_ptr<const survey::Keying> result_;
    bool stale_ = true;
    bool running_ = false;
    bool soon_ = false;
};

struct OutlinesRequest {
    design::Design design;
    units::Frequency frequency{};
    std::string limit;
    std::vector<survey::UpperEnd> upper; ///< where the unfavourable ends are known
    /// For all its bands together instead; limit empty: every limit of it. Not the other fields.
    std::shared_ptr<const survey::Keying> planned{};
};
struct OutlinesResult {
    OutlinesRequest request;
    std::optional<survey::KeyingOutlines> outlines; ///< nothing: the model does not solve the loop
};

/// Null after a stop. Throws base::InputError as survey::keying_outlines does.
[[nodiscard]] std::shared_ptr<const OutlinesResult>
run_outlines(const OutlinesRequest& request, const base::StopToken& stop, const base::Progress& progress);

class OutlinesJob : public JobOf<OutlinesRequest, OutlinesResult> {
public:
    explicit OutlinesJob(QObject* parent = nullptr) : JobOf(&run_outlines, parent) {}
};

} // namespace loopwright::jobs
