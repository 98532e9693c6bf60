// What the charts hold and say, against the survey they are made from.
#include "models/chart_content.hpp"

#include "models/survey_charts.hpp"
#include "ui/chart_made_survey.hpp"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <limits>

namespace loopwright::models {
namespace {

using test::made_charts;
using test::made_survey;
using ::testing::HasSubstr;

const ChartContent& chart_named(const Charts& charts, const char* id) {
    for (const ChartContent& chart : *charts) {
        if (chart.id == QLatin1String(id)) {
            return chart;
        }
    }
    throw std::out_of_range(id);
}

TEST(ChartContent, CurvesHoldTheFiguresOfTheSurvey) {
    const auto survey = made_survey();
    const Charts charts = made_charts();
    ASSERT_EQ(charts->size(), 6U);
    const Curve& efficiency = chart_named(charts, "efficiency").curves.front();
    const Curve& voltage = chart_named(charts, "voltage").curves.front();
    ASSERT_EQ(efficiency.points.size(), static_cast<qsizetype>(survey->curve.size()));
    for (const loop::OperatingPoint& point : survey->curve) {
        const double hertz = point.frequency.value();
        if (point.resonance) {
            EXPECT_EQ(value_at(efficiency, hertz), point.resonance->efficiency);
            EXPECT_EQ(value_at(voltage, hertz), point.resonance->capacitor_voltage_peak.value());
        } else {
            EXPECT_FALSE(value_at(efficiency, hertz)) << "a number where none is established";
        }
    }
}

TEST(ChartContent, SharesAddUpToAll) {
    const ChartContent losses = chart_named(made_charts(), "losses");
    ASSERT_EQ(losses.curves.size(), 4U);
    for (const double hertz : {2e6, 7.074e6, 14.1e6, 28e6}) {
        double sum = 0;
        for (const Curve& curve : losses.curves) {
            const auto& points = curve.points;
            const auto near = std::lower_bound(points.begin(), points.end(), hertz,
                                               [](const QPointF& p, double f) { return p.x() < f; });
            sum += near->y();
        }
        EXPECT_NEAR(sum, 1.0, 1e-12);
    }
    EXPECT_EQ(chart_named(made_charts({.joints = false}), "losses").curves.size(), 3U);
}

TEST(ChartContent, BetweenPointsAPowerLawIsExactAndAGapStaysAGap) {
    const double gap = std::numeric_limits<double>::quiet_NaN();
    Curve curve;
    curve.points = {{1e6, 2.0}, {4e6, 32.0}, {8e6, gap}, {16e6, 1.0}};
    EXPECT_NEAR(value_at(curve, 2e6).value(), 8.0, 1e-12); // 2 f^2
    EXPECT_EQ(value_at(curve, 4e6), 32.0);
    for (const double hertz : {0.5e6, 5e6, 8e6, 12e6, 17e6}) {
        EXPECT_FALSE(value_at(curve, hertz)) << hertz;
    }
    curve.measure = Measure::dbi;
    EXPECT_NEAR(value_at(curve, 2e6).value(), 17.0, 1e-12); // straight over log frequency
}

// 220 pF in parallel on 40 m alone: both ends of the range are 220 pF higher there and as before elsewhere.
TEST(ChartContent, TheCapacitorsRangeFollowsWhatIsPluggedIn) {
    EXPECT_EQ(chart_named(made_charts(), "capacitance").curves.size(), 1U);
    EXPECT_EQ(chart_named(made_charts(), "capacitance").limits.size(), 2U);
    survey::Survey survey = *made_survey();
    design::Capacitor& capacitor = survey.request.design.capacitor;
    design::AddedCapacitor plug;
    plug.capacitance = units::picofarads(220);
    plug.bands = {"40m"};
    capacitor.added = {plug};
    const double most = (capacitor.maximum.value + capacitor.stray.value).value();
    const double least = (capacitor.minimum.value + capacitor.stray.value).value();
    const auto charts = survey_charts(survey, nullptr, {});
    const auto chart = std::find_if(charts.begin(), charts.end(), [](const ChartContent& one) {
        return one.id == QLatin1String("capacitance");
    });
    ASSERT_EQ(chart->curves.size(), 3U);
    EXPECT_TRUE(chart->limits.empty()) << "no line says a range that does not hold everywhere";
    for (const auto& [hertz, more] :
         {std::pair(7.1e6, 220e-12), std::pair(14.1e6, 0.0), std::pair(3.6e6, 0.0)}) {
        EXPECT_NEAR(value_at(chart->curves[1], hertz).value(), most + more, 1e-15) << hertz;
        EXPECT_NEAR(value_at(chart->curves[2], hertz).value(), least + more, 1e-15) << hertz;
    }
    EXPECT_THAT(description(*chart).toStdString(), HasSubstr("as plugged in"));
}

// A fixed capacitor of its own rating, plugged in on one band; one without a rating on another.
TEST(ChartContent, TheUsableVoltageFollowsWhatIsPluggedIn) {
    auto made = made_survey();
    survey::Survey survey = *made;
    design::Capacitor& capacitor = survey.request.design.capacitor;
    design::AddedCapacitor plug;
    plug.capacitance = units::picofarads(100);
    plug.peak_voltage = units::volts(1000);
    plug.bands = {"40m"};
    capacitor.added = {plug};
    const auto voltage_chart = [&survey] {
        const auto charts = survey_charts(survey, nullptr, {});
        return *std::find_if(charts.begin(), charts.end(),
                             [](const ChartContent& one) { return one.id == QLatin1String("voltage"); });
    };
    ChartContent chart = voltage_chart();
    EXPECT_TRUE(chart.limits.empty()) << "no line says a rating that does not hold everywhere";
    ASSERT_EQ(chart.curves.size(), 2U);
    EXPECT_NEAR(value_at(chart.curves[1], 7.1e6).value(), 1000, 1e-6); // in parallel: the lower one decides
    EXPECT_NEAR(value_at(chart.curves[1], 14.1e6).value(), 1700, 1e-6);
    EXPECT_FALSE(chart.title.contains(QStringLiteral("no rating"))) << chart.title.toStdString();
    capacitor.added[0].peak_voltage.reset();
    chart = voltage_chart();
    const auto on_40m = value_at(chart.curves[1], 7.1e6);
    EXPECT_TRUE(!on_40m || std::isnan(*on_40m)) << "a member without a rating leaves a gap";
    EXPECT_NEAR(value_at(chart.curves[1], 14.1e6).value(), 1700, 1e-6);
    EXPECT_THAT(chart.title.toStdString(), HasSubstr("a member has no rating"));
}

TEST(ChartContent, ZonesSayWhereNothingIsEstablishedOrReached) {
    const ChartContent chart = chart_named(made_charts(), "q");
    ASSERT_GE(chart.zones.size(), 2U);
    // 300 pF + 5 pF with 2.6 uH resonate at 5.65 MHz; below, more is needed than there is.
    EXPECT_EQ(chart.zones.front().words, QStringLiteral("out of reach"));
    EXPECT_NEAR(chart.zones.front().to_Hz, 5.65e6, 0.1e6);
    EXPECT_EQ(chart.zones.back().words, QStringLiteral("not established"));
    EXPECT_NEAR(chart.zones.back().from_Hz, test::made_limit_Hz, 0.6e6);
    EXPECT_EQ(chart.zones.back().to_Hz, chart.to_Hz);
}

TEST(ChartContent, LimitsCarryWordsAndTheSideThatHurts) {
    const Charts charts = made_charts();
    const Limit& rating = chart_named(charts, "voltage").limits.at(0);
    EXPECT_EQ(rating.value_si, 1700.0);
    EXPECT_EQ(rating.hurts, Side::above);
    EXPECT_THAT(rating.words.toStdString(), HasSubstr("rated"));
    EXPECT_TRUE(chart_named(made_charts({.rating_V = 0}), "voltage").limits.empty());
    EXPECT_THAT(chart_named(made_charts({.rating_V = 0}), "voltage").title.toStdString(),
                HasSubstr("no rating given"));
    const ChartContent& capacitance = chart_named(charts, "capacitance");
    ASSERT_EQ(capacitance.shades.size(), 1U);
    EXPECT_DOUBLE_EQ(capacitance.shades[0].low_si, 10e-12);
    EXPECT_DOUBLE_EQ(capacitance.shades[0].high_si, 300e-12);
    const Limit& width = chart_named(charts, "bandwidth").limits.at(0);
    EXPECT_EQ(width.hurts, Side::below);
}

TEST(ChartContent, ASecondDesignIsNamedAtItsCurves) {
    const auto first = made_survey();
    const auto second = made_survey({.scale = 0.5});
    for (const ChartContent& chart : survey_charts(*first, second.get(), QStringLiteral("small"))) {
        std::size_t compared = 0;
        for (const Curve& curve : chart.curves) {
            compared += curve.compared ? 1U : 0U;
            EXPECT_EQ(curve.compared, curve.label.startsWith(QStringLiteral("small: ")));
        }
        EXPECT_EQ(2 * compared, chart.curves.size()) << chart.id.toStdString();
    }
}

TEST(ChartContent, DescriptionSaysRangeBestAndGap) {
    const std::string text = description(chart_named(made_charts(), "efficiency")).toStdString();
    EXPECT_THAT(text, HasSubstr("from 1.80"));
    EXPECT_THAT(text, HasSubstr("not established"));
    EXPECT_THAT(text, HasSubstr("%"));
    EXPECT_THAT(text, HasSubstr("dBi"));
}

} // namespace
} // namespace loopwright::models
