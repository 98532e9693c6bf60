// Meshes: what they cover, how they grow, what they refuse.
#include "wire/mesh.hpp"

#include "base/error.hpp"
#include "geometry/winding.hpp"
#include "wire/loops.hpp"

#include <cmath>
#include <gtest/gtest.h>

namespace loopwright::wire::testing {
namespace {

WireModel square(double gap_m) {
    return {{polyline({{0, 0, 1}, {1, 0, 1}, {1, 0, 0}, {0, 0, 0}}, 0.01)},
            {{0, 0.5, gap_m}, {0, 2.5, gap_m}},
            {}};
}

double weight_sum(const NodeWeights& weights) {
    double sum = 0;
    for (const NodeWeight& w : weights) {
        sum += w.weight;
    }
    return sum;
}

TEST(Mesh, CoversEveryWireWithoutBreak) {
    for (const WireModel& model :
         {square(0.02), square(0.3), WireModel{{vertical_circle(0.7, 0.002)}, {{0, 0, 0.01}}, {}}}) {
        const Mesh mesh(model, {});
        double end = 0;
        geometry::Vector3 place = mesh.point(mesh.elements().front(), 0);
        for (const Element& element : mesh.elements()) {
            EXPECT_NEAR(element.begin_m, end, 1e-12);
            EXPECT_LT(norm(mesh.point(element, 0) - place), 1e-12);
            EXPECT_GT(element.length_m, 0);
            end = element.begin_m + element.length_m;
            place = mesh.point(element, 1);
        }
        EXPECT_NEAR(end, model.wires[0].length_m(), 1e-12);
        EXPECT_EQ(mesh.nodes(), mesh.elements().size()); // closed
        EXPECT_EQ(mesh.elements().back().node[1], mesh.elements().front().node[0]);
    }
}

TEST(Mesh, ElementsGrowEvenlyAwayFromGaps) {
    const Mesh mesh({{vertical_circle(1, 0.01)}, {{0, 0, 0.02}, {0, 1.5708, 0.02}}, {}}, {});
    const auto& elements = mesh.elements();
    double shortest = 1, longest = 0;
    for (std::size_t i = 0; i < elements.size(); ++i) {
        const double here = elements[i].length_m;
        const double next = elements[(i + 1) % elements.size()].length_m;
        EXPECT_LT(std::max(here, next) / std::min(here, next), 2.6) << i;
        shortest = std::min(shortest, here);
        longest = std::max(longest, here);
    }
    EXPECT_LT(shortest, 0.006);
    EXPECT_LE(longest, 3.1416 / 24 * 1.06);
    EXPECT_LT(elements.size(), 60U);
}

TEST(Mesh, RefinementDividesTheElements) {
    const Mesh one(square(0.02), {});
    const Mesh two(square(0.02), {24, 0, 2});
    EXPECT_NEAR(static_cast<double>(two.nodes()) / static_cast<double>(one.nodes()), 2, 0.3);
    const Mesh short_waves(square(0.02), {24, 1.0, 1});
    for (const Element& element : short_waves.elements()) {
        EXPECT_LT(element.length_m, 1.0 / 24 * 1.06);
    }
}

TEST(Mesh, OpenWiresHaveNoNodeAtTheirEnds) {
    const Mesh mesh({{straight({0, 0, 0}, {0, 0, 1}, 0.001)}, {{0, 0.5, 0.02}}, {}}, {});
    EXPECT_EQ(mesh.nodes() + 1, mesh.elements().size());
    EXPECT_EQ(mesh.elements().front().node[0], no_node);
    EXPECT_EQ(mesh.elements().back().node[1], no_node);
    EXPECT_EQ(mesh.first_node(0), no_node);
}

TEST(Mesh, AGapsWeightsAddToOne) {
    WireModel model = square(0.02);
    model.ports.push_back({0, 0.0, 0.05});  // across the path's beginning and a corner
    model.ports.push_back({0, 1.0, 0.4});   // around a corner
    model.ports.push_back({0, -0.3, 0.01}); // counted backwards
    const Mesh mesh(model, {});
    for (const Gap& gap : model.ports) {
        EXPECT_NEAR(weight_sum(mesh.weights_of(gap)), 1, 1e-12) << gap.at_m;
    }
    EXPECT_NEAR(weight_sum(mesh.weights_of({0, 0.123, 0})), 1, 1e-9);
}

TEST(Mesh, StacksAndSpiralsOfTheGeometryAreAccepted) {
    geometry::Winding winding;
    winding.turns = 3;
    const geometry::WirePath path = geometry::wire_path(winding);
    const Mesh mesh({{wire_along(path, 0.004)}, {opposite_gap(path), capacitor_gap(path)}, {}}, {});
    EXPECT_LT(mesh.nodes(), 120U);
    winding.arrangement = geometry::Arrangement::spiral;
    const geometry::WirePath spiral = geometry::wire_path(winding);
    EXPECT_NO_THROW(Mesh({{wire_along(spiral, 0.004)}, {opposite_gap(spiral)}, {}}, {}));
}

TEST(Mesh, RefusesConductorsThatTouch) {
    geometry::Winding winding;
    winding.turns = 2;
    winding.spacing = units::millimetres(15);
    const geometry::WirePath path = geometry::wire_path(winding);
    EXPECT_THROW(Mesh({{wire_along(path, 0.008)}, {}, {}}, {}), base::InputError);
    EXPECT_NO_THROW(Mesh({{wire_along(path, 0.006)}, {}, {}}, {}));
    WireModel crossing{{vertical_circle(1, 0.01), straight({0.5, -1, 0}, {0.5, 1, 0.001}, 0.01)}, {}, {}};
    EXPECT_THROW(Mesh(crossing, {}), base::InputError);
    crossing.wires[1] = straight({0.53, -1, 0}, {0.53, 1, 0}, 0.01);
    EXPECT_NO_THROW(Mesh(crossing, {}));
}

TEST(WireModel, RefusesWhatIsNoWire) {
    const auto refused = [](const auto& change) {
        WireModel model = square(0.02);
        change(model);
        EXPECT_THROW(check(model), base::ProgramError);
    };
    EXPECT_NO_THROW(check(square(0.02)));
    refused([](WireModel& m) { m.wires.clear(); });
    refused([](WireModel& m) { m.wires[0].stretches.clear(); });
    refused([](WireModel& m) { m.wires[0].stretches.pop_back(); }); // a break
    refused([](WireModel& m) { m.wires[0].radius_m = 0; });
    refused([](WireModel& m) { m.wires[0].radius_m = 0.5; });
    refused([](WireModel& m) { m.ports[0].wire = 1; });
    refused([](WireModel& m) { m.ports[0].width_m = 0; });
    refused([](WireModel& m) { m.ports[0].width_m = 3; });
    refused([](WireModel& m) { m.loads.push_back({0, 0, -0.1}); });
    refused([](WireModel& m) {
        m.wires[0].closed = false;
        m.ports[0].at_m = 3.995;
    });
    EXPECT_THROW(Mesh(square(0.02), {2, 0, 1}), base::ProgramError);
    EXPECT_THROW(Mesh(square(0.02), {24, 0, 0}), base::ProgramError);
}

} // namespace
} // namespace loopwright::wire::testing
