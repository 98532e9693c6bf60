// The drawing of the loop: to scale, inside its rectangle, readable on any palette.
#include "drawings/dimension.hpp"
#include "drawings/loop_drawing.hpp"
#include "drawings/loop_views.hpp"
#include "ui/harness.hpp"

#include <QFontMetricsF>
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

TEST(LoopViewsTest, InACornerTheCouplingLoopStandsFurtherIn) {
    design::Design design;
    design.loop.outline = design::Outline::polygon;
    design.loop.sides = 4;
    design.loop.size_is = design::SizeMeaning::side;
    design.loop.size = units::metres(3);
    design.loop.corner_down = true;
    design.coupling.emplace();
    design.coupling->diameter = units::metres(0.8);
    design.coupling->axis_offset = units::metres(0.1);
    const auto views = drawings::views_of(design);
    ASSERT_TRUE(views.coupling_centre);
    // Half a metre from both sides of a right angle: sqrt(2) times that from the corner.
    EXPECT_NEAR(views.coupling_centre->y() - views.front.extent.top(), 0.5 * std::sqrt(2.0), 0.01);
}

design::Design coupled(design::CouplingKind kind) {
    design::Design design;
    design.coupling.emplace();
    design.coupling->kind = kind;
    design.coupling->tap_length = units::metres(0.4);
    design.coupling->tap_spacing = units::millimetres(60);
    design.coupling->conductor_diameter = units::millimetres(8);
    return design;
}

TEST(LoopViewsTest, TheRodIsToScaleBesideTheConductor) {
    const auto views = drawings::views_of(coupled(design::CouplingKind::tap));
    ASSERT_TRUE(views.rod.has_value());
    EXPECT_FALSE(views.core || views.coupling_centre);
    EXPECT_DOUBLE_EQ(views.rod->width_m, 0.008);
    const QPolygonF& path = views.rod->path;
    ASSERT_GE(path.size(), 4);
    // From opposite the capacitor (below) in a circle 60 mm inside the conductor's, over 0.4 m of 1 m round.
    EXPECT_NEAR(path.first().x(), 0.0, 1e-6);
    EXPECT_NEAR(path.first().y(), -0.5, 1e-6);
    for (qsizetype i = 1; i + 1 < path.size(); ++i) {
        EXPECT_NEAR(std::hypot(path[i].x(), path[i].y()), 0.44, 1e-6);
    }
    EXPECT_NEAR(std::hypot(path.last().x(), path.last().y()), 0.5, 1e-6);
    const double turned = std::acos(-path.last().y() / 0.5);
    EXPECT_NEAR(turned * 0.5, 0.4, 1e-6);
}

TEST(LoopViewsTest, TheCoreSitsOnTheConductorOppositeTheCapacitor) {
    const auto views = drawings::views_of(coupled(design::CouplingKind::transformer));
    ASSERT_TRUE(views.core.has_value());
    EXPECT_NEAR(views.core->at.x(), 0.0, 1e-6);
    EXPECT_NEAR(views.core->at.y(), -0.5, 1e-6);
    EXPECT_NEAR(std::abs(views.core->along.x()), 1.0, 1e-6);
}

TEST(LoopDrawingTest, RodAndCoreAreDrawnAndSaidInWords) {
    const QImage bare = painted(design::Design{}, QSize(480, 520), test::light_palette());
    for (const auto kind : {design::CouplingKind::tap, design::CouplingKind::transformer}) {
        const design::Design design = coupled(kind);
        const QImage image = painted(design, bare.size(), test::light_palette());
        EXPECT_GT(marked_pixels(image), marked_pixels(bare) + 200);
        const QString words = drawings::LoopDrawing(design, units::UnitSystem::metric).description();
        const bool tap = kind == design::CouplingKind::tap;
        EXPECT_TRUE(words.contains(tap ? QStringLiteral("rod 0.4\u2009m long, 60\u2009mm off")
                                       : QStringLiteral("core, 5 turns")))
            << words.toStdString();
    }
}

// In a small drawing the coupling loop's words are wider than the loop is at their height: they go into more
// lines and stay inside the conductor.
TEST(LoopDrawingTest, AWordInsideTheLoopDoesNotCrossTheConductor) {
    QImage image(400, 400, QImage::Format_RGB32);
    image.setDotsPerMeterX(3780);
    image.setDotsPerMeterY(3780);
    QPainter painter(&image);
    const QRectF outline(120, 120, 160, 160);
    const QString words = QStringLiteral("coupling loop 0.18\u2009m");
    const QFontMetricsF metrics(painter.font(), painter.device());
    const double line = metrics.height(), y = 250;
    ASSERT_GT(metrics.horizontalAdvance(words), 105) << "else there is nothing to wrap";
    const QRectF room = drawings::room_inside(outline, y + 0.5 * line, 0.4 * line, 5 * line, image.rect());
    const QRectF box = drawings::paint_label(painter, {200, y}, words, room);
    const QRectF alone = drawings::paint_label(painter, {200, y}, words, image.rect());
    const auto inside = [&outline](const QPointF& point) {
        return std::hypot(point.x() - outline.center().x(), point.y() - outline.center().y()) < 80;
    };
    for (const QPointF& corner : {box.topLeft(), box.topRight(), box.bottomLeft(), box.bottomRight()}) {
        EXPECT_TRUE(inside(corner)) << corner.x() << ' ' << corner.y();
    }
    EXPECT_FALSE(inside(alone.bottomLeft())) << "the same words in one line do";
    EXPECT_GT(box.height(), 1.5 * alone.height());
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
    design::Design rod_in_octagon = octagon;
    rod_in_octagon.coupling = coupled(design::CouplingKind::tap).coupling;
    design::Design small = coupled(design::CouplingKind::tap);
    small.loop.size = units::metres(0.3);
    small.coupling->tap_length = units::metres(0.2);
    small.coupling->tap_spacing = units::millimetres(20);
    for (const design::Design& design :
         {design::Design{}, rectangle(), octagon, stack, high, tilted, flat, rod_in_octagon, small,
          coupled(design::CouplingKind::tap), coupled(design::CouplingKind::transformer)}) {
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
