// What the members of a capacitor network carry, against the circuit in complex arithmetic and by hand.
#include "base/error.hpp"
#include "capacitor/network.hpp"

#include <complex>
#include <gtest/gtest.h>
#include <numbers>
#include <numeric>

namespace loopwright::capacitor {
namespace {

using Complex = std::complex<double>;
constexpr double pi = std::numbers::pi;

FixedCapacitor rated(double pF, Connection connection, double volts = 0, double ampere = 0) {
    FixedCapacitor made;
    made.capacitance = units::picofarads(pF);
    made.connection = connection;
    made.q = 2000;
    if (volts > 0) {
        made.peak_voltage = units::volts(volts);
    }
    if (ampere > 0) {
        made.current = units::amperes(ampere);
    }
    return made;
}

NetworkSpec network_with(std::vector<FixedCapacitor> added, int sections = 1) {
    NetworkSpec spec;
    spec.capacitor.minimum = units::picofarads(10);
    spec.capacitor.maximum = units::picofarads(200);
    spec.capacitor.stray = units::picofarads(5);
    spec.capacitor.loss.q = 1000;
    spec.capacitor.added = std::move(added);
    spec.sections = sections;
    return spec;
}

const auto f = units::megahertz(7);
constexpr double omega = 2 * pi * 7e6;

} // namespace

TEST(Network, OneSectionCarriesAllVoltsAndItsShareOfTheCurrent) {
    NetworkSpec spec = network_with({});
    spec.rating.peak_voltage = units::volts(2000);
    const auto load = Network(spec).load(units::volts(1000), units::picofarads(105), f);
    ASSERT_TRUE(load);
    ASSERT_EQ(load->members.size(), 2U);
    EXPECT_NEAR(load->members[0].voltage_peak.value(), 1000, 1e-9);
    EXPECT_NEAR(load->members[0].capacitance.value(), 100e-12, 1e-20);
    EXPECT_NEAR(load->members[0].current_rms.value(), 1000 / std::sqrt(2.0) * omega * 100e-12, 1e-9);
    EXPECT_NEAR(load->members[1].current_rms.value(), 1000 / std::sqrt(2.0) * omega * 5e-12, 1e-9);
    EXPECT_EQ(load->members[1].kind, MemberKind::stray);
    EXPECT_NEAR(load->usable_peak->value(), 2000, 1e-9);
    EXPECT_FALSE(load->current_limited_peak || load->unrated_members);
    // V^2 omega C / Q, rms
    const double loss_W = load->members[0].loss.value() + load->members[1].loss.value();
    EXPECT_NEAR(loss_W, 0.5 * 1e6 * omega * 105e-12 / 1000, 1e-9);
}

// Two sections in series: half the voltage on each, all of the current through each; the sections' gap stands
// half of what the whole has to.
TEST(Network, TwoSectionsShareTheVolts) {
    NetworkSpec spec = network_with({}, 2);
    spec.rating.gap = units::millimetres(1);
    const Network network(spec);
    const auto load = network.load(units::volts(3000), units::picofarads(105), f);
    ASSERT_TRUE(load);
    ASSERT_EQ(load->members.size(), 3U);
    for (std::size_t i = 0; i < 2; ++i) {
        EXPECT_NEAR(load->members[i].voltage_peak.value(), 1500, 1e-9);
        EXPECT_NEAR(load->members[i].capacitance.value(), 200e-12, 1e-20);
        EXPECT_NEAR(load->members[i].current_rms.value(), 3000 / std::sqrt(2.0) * omega * 100e-12, 1e-9);
        EXPECT_EQ(load->members[i].rated_by, RatedBy::gap);
    }
    const auto gap = gap_rating(units::millimetres(1), PlateEdges::plain, units::metres(0),
                                units::degrees_celsius(20), 1.5);
    EXPECT_NEAR((*load->usable_peak / gap.usable_peak).value(), 2, 1e-12);
    EXPECT_NEAR((load->usable_peak_range.low / gap.usable_peak_range.low).value(), 2, 1e-12);
    EXPECT_TRUE(load->notices.has("rf_breakdown_uncertain"));
    // What a section would need for 1500 V stands exactly that.
    const auto needed = network.gap_needed(units::volts(1500));
    ASSERT_TRUE(needed);
    EXPECT_NEAR(gap_rating(*needed, PlateEdges::plain, units::metres(0), units::degrees_celsius(20), 1.5)
                    .usable_peak.value(),
                1500, 0.01);
    EXPECT_FALSE(network.gap_needed(units::volts(1e6)).has_value());
}

TEST(Network, VoltsAndCurrentsAreThoseOfTheCircuit) {
    const Network network(network_with(
        {rated(150, Connection::series), rated(40, Connection::parallel), rated(300, Connection::series)},
        2));
    const double own_F = 80e-12;
    const double branch_F = 1 / (1 / own_F + 1 / 150e-12 + 1 / 300e-12);
    const auto load = network.load(units::volts(1200), units::farads(branch_F + 45e-12), f);
    ASSERT_TRUE(load);
    const auto z = [](double farad) { return Complex(0, -1 / (omega * farad)); };
    const Complex volts = 1200;
    const Complex branch = volts / (z(own_F) + z(150e-12) + z(300e-12)); // ampere peak
    const double expected_V[] = {std::abs(branch * z(2 * own_F)), std::abs(branch * z(2 * own_F)),
                                 std::abs(branch * z(150e-12)),   1200,
                                 std::abs(branch * z(300e-12)),   1200};
    const double expected_A[] = {std::abs(branch), std::abs(branch),
                                 std::abs(branch), std::abs(volts / z(40e-12)),
                                 std::abs(branch), std::abs(volts / z(5e-12))};
    ASSERT_EQ(load->members.size(), 6U);
    for (std::size_t i = 0; i < 6; ++i) {
        EXPECT_NEAR(load->members[i].voltage_peak.value(), expected_V[i], 1e-9 * 1200) << i;
        EXPECT_NEAR(load->members[i].current_rms.value() * std::sqrt(2.0), expected_A[i], 1e-9) << i;
    }
    // Currents at the terminals add up, volts along the branch add up.
    EXPECT_NEAR(
        (load->members[0].current_rms + load->members[3].current_rms + load->members[5].current_rms).value(),
        load->current_rms.value(), 1e-9);
    const double along = load->members[0].voltage_peak.value() * 2 + load->members[2].voltage_peak.value() +
                         load->members[4].voltage_peak.value();
    EXPECT_NEAR(along, 1200, 1e-9 * 1200);
    // All losses together are those of the series resistance.
    const auto whole = network.capacitor().series_loss(units::farads(branch_F + 45e-12), f).total;
    double sum_W = 0;
    for (const MemberLoad& member : load->members) {
        sum_W += member.loss.value();
    }
    EXPECT_NEAR(sum_W / (load->current_rms.value() * load->current_rms.value() * whole.value()), 1, 1e-9);
}

TEST(Network, TheWeakestMemberDecides) {
    NetworkSpec spec =
        network_with({rated(100, Connection::series, 500, 0.8), rated(40, Connection::parallel, 3000)});
    spec.rating.peak_voltage = units::volts(2000);
    spec.rating.current = units::amperes(5);
    const Network network(spec);
    // 100 pF variable and 100 pF in series: half the volts on each; 50 + 45 pF.
    const auto load = network.load(units::volts(800), units::picofarads(95), f);
    ASSERT_TRUE(load);
    EXPECT_NEAR(load->usable_peak->value(), 1000, 1e-6); // 500 V on half
    EXPECT_EQ(load->members[load->weakest].kind, MemberKind::added);
    EXPECT_EQ(load->members[load->weakest].index, 0U);
    // 0.8 A rms through 50 pF: the volts across the whole.
    EXPECT_NEAR(load->current_limited_peak->value(), 0.8 * std::sqrt(2.0) / (omega * 50e-12), 1e-6);
    EXPECT_EQ(load->members[load->hottest].kind, MemberKind::added);
    EXPECT_NEAR(load->allowed_peak()->value(), load->current_limited_peak->value(), 1e-9);
    // At that voltage the member carries exactly its rating.
    const auto at_limit = network.load(*load->allowed_peak(), units::picofarads(95), f);
    EXPECT_NEAR(at_limit->members[1].current_rms.value(), 0.8, 1e-9);
}

TEST(Network, RatingsAndGapTheLowerCounts) {
    NetworkSpec spec = network_with({});
    spec.rating.gap = units::millimetres(2);
    spec.rating.peak_voltage = units::volts(500);
    EXPECT_NEAR(Network(spec).load(units::volts(1), units::picofarads(100), f)->usable_peak->value(), 500,
                1e-9);
    spec.rating.peak_voltage = units::volts(50000);
    const auto gapped = Network(spec).load(units::volts(0), units::picofarads(100), f);
    const auto gap = gap_rating(units::millimetres(2), PlateEdges::plain, units::metres(0),
                                units::degrees_celsius(20), 1.5);
    EXPECT_NEAR((*gapped->usable_peak / gap.usable_peak).value(), 1, 1e-12); // also where nothing is applied
    EXPECT_EQ(gapped->members[0].rated_by, RatedBy::gap);
    // Monotone: thinner air and sharper edges never raise it.
    double last = 1e9;
    for (const double altitude : {0.0, 1000.0, 3000.0}) {
        spec.altitude = units::metres(altitude);
        const double now =
            Network(spec).load(units::volts(1), units::picofarads(100), f)->allowed_peak()->value();
        EXPECT_LT(now, last);
        last = now;
    }
}

TEST(Network, WithoutRatingsThereIsNoVerdict) {
    const auto bare = Network(network_with({})).load(units::volts(100), units::picofarads(100), f);
    EXPECT_FALSE(bare->usable_peak || bare->allowed_peak());
    EXPECT_TRUE(bare->unrated_members && bare->notices.has("capacitor_member_unrated"));
    NetworkSpec thin = network_with({});
    thin.rating.gap = units::millimetres(0.1);
    thin.altitude = units::metres(3000);
    const auto outside = Network(thin).load(units::volts(100), units::picofarads(100), f);
    EXPECT_FALSE(outside->usable_peak.has_value());
    EXPECT_TRUE(outside->notices.has("gap_outside_data"));
    EXPECT_FALSE(Network(network_with({})).load(units::volts(1), units::picofarads(5), f).has_value());
    EXPECT_THROW((void)Network(network_with({}, 3)), base::ProgramError);
}

TEST(Network, VoltsGoWithTheRootOfThePower) {
    EXPECT_NEAR(power_at_voltage(units::watts(10), units::volts(1000), units::volts(2000)).value(), 40,
                1e-12);
}

} // namespace loopwright::capacitor
