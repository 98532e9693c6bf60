// What is said of each point of a calibration, and of the next ones.
#include "models/calibration_rows.hpp"

#include <gtest/gtest.h>

namespace loopwright::models {
namespace {

tuning::JudgedPoint judged_as(bool used, double wrong) {
    tuning::JudgedPoint point;
    point.point = {45, units::megahertz(14.1)};
    point.used = used;
    point.wrong = wrong;
    point.off = units::kilohertz(12);
    point.reason = "why";
    return point;
}

TEST(CalibrationRows, APointCountsIsDoubtfulOrLeftOut) {
    const std::vector<tuning::JudgedPoint> judged{judged_as(true, 0.19), judged_as(true, 0.2),
                                                  judged_as(false, 0.9)};
    const std::vector<design::CalibrationPoint> points(3, judged.front().point);
    const QList<PairRow> rows = calibration_rows(points, judged);
    ASSERT_EQ(rows.size(), 3);
    EXPECT_EQ(rows[0].remarks.last(), QStringLiteral("counts"));
    EXPECT_EQ(rows[1].remarks.last(), QStringLiteral("doubtful"));
    EXPECT_EQ(rows[2].remarks.last(), QStringLiteral("left out"));
    EXPECT_FALSE(rows[0].doubtful);
    EXPECT_TRUE(rows[1].doubtful && rows[2].doubtful) << "marked, not by words alone";
    EXPECT_EQ(rows[1].tip, QStringLiteral("why"));
    // Judgements of other points say nothing.
    EXPECT_TRUE(calibration_rows({points.front()}, judged).first().remarks.isEmpty());
}

TEST(CalibrationRows, APlanNamesEveryPointWithWhatItBrings) {
    design::Dial dial;
    dial.hand_step = 1;
    const std::vector<tuning::NextPoint> plan{{units::megahertz(21), 161, 42, 14.4},
                                              {units::megahertz(10.15), 33, 14.4, 7.2},
                                              {units::megahertz(14.35), 77, 7.2, 7.0}};
    EXPECT_EQ(next_point_words(plan, dial).toStdString(),
              QStringLiteral("Measure next at 21\u2009MHz, near 161.0\u00b0: it would narrow the card from "
                             "\u00b121.0\u00b0 to \u00b17.2\u00b0, then 10.15\u2009MHz to \u00b13.6\u00b0, "
                             "14.35\u2009MHz to \u00b13.5\u00b0.")
                  .toStdString());
    EXPECT_TRUE(next_point_words({}, dial).isEmpty());
}

} // namespace
} // namespace loopwright::models
