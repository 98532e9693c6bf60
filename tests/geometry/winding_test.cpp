#include "base/error.hpp"
#include "geometry/winding.hpp"
#include "units/constants.hpp"

#include <gtest/gtest.h>

namespace loopwright::geometry {
namespace {

using units::constants::pi;

Winding polygon(int sides, double size_m, Measure measure) {
    Winding w;
    w.outline = Outline::polygon;
    w.sides = sides;
    w.size = units::metres(size_m);
    w.measure = measure;
    return w;
}

Winding circle(double diameter_m, int turns = 1) {
    Winding w;
    w.size = units::metres(diameter_m);
    w.turns = turns;
    return w;
}

void expect_near(const Vector3& a, const Vector3& b, double tolerance) {
    EXPECT_NEAR(a.x, b.x, tolerance);
    EXPECT_NEAR(a.y, b.y, tolerance);
    EXPECT_NEAR(a.z, b.z, tolerance);
}

// Length by adding chords of every piece, independent of the closed forms.
double measured_length(const WirePath& path) {
    const int steps = 20000;
    double sum = 0;
    for (const Piece& piece : path.pieces()) {
        for (int i = 0; i < steps; ++i) {
            sum += norm(piece.point((i + 1.0) / steps) - piece.point(double(i) / steps));
        }
    }
    return sum;
}

} // namespace

TEST(Winding, EveryMeasureOfAnOctagonGivesTheSameLoop) {
    // Side 0.4 m: across flats 0.4 (1 + sqrt 2), across corners 0.4 / sin(pi/8), length 3.2 m.
    const double radius = 0.2 / std::sin(pi / 8);
    EXPECT_NEAR(circumradius(polygon(8, 0.4, Measure::side)).value(), radius, 1e-14);
    EXPECT_NEAR(circumradius(polygon(8, 0.4 * (1 + std::sqrt(2.0)), Measure::across_flats)).value(), radius,
                1e-14);
    EXPECT_NEAR(circumradius(polygon(8, 2 * radius, Measure::across_corners)).value(), radius, 1e-14);
    EXPECT_NEAR(circumradius(polygon(8, 3.2, Measure::conductor_length)).value(), radius, 1e-14);
    EXPECT_NEAR(perimeter(polygon(8, 0.4, Measure::side)).value(), 3.2, 1e-14);
    // Area of a regular octagon: 2 (1 + sqrt 2) side^2.
    EXPECT_NEAR(area(polygon(8, 0.4, Measure::side)).value(), 2 * (1 + std::sqrt(2.0)) * 0.16, 1e-14);
}

TEST(Winding, ManySidesApproachTheCircle) {
    const Winding many = polygon(3000, 1.0, Measure::across_corners);
    EXPECT_NEAR(perimeter(many).value(), pi, 1e-5);
    EXPECT_NEAR(area(many).value(), pi / 4, 1e-5);
    EXPECT_LT(perimeter(many).value(), pi);
}

TEST(Winding, MeasuresThatMeanNothingAreRefused) {
    EXPECT_THROW((void)circumradius(polygon(5, 1, Measure::across_flats)), base::InputError);
    EXPECT_THROW((void)circumradius(polygon(8, 1, Measure::diameter)), base::InputError);
    EXPECT_THROW((void)circumradius(polygon(2, 1, Measure::side)), base::InputError);
    EXPECT_THROW((void)circumradius(polygon(6, -1, Measure::side)), base::InputError);
    Winding spiral = circle(0.4, 4);
    spiral.arrangement = Arrangement::spiral;
    spiral.spacing = units::millimetres(60);
    EXPECT_THROW((void)wire_path(spiral), base::InputError);
}

TEST(WirePath, OneTurnCircleStandsWithTheCapacitorOnTop) {
    const WirePath path = wire_path(circle(1.0));
    EXPECT_NEAR(path.length_m(), pi, 1e-14);
    expect_near(path.capacitor_point(), {0, 0, 0.5}, 1e-15);
    expect_near(path.opposite_point(), {0, 0, -0.5}, 1e-15);
    expect_near(path.point(path.length_m() / 4), {0.5, 0, 0}, 1e-15);
    expect_near(path.tangent(0), {1, 0, 0}, 1e-15);
}

TEST(WirePath, PlaneTiltAndHeightFollowTheConventions) {
    Placement placement;
    placement.tilt = units::degrees(90); // horizontal: capacitor toward +y
    expect_near(wire_path(circle(1.0), placement).capacitor_point(), {0, 0.5, 0}, 1e-15);
    placement.tilt = units::degrees(30); // top toward +y
    placement.free_space = false;
    placement.clearance = units::metres(1.2);
    const WirePath path = wire_path(circle(1.0), placement);
    EXPECT_NEAR(path.opposite_point().z, 1.2, 1e-12);
    EXPECT_NEAR(path.capacitor_point().y, 0.25, 1e-12);
    EXPECT_NEAR(path.capacitor_point().z, 1.2 + std::cos(pi / 6), 1e-12);
}

TEST(WirePath, PolygonsStandOnAFlatUnlessCornerDown) {
    const double apothem = 0.5;
    const WirePath flats = wire_path(polygon(8, 1.0, Measure::across_flats));
    expect_near(flats.capacitor_point(), {0, 0, apothem}, 1e-15);
    EXPECT_TRUE(flats.smooth_before(0));
    Winding corner = polygon(4, 1.0, Measure::across_corners);
    corner.corner_down = true;
    const WirePath corners = wire_path(corner);
    expect_near(corners.capacitor_point(), {0, 0, 0.5}, 1e-15);
    expect_near(corners.opposite_point(), {0, 0, -0.5}, 1e-15);
    EXPECT_FALSE(corners.smooth_before(0));
    // Odd: a flat below, the capacitor at the top corner.
    const WirePath pentagon = wire_path(polygon(5, 1.0, Measure::across_corners));
    expect_near(pentagon.capacitor_point(), {0, 0, 0.5}, 1e-15);
    EXPECT_NEAR(pentagon.opposite_point().z, -0.5 * std::cos(pi / 5), 1e-14);
}

TEST(WirePath, RectangleHasItsCapacitorInTheMiddleOfTheTopSide) {
    Winding w;
    w.outline = Outline::rectangle;
    w.width = units::metres(1.2);
    w.height = units::metres(0.8);
    const WirePath path = wire_path(w);
    EXPECT_NEAR(path.length_m(), 4.0, 1e-14);
    expect_near(path.capacitor_point(), {0, 0, 0.4}, 1e-15);
    expect_near(path.point(0.6), {0.6, 0, 0.4}, 1e-15);
    expect_near(path.opposite_point(), {0, 0, -0.4}, 1e-14);
}

TEST(WirePath, StackRisesEvenlyAndClosesThroughItsLeads) {
    Winding w = circle(0.8, 3);
    w.spacing = units::millimetres(40);
    w.lead = units::millimetres(50);
    const WirePath path = wire_path(w);
    // Three helical turns, two leads, a link of three spacings.
    const double turns = 3 * std::hypot(pi * 0.8, 0.04);
    EXPECT_NEAR(path.length_m(), turns + 2 * 0.05 + 3 * 0.04, 1e-12);
    EXPECT_NEAR(measured_length(path), path.length_m(), 1e-6);
    expect_near(path.capacitor_point(), {0, 0, 0.45}, 1e-15);
    expect_near(path.opposite_point(), {0, 0, -0.4}, 1e-12);
    w.measure = Measure::conductor_length;
    w.size = units::metres(turns);
    EXPECT_NEAR(circumradius(w).value(), 0.4, 1e-12);
    EXPECT_NEAR(turn_area(w).value(), 3 * pi * 0.16, 1e-12);
}

TEST(WirePath, HalfTurnAboutTheCapacitorLineReversesAStack) {
    Winding w = polygon(8, 0.9, Measure::across_flats);
    w.turns = 2;
    w.spacing = units::millimetres(120);
    const WirePath path = wire_path(w);
    ASSERT_TRUE(path.reversible());
    for (const double s : {0.03, 0.2, 1.1, 2.7}) {
        const Vector3 p = path.point(s);
        expect_near(path.point(path.length_m() - s), {-p.x, -p.y, p.z}, 1e-12);
    }
}

TEST(WirePath, SpiralKeepsItsSpacingAndItsLength) {
    Winding w = circle(1.0, 3);
    w.arrangement = Arrangement::spiral;
    w.spacing = units::millimetres(40);
    const WirePath path = wire_path(w);
    EXPECT_FALSE(path.reversible());
    EXPECT_NEAR(measured_length(path), path.length_m(), 1e-6);
    // Mean radii of the turns 0.50, 0.46, 0.42 m. Half the length of a turn is passed a little before half
    // its angle: by about a hundredth of the spacing in radius.
    const auto radius = [&](std::size_t turn, double share) {
        const Vector3 p = path.pieces().at(turn + 2).point(share);
        return std::hypot(p.x, p.z);
    };
    EXPECT_NEAR(radius(0, 0.5), 0.50, 6e-4);
    EXPECT_NEAR(radius(1, 0.5), 0.46, 6e-4);
    EXPECT_NEAR(radius(0, 0.25) - radius(1, 0.25), 0.04, 1e-4);
    EXPECT_NEAR(turn_area(w).value(), pi * (0.25 + 0.2116 + 0.1764), 1e-12);
}

TEST(WirePath, TangentIsTheDerivativeOfThePoint) {
    Winding w = circle(0.8, 2);
    w.arrangement = Arrangement::spiral;
    for (const auto arrangement : {Arrangement::stack, Arrangement::spiral}) {
        w.arrangement = arrangement;
        const WirePath path = wire_path(w);
        for (const double s : {0.02, 0.3, 1.7, 3.3}) {
            const double h = 1e-6;
            const Vector3 slope = (0.5 / h) * (path.point(s + h) - path.point(s - h));
            expect_near(path.tangent(s), slope, 1e-8);
        }
    }
}

} // namespace loopwright::geometry
