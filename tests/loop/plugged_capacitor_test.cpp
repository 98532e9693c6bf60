// Fixed capacitors that are plugged in on some bands: the models take at each frequency the network that
// stands there.
#include "design/made.hpp"
#include "loop/fitted_capacitor.hpp"
#include "loop/heating.hpp"
#include "loop/loop_model.hpp"

#include <gtest/gtest.h>

namespace loopwright::loop {
namespace {

using units::megahertz;

// 1 m of 22 mm tube takes about 200 pF on 40 m and about 800 pF on 80 m: 250 pF reach the one, 700 pF more
// the other.
design::Design plugged(std::vector<std::string> bands) {
    design::Design d;
    d.capacitor.minimum = units::picofarads(15);
    d.capacitor.maximum = units::picofarads(250);
    d.capacitor.loss.q = 1000.0;
    d.capacitor.added.resize(1);
    d.capacitor.added[0].capacitance = units::picofarads(700);
    d.capacitor.added[0].bands = std::move(bands);
    return d;
}

design::Design without() {
    design::Design d = plugged({});
    d.capacitor.added.clear();
    return d;
}

OperatingPoint at(const design::Design& design, Model model, double MHz,
                  Workload workload = Workload::few_frequencies) {
    return make_model(design, model, workload)->at(megahertz(MHz), units::watts(10), 2);
}

} // namespace

class PluggedInModels : public testing::TestWithParam<Model> {};

TEST_P(PluggedInModels, EachBandHasItsOwnNetwork) {
    const design::Design both = plugged({"80m"});
    const OperatingPoint low = at(both, GetParam(), 3.6), high = at(both, GetParam(), 7.1);
    ASSERT_TRUE(low.resonance && high.resonance);
    EXPECT_TRUE(low.resonance->in_capacitor_range);
    EXPECT_TRUE(high.resonance->in_capacitor_range);
    EXPECT_FALSE(at(without(), GetParam(), 3.6).resonance->in_capacitor_range);
    EXPECT_FALSE(at(plugged({}), GetParam(), 7.1).resonance->in_capacitor_range);
    // Losses and all that follows from them are those of a design with the plug always in, or never.
    EXPECT_EQ(low.resonance->resistance.capacitor,
              at(plugged({}), GetParam(), 3.6).resonance->resistance.capacitor);
    EXPECT_EQ(high.resonance->resistance.capacitor,
              at(without(), GetParam(), 7.1).resonance->resistance.capacitor);
    EXPECT_EQ(low.resonance->bandwidth_vswr, at(plugged({}), GetParam(), 3.6).resonance->bandwidth_vswr);
    // The plug has no Q of its own: said where it is in, and only there.
    const auto says = [](const OperatingPoint& point) {
        return point.notices.has("added_capacitor_loss_assumed");
    };
    EXPECT_TRUE(says(low));
    EXPECT_FALSE(says(high));
}

INSTANTIATE_TEST_SUITE_P(BothModels, PluggedInModels, testing::Values(Model::closed_form, Model::full_wave));

TEST(PluggedCapacitor, RememberedPointsFollowTheRegion) {
    // 7.3 MHz is in region 2's 40 m band; 5.4 MHz lies in 60 m everywhere.
    design::Design d = plugged({"80m", "60m"});
    EXPECT_FALSE(
        at(d, Model::full_wave, 7.1, Workload::many_frequencies).notices.has("added_capacitor_loss_assumed"));
    EXPECT_TRUE(at(d, Model::full_wave, 5.36, Workload::many_frequencies)
                    .notices.has("added_capacitor_loss_assumed"));
    d.station.region = 2;
    EXPECT_TRUE(at(d, Model::full_wave, 5.36, Workload::many_frequencies)
                    .notices.has("added_capacitor_loss_assumed"));
}

TEST(PluggedCapacitor, BetweenBandsTheNearestDecides) {
    const design::Design d = plugged({"80m"});
    const FittedCapacitors all(d);
    EXPECT_EQ(all.size(), 2U);
    const double with_F = 950e-12, alone_F = 250e-12;
    const auto most = [&](double MHz) { return capacitor_range_at(d, megahertz(MHz)).high.value(); };
    for (const double MHz : {3.0, 3.5, 3.7, 4.0}) {
        EXPECT_NEAR(most(MHz), with_F, 1e-20) << MHz;
        EXPECT_EQ(all.at(megahertz(MHz)).range().high.value(), most(MHz)) << MHz;
    }
    for (const double MHz : {1.9, 5.2, 7.0, 30.0, 0.1, 900.0}) {
        EXPECT_NEAR(most(MHz), alone_F, 1e-20) << MHz;
        EXPECT_EQ(all.at(megahertz(MHz)).range().high.value(), most(MHz)) << MHz;
    }
    EXPECT_EQ(fitted_band(d.station, megahertz(4)), "80m");
    EXPECT_EQ(fitted(d, megahertz(14)).added.size(), 0U);
    EXPECT_EQ(FittedCapacitors(plugged({})).size(), 1U);
}

// Loads name a fixed capacitor by its place in the design, whichever others are out.
TEST(PluggedCapacitor, LoadsNameItByItsPlaceInTheDesign) {
    design::Design d = plugged({"80m"});
    d.capacitor.added.push_back(d.capacitor.added[0]);
    d.capacitor.added[1].bands = {"40m"};
    d.capacitor.added[1].capacitance = units::picofarads(20);
    const auto load =
        network_at(d, megahertz(7.1)).load(units::volts(1000), units::picofarads(200), megahertz(7.1));
    ASSERT_TRUE(load);
    ASSERT_EQ(load->members.size(), 2U);
    EXPECT_EQ(load->members[1].kind, capacitor::MemberKind::added);
    EXPECT_EQ(load->members[1].index, 1U);
    EXPECT_EQ(load->members[1].capacitance, units::picofarads(20));
    EXPECT_EQ(load->members[1].voltage_peak, units::volts(1000));
}

// A range that nothing but dimensions stand behind is said so; one that somebody typed is not.
TEST(MadeCapacitorNotice, StandsWhereTheRangeIsComputed) {
    design::Design d = without();
    d.capacitor.made = design::MadeCapacitor();
    d.capacitor.made->kind = design::MadeKind::trombone;
    d.capacitor.made->most_overlap = units::millimetres(300);
    design::follow_made(d.capacitor);
    EXPECT_TRUE(at(d, Model::closed_form, 14.1).notices.has("made_capacitor_computed"));
    const units::Capacitance least = d.capacitor.minimum.value, most = d.capacitor.maximum.value;
    d.capacitor.minimum = {least, "as measured"};
    d.capacitor.maximum = {most, "as measured"};
    EXPECT_FALSE(at(d, Model::closed_form, 14.1).notices.has("made_capacitor_computed"));
}

} // namespace loopwright::loop
