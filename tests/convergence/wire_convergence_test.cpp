// How the thin-wire solver converges, and how far its default mesh is from the end. The converged value is
// the extrapolation of two fine meshes.
#include "geometry/winding.hpp"
#include "units/constants.hpp"
#include "wire/mesh_error.hpp"

#include <array>
#include <cmath>
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
    all.push_back({"octagon", outline(Outline::polygon, 0.9), 0.008, 21.2e6});
    all.push_back({"rectangle", outline(Outline::rectangle, 0.9), 0.008, 18.1e6});
    return all;
}

std::vector<LoopCase> of_turns() {
    using geometry::Outline;
    return {{"stack of two", outline(Outline::circle, 0.9, 2), 0.003, 7.1e6},
            {"stack of three", outline(Outline::polygon, 0.7, 3), 0.003, 3.6e6}};
}

WireModel model_of(const LoopCase& one) {
    const geometry::WirePath path = geometry::wire_path(one.winding);
    return {{wire_along(path, one.radius_m)}, {opposite_gap(path), capacitor_gap(path)}, {}};
}

struct Result {
    double capacitance_F, resistance_ohm;
};

Result solved(const LoopCase& one, double refinement) {
    const units::Frequency frequency = units::hertz(one.frequency_Hz);
    const Solution solution =
        Solver(model_of(one), {24, 0, refinement}, frequency).solve(frequency, {{{0.02, 0.02}}, {}});
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

class OneTurn : public ::testing::TestWithParam<LoopCase> {};

TEST_P(OneTurn, ConvergesInSecondOrderToWithinItsLimits) {
    const LoopCase& one = GetParam();
    const Result first = solved(one, 1);
    const Result second = solved(one, 2);
    const Result third = solved(one, 4);
    const double order = std::log2((first.capacitance_F - second.capacitance_F) /
                                   (second.capacitance_F - third.capacitance_F));
    EXPECT_GT(order, 1.5);
    EXPECT_LT(order, 2.7);
    const double c = extrapolated(second.capacitance_F, third.capacitance_F, 2);
    const double r = extrapolated(second.resistance_ohm, third.resistance_ohm, 2);
    const double error = first.capacitance_F / c - 1;
    EXPECT_LT(std::abs(error), 0.002);
    EXPECT_LT(std::abs(first.resistance_ohm / r - 1), 0.005);
    RecordProperty("capacitance_error", std::to_string(error));
    RecordProperty("resistance_error", std::to_string(first.resistance_ohm / r - 1));
    // The estimate from the next coarser mesh: of the size and sign of the error.
    const MeshError estimate =
        estimate_mesh_error(model_of(one), {}, units::hertz(one.frequency_Hz), {{{0.02, 0.02}}, {}});
    EXPECT_GT(estimate.capacitance / error, 0.5);
    EXPECT_LT(estimate.capacitance / error, 5);
    EXPECT_LT(estimate.unknowns_of_coarser, estimate.unknowns);
}

INSTANTIATE_TEST_SUITE_P(All, OneTurn, ::testing::ValuesIn(one_turn()));

class SomeTurns : public ::testing::TestWithParam<LoopCase> {};

TEST_P(SomeTurns, DefaultMeshIsWithinItsLimits) {
    const LoopCase& one = GetParam();
    const Result first = solved(one, 1);
    const Result second = solved(one, 1.5);
    const Result third = solved(one, 2.25);
    const double c = extrapolated(second.capacitance_F, third.capacitance_F, 1.5);
    const double r = extrapolated(second.resistance_ohm, third.resistance_ohm, 1.5);
    EXPECT_NEAR(first.capacitance_F / c, 1, 0.002);
    EXPECT_NEAR(first.resistance_ohm / r, 1, 0.005);
    RecordProperty("capacitance_error", std::to_string(first.capacitance_F / c - 1));
    RecordProperty("resistance_error", std::to_string(first.resistance_ohm / r - 1));
}

INSTANTIATE_TEST_SUITE_P(All, SomeTurns, ::testing::ValuesIn(of_turns()));

} // namespace
} // namespace loopwright::wire
