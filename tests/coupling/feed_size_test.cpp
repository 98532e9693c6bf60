// The size of each kind of coupling that matches, against a plain look over the sizes with the full model.
#include "coupling/feed_size.hpp"

#include "base/error.hpp"
#include "coupling/copper_loop.hpp"
#include "coupling/coupling_size.hpp"
#include "design/validation.hpp"

#include <cmath>
#include <gtest/gtest.h>

namespace loopwright::coupling {
namespace {

design::Design loop_fed_by(design::CouplingKind kind) {
    design::Design d = copper_loop();
    d.coupling->kind = kind;
    d.coupling->turn_inductance = units::henries(1e-6);
    return d;
}

double vswr_with(design::Design d, double size, units::Frequency f,
                 units::Resistance line = units::ohms(50)) {
    if (d.coupling->kind == design::CouplingKind::tap) {
        d.coupling->tap_length = units::metres(size);
    } else {
        d.coupling->turns = static_cast<int>(size);
    }
    return CoupledLoop(d, line).match(f).vswr;
}

TEST(FeedSize, NoOtherTurnsMatchBetter) {
    const design::Design d = loop_fed_by(design::CouplingKind::transformer);
    const units::Frequency f = units::megahertz(14.1);
    const FeedSize found = feed_size(d, {f}, units::ohms(75));
    ASSERT_TRUE(found.complete && found.size);
    EXPECT_EQ(*found.size, std::round(*found.size));
    EXPECT_EQ(found.kind, design::CouplingKind::transformer);
    const double least = vswr_with(d, *found.size, f, units::ohms(75));
    EXPECT_NEAR(found.rows.at(0).match->vswr, least, 1e-9);
    for (int turns = 1; turns <= 30; ++turns) {
        EXPECT_GE(vswr_with(d, turns, f, units::ohms(75)), least - 1e-9) << turns;
    }
    // N^2 R = Z0 for an ideal transformer; the turns found lie there, give or take what leakage asks for.
    const auto own = CoupledLoop(d).alone().at(f, units::watts(1), 2.0).resonance;
    EXPECT_NEAR(*found.size, std::sqrt(75.0 / own->resistance.total().value()), 2.0);
}

TEST(FeedSize, NoOtherTapMatchesBetter) {
    const design::Design d = loop_fed_by(design::CouplingKind::tap);
    const units::Frequency f = units::megahertz(10.1);
    const FeedSize found = feed_size(d, {f});
    ASSERT_TRUE(found.complete && found.size);
    const double least = found.rows.at(0).match->vswr;
    EXPECT_NEAR(least, vswr_with(d, *found.size, f), 1e-9);
    for (const double length_m : {0.1, 0.2, 0.3, 0.4, 0.5, 0.7, 0.9, 1.2}) {
        EXPECT_GE(vswr_with(d, length_m, f), least * 0.99) << length_m; // interpolated between 9 lengths
    }
}

TEST(FeedSize, OneForAllIsTheLeastOfTheWorst) {
    const design::Design d = loop_fed_by(design::CouplingKind::transformer);
    const std::vector<units::Frequency> two = {units::megahertz(7.1), units::megahertz(14.1)};
    const FeedSize found = feed_size(d, two);
    ASSERT_TRUE(found.size);
    const auto worst = [&](double size) {
        return std::max(vswr_with(d, size, two[0]), vswr_with(d, size, two[1]));
    };
    const double least = worst(*found.size);
    for (int turns = 2; turns <= 20; ++turns) {
        EXPECT_GE(worst(turns), least - 1e-9) << turns;
    }
}

TEST(FeedSize, ALoopIsThatOfTheCouplingSizes) {
    const design::Design d = loop_fed_by(design::CouplingKind::loop);
    const std::vector<units::Frequency> two = {units::megahertz(7.1), units::megahertz(14.1)};
    const FeedSize found = feed_size(d, two);
    const CouplingSizes sizes = coupling_sizes(d, two);
    EXPECT_DOUBLE_EQ(*found.size, sizes.common_diameter->value());
    EXPECT_DOUBLE_EQ(found.rows.at(1).match->vswr, sizes.rows.at(1).common->vswr);
}

TEST(FeedSizes, TheBestForAFrequencyIsThatOfItAlone) {
    const std::vector<units::Frequency> two = {units::megahertz(7.1), units::megahertz(14.1)};
    for (const auto kind :
         {design::CouplingKind::loop, design::CouplingKind::tap, design::CouplingKind::transformer}) {
        const design::Design d = loop_fed_by(kind);
        const FeedSize both = feed_sizes(d, two);
        ASSERT_TRUE(both.complete && both.size);
        double worst = 1;
        for (const FeedSizeRow& row : both.rows) {
            const FeedSize alone = feed_size(d, {row.frequency});
            ASSERT_TRUE(row.best && row.match);
            EXPECT_NEAR(row.best->size, *alone.size, 1e-3 * *alone.size);
            EXPECT_NEAR(row.best->match.vswr, alone.rows.at(0).match->vswr, 1e-3);
            EXPECT_LE(row.best->match.vswr, row.match->vswr * 1.01);
            worst = std::max(worst, row.match->vswr);
        }
        EXPECT_DOUBLE_EQ(both.worst_vswr, worst);
        EXPECT_EQ(both.notices.has("tap_circuit_model"), kind == design::CouplingKind::tap);
        EXPECT_EQ(both.notices.has("transformer_circuit_model"), kind == design::CouplingKind::transformer);
        EXPECT_FALSE(feed_size(d, two).rows.at(0).best.has_value()); // nobody asked
    }
}

TEST(FeedSize, AStopLeavesItIncomplete) {
    const base::StopToken stop;
    stop.request_stop();
    for (const auto kind :
         {design::CouplingKind::loop, design::CouplingKind::tap, design::CouplingKind::transformer}) {
        EXPECT_FALSE(feed_size(loop_fed_by(kind), {units::megahertz(7.1)}, units::ohms(50), stop).complete);
    }
}

TEST(FeedSize, NeedsACoupling) {
    EXPECT_THROW(static_cast<void>(feed_size({}, {units::megahertz(7.1)})), base::InputError);
}

TEST(CouplingOfKind, FitsEveryLoopAndKeepsWhatFits) {
    for (const double size_m : {0.12, 0.4, 1.0, 5.0}) {
        design::Design d;
        d.loop.size = units::metres(size_m);
        d.conductor.diameter = units::metres(0.02 * size_m);
        d.conductor.wall = units::metres(0.002 * size_m);
        for (const auto kind : {design::CouplingKind::tap, design::CouplingKind::transformer}) {
            d.coupling = coupling_of_kind(d, kind);
            EXPECT_EQ(d.coupling->kind, kind);
            for (const base::InputError& refusal : design::refusals(d)) {
                ADD_FAILURE() << size_m << ": " << refusal.what();
            }
        }
    }
    design::Design d;
    d.coupling = design::Coupling{};
    d.coupling->tap_length = units::metres(0.4);
    EXPECT_EQ(coupling_of_kind(d, design::CouplingKind::tap).tap_length, d.coupling->tap_length);
    d.coupling->tap_length = units::metres(3.0); // of 3.14 m
    EXPECT_LT(coupling_of_kind(d, design::CouplingKind::tap).tap_length.value, units::metres(1.0));
}

} // namespace
} // namespace loopwright::coupling
