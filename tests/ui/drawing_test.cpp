// The drawing of the loop: to scale, inside its rectangle, readable on any palette.
#include "drawings/loop_drawing.hpp"
#include "drawings/loop_views.hpp"
#include "ui/harness.hpp"

#include <QImage>
#include <QPainter>

#include <cmath>

using namespace loopwright;

namespace {

QImage painted(const design::Design& design, const QSize& size, const QPalette& palette) {
    QImage image(size, QImage::Format_RGB32);
    image.fill(palette.color(QPalette::Base));
    QPainter painter(&image);
    const drawings::LoopDrawing drawing(design, units::UnitSystem::metric);
    drawing.paint(painter, QRectF(20, 20, size.width() - 40, size.height() - 40), palette);
    return image;
}

bool margin_is_empty(const QImage& image) {
    const QRgb paper = image.pixel(0, 0);
    for (int x = 0; x < image.width(); ++x) {
        for (int y = 0; y < image.height(); ++y) {
            const bool margin = x < 18 || y < 18 || x >= image.width() - 18 || y >= image.height() - 18;
            if (margin && image.pixel(x, y) != paper) {
                return false;
            }
        }
    }
    return true;
}

int marked_pixels(const QImage& image) {
    int count = 0;
    for (int x = 0; x < image.width(); ++x) {
        for (int y = 0; y < image.height(); ++y) {
            count += image.pixel(x, y) != image.pixel(0, 0) ? 1 : 0;
        }
    }
    return count;
}

design::Design rectangle() {
    design::Design design;
    design.loop.outline = design::Outline::rectangle;
    design.loop.width = units::metres(2.0);
    design.loop.height = units::metres(0.5);
    return design;
}

TEST(LoopViewsTest, ExtentIsTheSizeOfTheCentreLine) {
    const auto circle = drawings::views_of(design::Design{});
    EXPECT_NEAR(circle.front.extent.width(), 1.0, 1e-3);
    EXPECT_NEAR(circle.front.extent.height(), 1.0, 1e-3);
    EXPECT_FALSE(circle.side.has_value());
    EXPECT_FALSE(circle.clearance_m.has_value()); // free space
    const auto flat = drawings::views_of(rectangle());
    EXPECT_NEAR(flat.front.extent.width(), 2.0, 1e-9);
    EXPECT_NEAR(flat.front.extent.height(), 0.5, 1e-9);
}

TEST(LoopViewsTest, StackIsSeenFromTheSideToo) {
    design::Design design;
    design.loop.turns = 3;
    design.loop.turn_spacing = units::millimetres(40);
    const auto views = drawings::views_of(design);
    ASSERT_TRUE(views.side.has_value());
    EXPECT_NEAR(views.side->extent.width(), 3 * 0.04, 0.01); // rises by the spacing a turn
    EXPECT_NEAR(views.side->extent.height(), 1.0 + 0.05, 0.06);
}

TEST(LoopViewsTest, HorizontalLoopLiesFlatAtItsHeight) {
    design::Design design;
    design.site.plane = design::Plane::horizontal;
    design.site.ground.kind = design::GroundKind::perfect;
    design.site.lowest_point = units::metres(3);
    const auto views = drawings::views_of(design);
    ASSERT_TRUE(views.side.has_value());
    EXPECT_NEAR(views.side->extent.height(), 0.0, 1e-6);
    EXPECT_NEAR(views.clearance_m.value_or(0), 3.0, 1e-12);
}

TEST(LoopDrawingTest, StaysInsideAndShowsOnEveryPalette) {
    design::Design octagon = rectangle();
    octagon.loop.outline = design::Outline::polygon;
    octagon.loop.size_is = design::SizeMeaning::across_flats;
    design::Design stack;
    stack.loop.turns = 2;
    stack.coupling.emplace();
    design::Design high = stack;
    high.site.ground.kind = design::GroundKind::perfect;
    high.site.lowest_point = units::metres(12);
    design::Design tilted = high;
    tilted.loop.turns = 1;
    tilted.site.ground.kind = design::GroundKind::soil;
    tilted.site.ground.class_name = "average ground";
    tilted.site.tilt = units::degrees(40);
    tilted.site.standing_level = units::metres(4);
    design::Design flat = tilted;
    flat.site.plane = design::Plane::horizontal;
    for (const design::Design& design : {design::Design{}, rectangle(), octagon, stack, high, tilted, flat}) {
        for (const QPalette& palette : {test::light_palette(), test::dark_palette()}) {
            for (const QSize& size : {QSize(480, 520), QSize(320, 320), QSize(1200, 500)}) {
                const QImage image = painted(design, size, palette);
                EXPECT_TRUE(margin_is_empty(image))
                    << size.width() << " turns " << design.loop.turns << " sides " << design.loop.sides
                    << " high " << design.site.lowest_point.value.value();
                EXPECT_GT(marked_pixels(image), 800);
            }
        }
    }
}

TEST(LoopDrawingTest, CurrentStaysInsideWithItsNumbers) {
    const std::vector<jobs::CurrentSample> samples = {
        {0.01, 1.2, 0}, {0.25, 1.6, 0}, {0.5, 2, 0}, {0.99, 1.2, 0}};
    for (const int turns : {1, 2}) {
        design::Design design = rectangle();
        design.loop.turns = turns;
        const QImage bare = painted(design, QSize(480, 520), test::light_palette());
        QImage image(bare.size(), QImage::Format_RGB32);
        image.fill(test::light_palette().color(QPalette::Base));
        QPainter painter(&image);
        drawings::LoopDrawing drawing(design, units::UnitSystem::metric);
        drawing.set_current(drawings::CurrentOverlay(samples, QStringLiteral("7.1 MHz, 5 W, full wave")));
        drawing.paint(painter, QRectF(20, 20, 440, 480), test::light_palette());
        painter.end();
        EXPECT_TRUE(margin_is_empty(image)) << turns;
        EXPECT_GT(marked_pixels(image), marked_pixels(bare) + 300);
        EXPECT_TRUE(drawing.description().contains(QStringLiteral("up to 2.00")))
            << drawing.description().toStdString();
    }
}

TEST(LoopDrawingTest, WordsSayWhatItShows) {
    const drawings::LoopDrawing metric(rectangle(), units::UnitSystem::metric);
    EXPECT_TRUE(metric.description().contains(QStringLiteral("2\u2009m wide")) ||
                metric.description().contains(QStringLiteral("2.00\u2009m wide")))
        << metric.description().toStdString();
    const drawings::LoopDrawing imperial(rectangle(), units::UnitSystem::imperial);
    EXPECT_TRUE(imperial.description().contains(QStringLiteral("ft wide")))
        << imperial.description().toStdString();
}

} // namespace
