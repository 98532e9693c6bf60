// What an edit does not change is not computed again: which solver, which ground matrices and which points
// are the ones that are there already.
#include "design/winding.hpp"
#include "loop/design_parts.hpp"
#include "loop/detail/solver_cache.hpp"
#include "loop/detail/underground.hpp"
#include "loop/full_wave.hpp"
#include "loop/loop_model.hpp"

#include <algorithm>
#include <chrono>
#include <gtest/gtest.h>

namespace loopwright::loop {
namespace {

design::Design standing_over_soil() {
    design::Design d;
    d.loop.size = units::metres(0.947); // seen by no other test
    d.capacitor.maximum = units::picofarads(500);
    d.site.ground.kind = design::GroundKind::soil;
    return d;
}

std::shared_ptr<const wire::Solver> solver_for(const design::Design& d) {
    return detail::solver_of(design::as_winding(d.loop),
                             conductor_of(d.conductor).equivalent_radius().value());
}

std::shared_ptr<const wire::GroundMatrices> ground_for(const design::Design& d,
                                                       Workload workload = Workload::many_frequencies) {
    return detail::ground_of(solver_for(d), detail::underground_of(d.site.ground),
                             geometry::frame_of(design::as_winding(d.loop), placement_of(d.site)), workload);
}

TEST(SolverCache, EditsThatLeaveTheWireLeaveTheStaticPart) {
    const design::Design d = standing_over_soil();
    const auto solver = solver_for(d);
    design::Design edited = d;
    edited.site.lowest_point = units::metres(4);
    edited.site.tilt = units::degrees(30);
    edited.site.ground.relative_permittivity = 30;
    edited.station.power = units::watts(100);
    edited.capacitor.loss.q = 300;
    edited.joints.push_back({2, {units::ohms(0.001), {}}});
    EXPECT_EQ(solver_for(edited), solver);
    edited.loop.gap = units::millimetres(30);
    EXPECT_NE(solver_for(edited), solver);
    edited = d;
    edited.conductor.diameter = units::millimetres(15);
    EXPECT_NE(solver_for(edited), solver);
}

TEST(SolverCache, GroundIsFilledAnewForAnotherPlaceOrSoilOnly) {
    const design::Design d = standing_over_soil();
    const auto ground = ground_for(d);
    design::Design edited = d;
    edited.station.power = units::watts(100);
    edited.capacitor.maximum = units::picofarads(200);
    edited.capacitor.loss.q = 300;
    EXPECT_EQ(ground_for(edited), ground);
    edited.site.lowest_point = units::metres(4);
    EXPECT_NE(ground_for(edited), ground);
    edited = d;
    edited.site.ground.relative_permittivity = 30;
    EXPECT_NE(ground_for(edited), ground);
}

/// Milliseconds of one question.
double asked_ms(const design::Design& d, double megahertz) {
    const auto model = make_model(d, Model::full_wave);
    const auto begin = std::chrono::steady_clock::now();
    static_cast<void>(model->at(units::megahertz(megahertz), d.station.power.value, 2.0));
    return std::chrono::duration<double, std::milli>(std::chrono::steady_clock::now() - begin).count();
}

// A solved point takes tenths of a millisecond, a kept one microseconds: the least of ten is compared.
TEST(SolverCache, EditsOfPowerRatingAndRangeSolveNothing) {
    design::Design d = standing_over_soil();
    double solved = 1e9, kept = 1e9, lossy = 1e9;
    static_cast<void>(asked_ms(d, 14.0)); // fills the octave's ground
    for (int i = 0; i < 10; ++i) {
        solved = std::min(solved, asked_ms(d, 14.1 + 0.01 * i));
    }
    d.station.power = units::watts(50);
    d.capacitor.maximum = units::picofarads(300);
    d.capacitor.rating.peak_voltage = units::volts(2000);
    for (int i = 0; i < 10; ++i) {
        kept = std::min(kept, asked_ms(d, 14.1 + 0.01 * i));
    }
    d.capacitor.loss.q = 300; // another point, of the solution that is there
    for (int i = 0; i < 10; ++i) {
        lossy = std::min(lossy, asked_ms(d, 14.1 + 0.01 * i));
    }
    EXPECT_LT(kept, 0.3 * solved);
    EXPECT_GT(lossy, 3 * kept);
}

// More passing designs than are kept of any kind.
TEST(SolverCache, PassingDesignsPushOutNothing) {
    const design::Design d = standing_over_soil();
    const auto ground = ground_for(d);
    const auto solved = detail::solved_frequencies_of(solver_for(d), ground, Workload::few_frequencies);
    const auto f = units::megahertz(14);
    design::Design raised = d;
    raised.site.lowest_point = units::metres(1.5);
    const auto kept = FullWave(raised, Workload::few_frequencies).solved(f);
    for (int i = 0; i < 10; ++i) {
        raised.site.lowest_point = units::metres(1.5 + 0.1 * i);
        const auto passed = FullWave(raised, Workload::passing).solved(f);
        ASSERT_TRUE(kept && passed);
        if (i == 0) { // the same solution
            EXPECT_EQ(passed->total, kept->total);
            EXPECT_EQ(passed->tuning_capacitance, kept->tuning_capacitance);
        }
    }
    EXPECT_EQ(ground_for(d), ground);
    EXPECT_EQ(detail::solved_frequencies_of(solver_for(d), ground, Workload::few_frequencies), solved);
}

TEST(SolverCache, TheCapacitorHasNoPartInWhatIsSolvedAndTheConductorHas) {
    const design::Design d = standing_over_soil();
    const auto solved =
        detail::solved_frequencies_of(solver_for(d), ground_for(d), Workload::many_frequencies);
    EXPECT_EQ(detail::solved_frequencies_of(solver_for(d), ground_for(d), Workload::many_frequencies),
              solved);
    EXPECT_NE(detail::solved_frequencies_of(solver_for(d), ground_for(d), Workload::few_frequencies), solved);
    EXPECT_NE(detail::solved_frequencies_of(solver_for(d), nullptr, Workload::many_frequencies), solved);
    const auto first = solved->at(units::megahertz(14), {0.1, 0.2});
    EXPECT_EQ(solved->at(units::megahertz(14), {0.1, 0.2}), first);
    const auto lossier = solved->at(units::megahertz(14), {0.3, 0.2});
    EXPECT_NE(lossier, first);
    EXPECT_NE(lossier->solution.admittance().at(0, 0), first->solution.admittance().at(0, 0));
    EXPECT_NE(solved->at(units::megahertz(14), {0.1, 0.2}), first) << "one loading a frequency is kept";
}

// Kept solutions give the figures that fresh ones give, whatever was asked before.
TEST(SolverCache, FiguresDoNotDependOnWhatWasAskedBefore) {
    design::Design d = standing_over_soil();
    const auto asked = [](const design::Design& design) {
        return *FullWave(design).at(units::megahertz(10.1), units::watts(5), 2.0).resonance;
    };
    const Resonance before = asked(d);
    d.capacitor.loss.q = 250;
    d.conductor.temperature = units::degrees_celsius(60);
    const Resonance other = asked(d);
    EXPECT_GT(other.resistance.capacitor, before.resistance.capacitor);
    EXPECT_GT(other.resistance.conductor, before.resistance.conductor);
    d = standing_over_soil();
    const Resonance again = asked(d);
    EXPECT_EQ(again.q_unloaded, before.q_unloaded);
    EXPECT_EQ(again.resistance.total(), before.resistance.total());
    EXPECT_EQ(again.tuning_capacitance, before.tuning_capacitance);
}

} // namespace
} // namespace loopwright::loop
