// Limits: no words cross their lines or their hatching, at any usual size of a chart.
#include "charts/plot.hpp"
#include "charts/plot_geometry.hpp"
#include "ui/chart_made_survey.hpp"

#include <QCategoryAxis>
#include <QGraphicsScene>
#include <QImage>
#include <QPainter>
#include <gtest/gtest.h>

namespace loopwright::charts {
namespace {

/// As it is painted into a picture of a size.
struct Painted {
    Painted(const models::ChartContent& content, const QSizeF& size) : plot(new Plot) {
        scene.addItem(plot);
        plot->set_content(content);
        plot->resize(size);
        scene.setSceneRect(QRectF(QPointF(0, 0), size));
        QImage image(size.toSize(), QImage::Format_RGB32);
        QPainter painter(&image);
        scene.render(&painter, QRectF(QPointF(0, 0), size), scene.sceneRect());
    }
    QGraphicsScene scene;
    Plot* plot; // the scene's
};

/// Pixels that the line of a limit and its hatching cover.
QRectF strip_of(const Plot& plot, const models::Limit& limit) {
    const PlotGeometry geometry = plot.geometry();
    const double y = geometry.px_of_y(position_on_scale(plot.content().scale, limit.value_si));
    const double above = limit.hurts == models::Side::above ? hatch_px : 0.0;
    const double below = limit.hurts == models::Side::below ? hatch_px : 0.0;
    return QRectF(QPointF(geometry.area.left(), y - above), QPointF(geometry.area.right(), y + below + 0.1))
        .intersected(geometry.area);
}

TEST(ChartLimits, NoWordsCrossTheirHatching) {
    int limits = 0;
    const auto charts = test::made_charts();
    for (const models::ChartContent& content : *charts) {
        for (const QSizeF& size : {QSizeF(400, 230), QSizeF(600, 300), QSizeF(1200, 500)}) {
            const Painted painted(content, size);
            for (const models::Limit& limit : content.limits) {
                const QRectF strip = strip_of(*painted.plot, limit);
                limits += strip.isEmpty() ? 0 : 1;
                for (const Word& word : painted.plot->words()) {
                    const QRectF common = word.rect.intersected(strip);
                    EXPECT_FALSE(common.height() > 1.0 && common.width() > 1.0)
                        << content.id.toStdString() << " at " << size.width() << ": "
                        << word.text.toStdString() << " crosses " << limit.words.toStdString();
                }
            }
        }
    }
    EXPECT_GE(limits, 9);
}

TEST(ChartLimits, CapacitanceGoesNoLowerThanAPicofarad) {
    const auto charts = test::made_charts();
    for (const models::ChartContent& content : *charts) {
        if (content.id == QStringLiteral("capacitance")) {
            const Painted painted(content, {600, 300});
            EXPECT_GE(painted.plot->geometry().y.low, 0.0); // log10 of 1 pF
        }
    }
}

TEST(ChartLimits, ALevelLineKeepsOffTheFrame) {
    models::ChartContent content;
    content.scale = {QStringLiteral("Voltage, kV peak"), 1e3, true, {}, {}};
    models::Curve level, rising;
    level.points = {{1.8e6, 5e3}, {30e6, 5e3}};
    rising.points = {{1.8e6, 1e3}, {30e6, 3e3}};
    content.curves = {level, rising};
    const Span high = value_span(content, {1.8e6, 30e6}, {0.0, 0.0});
    EXPECT_GT(high.high, position_on_scale(content.scale, 5e3) + 0.004);
    content.curves[1].points = {{1.8e6, 7e3}, {30e6, 9e3}}; // the level line is the lowest now
    const Span low = value_span(content, {1.8e6, 30e6}, {0.0, 0.0});
    EXPECT_LT(low.low, position_on_scale(content.scale, 5e3) - 0.004);
}

TEST(ChartZoom, SaysWhereOnlyFewPointsWereComputed) {
    const Painted painted(test::made_charts()->front(), {600, 300});
    const auto title = [&] { return painted.plot->axes(Qt::Horizontal).front()->titleText(); };
    EXPECT_EQ(title(), QStringLiteral("Frequency, MHz"));
    // 231 points over 1.8 to 54 MHz, evenly in ratio: two lie between 14.0 and 14.35 MHz.
    painted.plot->set_range({14.0e6, 14.35e6});
    EXPECT_TRUE(title().contains(QStringLiteral("computed points: 2"))) << title().toStdString();
}

} // namespace
} // namespace loopwright::charts
