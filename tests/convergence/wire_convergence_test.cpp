// How the thin-wire solver converges, and how far its default mesh is from the end. The converged value is
// the extrapolation of two fine meshes.
#include "geometry/winding.hpp"
#include "ground/ground_classes.hpp"
#include "support/compared.hpp"
#include "units/constants.hpp"
#include "wire/ground_matrix.hpp"
#include "wire/mesh_error.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <cstdio>
#include <gtest/gtest.h>
#include <string>

namespace loopwright::wire {
namespace {

using Complex = std::complex<double>;
using units::constants::pi;

struct LoopCase {
    std::string name;
    geometry::Winding winding;
    double radius_m;
    double frequency_Hz;
    double lowest_m = 0; ///< over average ground; 0: free space
};

geometry::Winding outline(geometry::Outline kind, double size_m, int turns = 1) {
    geometry::Winding winding;
    winding.outline = kind;
    winding.size = units::metres(size_m);
    winding.width = units::metres(size_m);
    winding.height = units::metres(1.3 * size_m);
    winding.measure =
        kind == geometry::Outline::polygon ? geometry::Measure::across_flats : geometry::Measure::diameter;
    winding.turns = turns;
    return winding;
}

std::vector<LoopCase> one_turn() {
    using geometry::Outline;
    std::vector<LoopCase> all;
    for (const double megahertz : {1.85, 7.1, 14.2, 28.5}) {
        all.push_back({"circle 1 m", outline(Outline::circle, 1), 0.011, megahertz * 1e6});
    }
    all.push_back({"thin circle", outline(Outline::circle, 0.8), 0.001, 14e6});
    all.push_back({"thick circle", outline(Outline::circle, 0.6), 0.02, 28e6});
    for (const double radius_m : {0.001, 0.008, 0.02}) {
        all.push_back({"octagon", outline(Outline::polygon, 0.9), radius_m, 21.2e6});
        all.push_back({"rectangle", outline(Outline::rectangle, 0.9), radius_m, 18.1e6});
    }
    return all;
}

std::vector<LoopCase> of_turns() {
    using geometry::Outline;
    geometry::Winding spiral = outline(Outline::circle, 0.9, 3);
    spiral.arrangement = geometry::Arrangement::spiral;
    return {{"stack of two", outline(Outline::circle, 0.9, 2), 0.003, 7.1e6},
            {"stack of three", outline(Outline::polygon, 0.7, 3), 0.003, 3.6e6},
            {"spiral of three", spiral, 0.003, 3.6e6},
            {"thin spiral of three", spiral, 0.0005, 5.3e6}};
}

/// Where the ground's kernels change fastest.
std::vector<LoopCase> near_the_ground() {
    using geometry::Outline;
    return {{"circle", outline(Outline::circle, 1), 0.011, 3.6e6, 0.1},
            {"circle", outline(Outline::circle, 1), 0.011, 28.5e6, 0.1},
            {"thin octagon", outline(Outline::polygon, 0.9), 0.001, 14.2e6, 0.1},
            {"rectangle", outline(Outline::rectangle, 0.9), 0.008, 7.1e6, 0.1}};
}

WireModel model_of(const LoopCase& one) {
    const geometry::WirePath path = geometry::wire_path(one.winding);
    return {{wire_along(path, one.radius_m)}, {opposite_gap(path), capacitor_gap(path)}, {}};
}

double lowest_point(const Mesh& mesh) {
    double lowest = 1e9;
    for (const Element& element : mesh.elements()) {
        lowest = std::min({lowest, mesh.point(element, 0).z, mesh.point(element, 1).z});
    }
    return lowest;
}

struct Result {
    double capacitance_F, resistance_ohm;
};

Result solved(const LoopCase& one, double refinement) {
    const units::Frequency frequency = units::hertz(one.frequency_Hz);
    const Solver solver(model_of(one), {24, 0, refinement}, frequency);
    FieldMatrix ground;
    if (one.lowest_m > 0) {
        const GroundMatrices matrices(solver, {false, ground::find_ground_class("average ground")->soil},
                                      {.origin = {0, 0, one.lowest_m - lowest_point(solver.mesh())}});
        ground = matrices.direct(frequency);
    }
    const Solution solution =
        solver.solve(frequency, {{{0.02, 0.02}}, {}}, one.lowest_m > 0 ? &ground : nullptr);
    const double omega = 2 * pi * one.frequency_Hz;
    const TwoPort port = two_port(solution.admittance());
    const auto load = [&](double c) { return Complex(0, omega * c); };
    const double c = resonating_capacitance_F(port, omega, load).value();
    const Complex volt = port.input_impedance(load(c));
    const std::array<Complex, 2> volts{volt, port.second_voltage(volt, load(c))};
    return {c, solution.powers(solution.currents(volts)).total_W()};
}

/// Of two meshes whose elements' lengths have the given ratio.
double extrapolated(double coarse, double fine, double ratio) {
    return fine + (fine - coarse) / (ratio * ratio - 1);
}

std::string text_of(const LoopCase& one) {
    std::array<char, 96> name{};
    (void)std::snprintf(name.data(), name.size(), "%s, wire of %g mm, %g MHz%s", one.name.c_str(),
                        2000 * one.radius_m, one.frequency_Hz / 1e6,
                        one.lowest_m > 0 ? ", lowest point 0.1 m" : "");
    return name.data();
}

/// The default mesh's row in docs/validation and its limits: 0.2 % of capacitance, 0.5 % of resistance.
void compare(const std::string& table_name, const LoopCase& one, const Result& got, double c, double r) {
    const support::Compared table("mesh", table_name);
    const std::string name = text_of(one);
    table.share(name, "C [pF]", got.capacitance_F * 1e12, c * 1e12, 0.002);
    table.share(name, "R without the capacitor [ohm]", got.resistance_ohm, r, 0.005);
}

class OneTurn : public ::testing::TestWithParam<LoopCase> {};

TEST_P(OneTurn, ConvergesInSecondOrderToWithinItsLimits) {
    const LoopCase& one = GetParam();
    const Result first = solved(one, 1);
    const Result second = solved(one, 2);
    const Result third = solved(one, 4);
    const double order = std::log2((first.capacitance_F - second.capacitance_F) /
                                   (second.capacitance_F - third.capacitance_F));
    // Second order; the graded ends of fat wires make it a little more or less on meshes as coarse as these.
    EXPECT_GT(order, 1.5);
    EXPECT_LT(order, 2.7);
    support::Compared("mesh", "Order of convergence")
        .amount(text_of(one), "of C, elements halved twice", order, 2, 0.7);
    const double c = extrapolated(second.capacitance_F, third.capacitance_F, 2);
    const double r = extrapolated(second.resistance_ohm, third.resistance_ohm, 2);
    const double error = first.capacitance_F / c - 1;
    compare("Default mesh, one turn in free space", one, first, c, r);
    // The estimate from the next coarser mesh: of the size and sign of the error.
    const MeshError estimate =
        estimate_mesh_error(model_of(one), {}, units::hertz(one.frequency_Hz), {{{0.02, 0.02}}, {}});
    EXPECT_GT(estimate.capacitance / error, 0.5);
    EXPECT_LT(estimate.capacitance / error, 5);
    EXPECT_LT(estimate.unknowns_of_coarser, estimate.unknowns);
}

INSTANTIATE_TEST_SUITE_P(All, OneTurn, ::testing::ValuesIn(one_turn()));

void expect_default_mesh(const std::string& table, const LoopCase& one) {
    const Result first = solved(one, 1);
    const Result second = solved(one, 1.5);
    const Result third = solved(one, 2.25);
    compare(table, one, first, extrapolated(second.capacitance_F, third.capacitance_F, 1.5),
            extrapolated(second.resistance_ohm, third.resistance_ohm, 1.5));
}

class SomeTurns : public ::testing::TestWithParam<LoopCase> {};

TEST_P(SomeTurns, DefaultMeshIsWithinItsLimits) {
    expect_default_mesh("Default mesh, several turns in free space", GetParam());
}

INSTANTIATE_TEST_SUITE_P(All, SomeTurns, ::testing::ValuesIn(of_turns()));

class NearTheGround : public ::testing::TestWithParam<LoopCase> {};

TEST_P(NearTheGround, DefaultMeshIsWithinItsLimits) {
    expect_default_mesh("Default mesh, near average ground", GetParam());
}

INSTANTIATE_TEST_SUITE_P(All, NearTheGround, ::testing::ValuesIn(near_the_ground()));

} // namespace
} // namespace loopwright::wire
