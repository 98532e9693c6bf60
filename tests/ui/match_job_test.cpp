// The match away from the window's thread: the same numbers as asked for directly, stop, refusals.
#include "jobs/coupling_jobs.hpp"

#include <QElapsedTimer>
#include <QSignalSpy>
#include <QTest>
#include <gtest/gtest.h>

namespace loopwright::jobs {
namespace {

MatchReportRequest usual(design::CouplingKind kind = design::CouplingKind::loop) {
    MatchReportRequest request;
    request.design.coupling = design::Coupling{};
    request.design.coupling->kind = kind;
    request.frequency = units::megahertz(14.0755);
    return request;
}

TEST(MatchReportJobTest, GivesWhatTheModelGivesForEveryKind) {
    for (const auto kind :
         {design::CouplingKind::loop, design::CouplingKind::tap, design::CouplingKind::transformer}) {
        MatchReportJob job;
        QSignalSpy finished(&job, &Job::finished);
        job.start(usual(kind));
        EXPECT_TRUE(job.stale());
        EXPECT_TRUE(job.busy());
        ASSERT_TRUE(finished.wait(10000));
        EXPECT_FALSE(job.stale());
        EXPECT_FALSE(job.busy());
        const auto asked = usual(kind);
        const auto direct = coupling::match_report(asked.design, asked.frequency,
                                                   asked.design.station.power.value, asked.vswr_limit);
        ASSERT_TRUE(job.result()->report.match.has_value());
        EXPECT_DOUBLE_EQ(job.result()->report.match->vswr, direct.match->vswr);
        EXPECT_EQ(job.result()->report.curve.size(), direct.curve.size());
    }
}

TEST(MatchReportJobTest, TheNewestRequestWinsAndAStopIsHeard) {
    MatchReportJob job;
    QSignalSpy finished(&job, &Job::finished), cancelled(&job, &Job::cancelled);
    job.start(usual(design::CouplingKind::tap)); // the slowest kind
    MatchReportRequest last = usual();
    last.frequency = units::megahertz(18.1);
    job.start(last);
    ASSERT_TRUE(finished.wait(10000));
    EXPECT_EQ(finished.count(), 1);
    EXPECT_EQ(job.result()->request.frequency, last.frequency);
    job.start(usual(design::CouplingKind::tap));
    job.cancel();
    EXPECT_EQ(cancelled.count(), 1);
    EXPECT_TRUE(job.stale());
    EXPECT_FALSE(job.busy());
    EXPECT_NE(job.result(), nullptr) << "the last result stays";
    EXPECT_TRUE(QTest::qWaitFor([&] { return !job.running(); }, 5000));
    QCoreApplication::processEvents();
    EXPECT_EQ(finished.count(), 1) << "what was stopped gives nothing";
}

TEST(MatchReportJobTest, AStopBetweenItsPartsLeavesAnIncompleteReport) {
    const base::StopToken stop;
    stop.request_stop();
    const auto asked = usual();
    const auto report = coupling::match_report(asked.design, asked.frequency, units::watts(5), 2.0, stop);
    EXPECT_FALSE(report.complete);
    EXPECT_FALSE(report.match.has_value());
    EXPECT_EQ(run_match_report(asked, stop, {}), nullptr);
}

TEST(MatchReportJobTest, SaysWhyThereIsNone) {
    MatchReportJob job;
    MatchReportRequest none = usual();
    none.design.coupling.reset();
    QSignalSpy failed(&job, &Job::failed);
    job.start(none);
    ASSERT_TRUE(failed.wait(10000));
    EXPECT_TRUE(failed.front().front().toString().contains(QStringLiteral("coupling")));
    EXPECT_EQ(job.result(), nullptr);
    EXPECT_FALSE(job.busy());
}

} // namespace
} // namespace loopwright::jobs
