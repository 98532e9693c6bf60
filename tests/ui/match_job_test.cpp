// The match away from the window's thread: the same numbers as asked for directly, stop, refusals.
#include "jobs/match_job.hpp"

#include "coupling/mismatch.hpp"

#include <QElapsedTimer>
#include <QSignalSpy>
#include <QTest>
#include <gtest/gtest.h>

namespace loopwright::jobs {
namespace {

MatchRequest usual() {
    MatchRequest request;
    request.design.coupling = design::Coupling{};
    request.frequency = units::megahertz(14.0755);
    request.points = 21;
    return request;
}

TEST(MatchJob, GivesWhatTheModelGives) {
    MatchJob job;
    QSignalSpy finished(&job, &Job::finished);
    job.start(usual());
    EXPECT_TRUE(job.stale());
    ASSERT_TRUE(finished.wait(10000));
    const auto result = job.result();
    ASSERT_NE(result, nullptr);
    EXPECT_FALSE(job.stale());
    const coupling::CoupledLoop loop(usual().design);
    const coupling::Match match = loop.match(usual().frequency);
    EXPECT_DOUBLE_EQ(result->match.vswr, match.vswr);
    ASSERT_EQ(result->curve.size(), 21U);
    const auto& end = result->curve.back();
    const auto input = loop.input(end.frequency, match.tuning_capacitance);
    EXPECT_EQ(end.input.value(), input.value());
    EXPECT_DOUBLE_EQ(end.vswr, coupling::vswr(input, units::ohms(50)));
    // Wide enough to show the limit, not so wide that the dip is a needle.
    EXPECT_GT(result->curve.front().vswr, 4.0);
    EXPECT_LT(result->curve[7].vswr, result->curve.front().vswr);
}

TEST(MatchJob, TheNewestRequestWinsAndAStopIsHeard) {
    MatchJob job;
    MatchRequest slow = usual();
    slow.points = 20001;
    QSignalSpy finished(&job, &Job::finished), cancelled(&job, &Job::cancelled);
    job.start(slow);
    MatchRequest last = usual();
    last.frequency = units::megahertz(18.1);
    job.start(last);
    ASSERT_TRUE(finished.wait(10000));
    EXPECT_EQ(finished.count(), 1);
    EXPECT_EQ(job.result()->request.frequency, last.frequency);
    job.start(slow);
    job.cancel();
    EXPECT_EQ(cancelled.count(), 1);
    EXPECT_TRUE(job.stale());
    EXPECT_NE(job.result(), nullptr) << "the last result stays";
    QElapsedTimer clock;
    clock.start();
    EXPECT_TRUE(QTest::qWaitFor([&] { return !job.running(); }, 5000));
    EXPECT_LT(clock.elapsed(), 2000);
}

TEST(MatchJob, SaysWhyThereIsNone) {
    MatchJob job;
    MatchRequest none = usual();
    none.design.coupling.reset();
    QSignalSpy failed(&job, &Job::failed);
    job.start(none);
    ASSERT_TRUE(failed.wait(10000));
    EXPECT_TRUE(failed.front().front().toString().contains(QStringLiteral("coupling")));
    EXPECT_EQ(job.result(), nullptr);
}

} // namespace
} // namespace loopwright::jobs
