// A chart as a person uses it: pointer, keys, zoom, dark and light, edits.
#include "charts/chart_grid.hpp"
#include "charts/chart_widget.hpp"
#include "charts/plot.hpp"
#include "ui/chart_made_survey.hpp"

#include <QApplication>
#include <QCategoryAxis>
#include <QClipboard>
#include <QImage>
#include <QLineSeries>
#include <QSignalSpy>
#include <QTest>
#include <gtest/gtest.h>

#include <cmath>

namespace loopwright::charts {
namespace {

class ChartWidgetTest : public ::testing::Test {
protected:
    ChartWidgetTest() : grid_(group_) {
        grid_.resize(1200, 700);
        grid_.set_charts(test::made_charts());
        grid_.show();
        QTest::qWait(30);
    }
    ChartWidget& chart(std::size_t i = 0) { return *grid_.charts().at(i); }
    Plot& plot(std::size_t i = 0) { return chart(i).plot(); }
    QWidget* viewport(std::size_t i = 0) {
        return qobject_cast<QAbstractScrollArea*>(&chart(i).view())->viewport();
    }
    QPoint pixel_of(double hertz) {
        return {static_cast<int>(std::lround(plot().geometry().px_of_frequency(hertz))),
                static_cast<int>(plot().plotArea().center().y())};
    }
    ChartGroup group_;
    ChartGrid grid_;
};

TEST_F(ChartWidgetTest, AnEditKeepsChartsAndSeries) {
    const auto charts = grid_.charts();
    const auto series = plot(5).curves_drawn();
    const int axes = static_cast<int>(plot().axes().size());
    grid_.set_charts(test::made_charts({.scale = 0.7}));
    EXPECT_EQ(grid_.charts(), charts);
    EXPECT_EQ(plot(5).curves_drawn(), series);
    EXPECT_EQ(plot().axes().size(), axes);
    // The points are the new ones, in positions: log10 of hertz and of per cent.
    const models::Curve& curve = chart().content().curves.front();
    const QPointF drawn = plot().curves_drawn().front()->at(100);
    EXPECT_NEAR(drawn.x(), std::log10(curve.points[100].x()), 1e-12);
    EXPECT_NEAR(drawn.y(), std::log10(100 * curve.points[100].y()), 1e-12);
}

TEST_F(ChartWidgetTest, WhatIsNotEstablishedIsAGap) {
    const QLineSeries* series = plot().curves_drawn().front();
    int gaps = 0;
    for (const QPointF& point : series->points()) {
        const bool beyond = std::pow(10.0, point.x()) > test::made_limit_Hz;
        EXPECT_EQ(std::isnan(point.y()), beyond);
        gaps += beyond ? 1 : 0;
    }
    EXPECT_GT(gaps, 10);
    EXPECT_EQ(series->count(), 231);
}

TEST_F(ChartWidgetTest, PointerMovesOneCrosshairThroughAllCharts) {
    QTest::mouseMove(viewport(), pixel_of(10e6));
    EXPECT_TRUE(group_.pointing());
    const double at = group_.crosshair_Hz();
    EXPECT_NEAR(at, 10e6, 0.1e6);
    for (std::size_t i = 0; i < grid_.charts().size(); ++i) {
        EXPECT_EQ(plot(i).crosshair(), at);
    }
    QEvent leave(QEvent::Leave);
    QApplication::sendEvent(&chart().view(), &leave);
    EXPECT_FALSE(plot(3).crosshair());
}

TEST_F(ChartWidgetTest, ClickPicksTheFrequency) {
    QSignalSpy picked(&group_, &ChartGroup::picked);
    QTest::mouseClick(viewport(), Qt::LeftButton, {}, pixel_of(14.1e6));
    ASSERT_EQ(picked.count(), 1);
    EXPECT_NEAR(picked.at(0).at(0).toDouble(), 14.1e6, 0.15e6);
    EXPECT_FALSE(group_.zoomed());
}

TEST_F(ChartWidgetTest, DraggingZoomsAllChartsAndStaysInside) {
    QTest::mousePress(viewport(), Qt::LeftButton, {}, pixel_of(10e6));
    QTest::mouseMove(viewport(), pixel_of(15e6));
    QTest::mouseMove(viewport(), pixel_of(20e6));
    QTest::mouseRelease(viewport(), Qt::LeftButton, {}, pixel_of(20e6));
    EXPECT_NEAR(group_.range().low, 10e6, 0.2e6);
    EXPECT_NEAR(group_.range().high, 20e6, 0.4e6);
    for (std::size_t i = 0; i < grid_.charts().size(); ++i) {
        EXPECT_EQ(plot(i).range(), group_.range());
    }
    group_.set_range({1e3, 1e10});
    EXPECT_EQ(group_.range(), group_.whole());
    for (int i = 0; i < 40; ++i) {
        group_.zoom(0.5, 54e6);
    }
    EXPECT_LE(group_.range().high, 54e6);
    EXPECT_GT(group_.range().high, group_.range().low * 1.005);
    group_.reset_range();
    EXPECT_EQ(plot(2).range(), (Span{1.8e6, 54e6}));
}

TEST_F(ChartWidgetTest, KeysDoWhatThePointerDoes) {
    grid_.activateWindow();
    chart().view().setFocus();
    group_.set_focus(7.074e6, QStringLiteral("40m"));
    QSignalSpy picked(&group_, &ChartGroup::picked);
    QTest::keyClick(&chart().view(), Qt::Key_Right);
    const double one = group_.crosshair_Hz();
    EXPECT_GT(one, 7.074e6);
    EXPECT_LT(one, 7.3e6);
    QTest::keyClick(&chart().view(), Qt::Key_Right, Qt::ControlModifier);
    EXPECT_GT(group_.crosshair_Hz(), one * 1.05);
    QTest::keyClick(&chart().view(), Qt::Key_Return);
    ASSERT_EQ(picked.count(), 1);
    EXPECT_EQ(picked.at(0).at(0).toDouble(), group_.crosshair_Hz());
    QTest::keyClick(&chart().view(), Qt::Key_Plus);
    EXPECT_TRUE(group_.zoomed());
    QTest::keyClick(&chart().view(), Qt::Key_End);
    EXPECT_DOUBLE_EQ(group_.crosshair_Hz(), group_.range().high);
    QTest::keyClick(&chart().view(), Qt::Key_0);
    EXPECT_FALSE(group_.zoomed());
    QTest::keyClick(&chart().view(), Qt::Key_Escape);
    EXPECT_FALSE(group_.pointing());
}

TEST_F(ChartWidgetTest, DarkPaletteAtRunTimeChangesAxesAndPaper) {
    const auto axis_colour = [this] { return plot().axes(Qt::Horizontal).front()->labelsBrush().color(); };
    const QColor light_ink = axis_colour();
    const QColor light_pen = plot().curves_drawn().front()->pen().color();
    QPalette dark = grid_.palette();
    dark.setColor(QPalette::Base, QColor(30, 30, 32));
    dark.setColor(QPalette::Text, QColor(230, 230, 230));
    grid_.setPalette(dark);
    QCoreApplication::processEvents();
    EXPECT_EQ(axis_colour(), QColor(230, 230, 230));
    EXPECT_NE(axis_colour(), light_ink);
    EXPECT_EQ(plot().backgroundBrush().color(), QColor(30, 30, 32));
    EXPECT_NE(plot().curves_drawn().front()->pen().color(), light_pen);
    const QImage picture = chart().grab().toImage();
    EXPECT_LT(picture.pixelColor(3, picture.height() - 4).lightness(), 60);
}

TEST_F(ChartWidgetTest, EnlargedToThePageAndBack) {
    grid_.enlarge(2);
    EXPECT_EQ(chart(2).size(), grid_.viewport()->size());
    EXPECT_FALSE(chart(0).isVisible());
    // Hidden charts catch up when they are seen again.
    grid_.set_charts(test::made_charts({.scale = 0.3}));
    QTest::keyClick(&grid_, Qt::Key_Escape);
    EXPECT_EQ(grid_.enlarged(), -1);
    EXPECT_TRUE(chart(0).isVisible());
    const models::Curve& curve = chart(0).content().curves.front();
    EXPECT_NEAR(plot(0).curves_drawn().front()->at(50).y(), std::log10(100 * curve.points[50].y()), 1e-12);
}

TEST_F(ChartWidgetTest, WordsStandInsideAndApart) {
    QTest::qWait(50);
    for (std::size_t i = 0; i < grid_.charts().size(); ++i) {
        const QList<Word>& words = plot(i).words();
        ASSERT_FALSE(words.isEmpty());
        int curves = 0;
        for (const Word& word : words) {
            // Names of bands stand in the strip above the plot, everything else inside it.
            const QRectF room = word.kind == Word::Kind::band
                                    ? QRectF(plot(i).plotArea().adjusted(-20, 0, 20, 0))
                                          .united(QRectF(plot(i).plotArea().left() - 20, 0,
                                                         plot(i).plotArea().width() + 40, 1))
                                    : plot(i).plotArea().adjusted(-1, -1, 1, 1);
            EXPECT_TRUE(room.contains(word.rect)) << word.text.toStdString();
            curves += word.kind == Word::Kind::curve ? 1 : 0;
            for (const Word& other : words) {
                const QRectF common = word.rect.intersected(other.rect);
                EXPECT_TRUE(&word == &other || common.width() * common.height() < 4)
                    << word.text.toStdString() << " over " << other.text.toStdString();
            }
        }
        EXPECT_EQ(curves, static_cast<int>(chart(i).content().curves.size()));
    }
}

TEST_F(ChartWidgetTest, SaysWhatItShowsAndIsCopied) {
    EXPECT_TRUE(chart().view().accessibleName().contains(QStringLiteral("Efficiency")));
    const QString before = chart().view().accessibleDescription();
    grid_.set_charts(test::made_charts({.scale = 0.3}));
    EXPECT_NE(chart().view().accessibleDescription(), before);
    chart().copy();
    EXPECT_GT(QApplication::clipboard()->image().width(), 1000);
}

TEST_F(ChartWidgetTest, WheelIsLeftToThePage) {
    QWheelEvent wheel(QPointF(50, 50), viewport()->mapToGlobal(QPointF(50, 50)), QPoint(), QPoint(0, 120),
                      Qt::NoButton, Qt::NoModifier, Qt::NoScrollPhase, false);
    QApplication::sendEvent(viewport(), &wheel);
    EXPECT_FALSE(group_.zoomed());
}

} // namespace
} // namespace loopwright::charts
