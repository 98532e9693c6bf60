#pragma once
// A survey with more points over the frequencies that somebody looks closely at.
#include "jobs/survey_job.hpp"

#include <QTimer>

namespace loopwright::jobs {

class ZoomedSurvey : public QObject {
    Q_OBJECT
public:
    using Shared = std::shared_ptr<const survey::Survey>;
    explicit ZoomedSurvey(QObject* parent = nullptr);

    /// The survey over the whole range, or null. Points computed for another one are dropped.
    void set_base(const Shared& base);
    /// The frequencies looked at. Where the base has too few points in them, more are computed in a moment.
    void look_at(units::Frequency low, units::Frequency high);
    /// What nobody sees is not computed on.
    void set_seen(bool seen);

    /// The base with the points there are; null where there is no base.
    [[nodiscard]] const Shared& survey() const { return merged_; }
    /// True once more points have been on their way for a moment: grey the lines between the few.
    [[nodiscard]] bool stale() const { return waiting_ && !patience_.isActive(); }
    [[nodiscard]] SurveyJob& job() { return job_; }

Q_SIGNALS:
    /// survey() is another: more points have come.
    void refined();
    /// stale() is another.
    void state_changed();

private:
    [[nodiscard]] bool enough() const;
    void want();
    void start();
    void settle();
    SurveyJob job_;
    Shared base_, dense_, merged_;
    units::Frequency low_{}, high_{};
    QTimer pause_;    ///< the wheel turns on
    QTimer patience_; ///< what takes less is not worth a sign
    bool seen_ = false;
    bool waiting_ = false;
};

} // namespace loopwright::jobs
