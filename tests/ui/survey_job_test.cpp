#include "jobs/survey_job.hpp"

#include "models/voltage_warning.hpp"

#include <QSignalSpy>
#include <QTest>
#include <gtest/gtest.h>

using namespace loopwright;
using jobs::SurveyJob;

namespace {

survey::Request request(double metres, int points = 21) {
    survey::Request made;
    made.design.loop.size = units::metres(metres);
    made.points = points;
    return made;
}

bool finish(SurveyJob& job) {
    return QTest::qWaitFor([&job] { return !job.running() && !job.stale(); }, 10000);
}

TEST(SurveyJobTest, NewestRequestWins) {
    SurveyJob job;
    const QSignalSpy finished(&job, &SurveyJob::finished);
    job.start(request(0.8, 20000));
    job.start(request(0.9, 20000));
    job.start(request(1.0));
    ASSERT_TRUE(finish(job));
    EXPECT_EQ(finished.count(), 1);
    EXPECT_EQ(job.result()->request.design.loop.size.value, units::metres(1.0));
    EXPECT_EQ(job.generation(), 3);
}

TEST(SurveyJobTest, LastResultStaysStaleUntilTheNewOne) {
    SurveyJob job;
    job.start(request(0.8));
    ASSERT_TRUE(finish(job));
    const auto first = job.result();
    job.start(request(0.9));
    EXPECT_TRUE(job.stale());
    EXPECT_EQ(job.result(), first);
    ASSERT_TRUE(finish(job));
    EXPECT_NE(job.result(), first);
}

TEST(SurveyJobTest, RefusedDesignFailsInWordsAndKeepsTheResult) {
    SurveyJob job;
    job.start(request(0.8));
    ASSERT_TRUE(finish(job));
    const QSignalSpy failed(&job, &SurveyJob::failed);
    job.start(request(-1.0));
    ASSERT_TRUE(QTest::qWaitFor([&failed] { return failed.count() == 1; }, 10000));
    EXPECT_FALSE(failed.first().first().toString().isEmpty());
    EXPECT_TRUE(job.stale());
    ASSERT_TRUE(job.result());
}

TEST(SurveyJobTest, ClearForgets) {
    SurveyJob job;
    job.start(request(0.8, 20000));
    job.clear();
    EXPECT_TRUE(QTest::qWaitFor([&job] { return !job.running(); }, 10000));
    QCoreApplication::processEvents();
    EXPECT_FALSE(job.result());
    EXPECT_FALSE(job.stale());
    job.start(request(0.9));
    EXPECT_TRUE(finish(job));
}

TEST(SurveyJobTest, MayDieWhileRunning) {
    SurveyJob job;
    job.start(request(0.8, 200000));
}

models::VoltageWarning warning(std::optional<double> rating_volts, double watts) {
    survey::Request asked = request(1.0, 0);
    asked.design.station.power = units::watts(watts);
    asked.design.station.bands = {"30m", "20m"};
    if (rating_volts) {
        asked.design.capacitor.rating.peak_voltage = units::volts(*rating_volts);
    }
    return models::voltage_warning(survey::run(asked));
}

TEST(VoltageWarningTest, NamesTheBandAndTheRating) {
    const auto over = warning(10.0, 5.0); // a few watts put far more than 10 V on any small loop
    EXPECT_EQ(over.state, models::VoltageState::exceeded);
    EXPECT_TRUE(over.text.contains(QStringLiteral("30m")) || over.text.contains(QStringLiteral("20m")));
    EXPECT_TRUE(over.text.contains(QStringLiteral("rated 10")));
    EXPECT_EQ(warning(1e6, 5.0).state, models::VoltageState::within);
    EXPECT_EQ(warning(std::nullopt, 5.0).state, models::VoltageState::no_rating);
}

TEST(VoltageWarningTest, SaysWhenNothingIsKnown) {
    survey::Request asked = request(1.0, 0);
    asked.design.capacitor.minimum = units::picofarads(5000);
    asked.design.capacitor.maximum = units::picofarads(6000);
    asked.design.station.bands = {"20m"};
    EXPECT_EQ(models::voltage_warning(survey::run(asked)).state, models::VoltageState::unknown);
}

} // namespace
