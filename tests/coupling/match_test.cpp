// Energy, mistuning, curve and mesh of the match; the sizes that match; the report with its feed line.
#include "coupling/copper_loop.hpp"
#include "coupling/coupling_size.hpp"
#include "coupling/detail/coupling_wire.hpp"
#include "coupling/detail/tuner.hpp"
#include "coupling/feed_line.hpp"
#include "coupling/match_report.hpp"
#include "coupling/mismatch.hpp"
#include "loop/design_parts.hpp"

#include <chrono>
#include <cmath>
#include <gtest/gtest.h>
#include <thread>

namespace loopwright::coupling {
namespace {

design::Design over_ground() {
    design::Design d = copper_loop();
    d.site.ground.kind = design::GroundKind::soil;
    return d;
}

// Accepted power is the sum of its parts, and the parts are those of the loop alone.
TEST(CoupledPower, AcceptedIsTheSumOfItsParts) {
    for (const design::Design& d : {copper_loop(), over_ground()}) {
        const CoupledLoop coupled(d);
        for (const double megahertz : {3.6, 7.1, 14.1, 28.1}) {
            const units::Frequency f = units::megahertz(megahertz);
            const Match m = coupled.match(f);
            const auto shares = coupled.powers(m);
            ASSERT_TRUE(shares);
            EXPECT_NEAR(shares->field + shares->loop_conductor + shares->coupling_conductor +
                            shares->capacitor,
                        1, 1e-6)
                << megahertz;
            const auto own = coupled.alone().at(f, units::watts(1), 2.0).resonance;
            const auto& r = own->resistance;
            const double field = (r.radiation + r.ground.value_or(units::ohms(0))) / r.total();
            EXPECT_NEAR(shares->field, field, 0.01) << megahertz;
            EXPECT_NEAR(m.own_loss_share / shares->coupling_conductor, 1, 0.1) << megahertz;
        }
    }
}

// A matched single resonator: with the capacitor off, power falls as 1 - |G|^2 of the circuit (Kajfez and
// Hwan 1984, from memory), and radiated power with it. The capacitor holds only a part of the electric
// energy, the loop's own capacitance the rest: (I_c^2/(w C))/(Q R I^2).
TEST(Mistuning, CostsWhatTheResonatorSays) {
    const design::Design d = copper_loop();
    const units::Frequency f = units::megahertz(7.1);
    const CouplingChoice choice = best_coupling(d, f);
    design::Design matched = d;
    matched.coupling->diameter = choice.diameter;
    const CoupledLoop coupled(matched);
    const Match m = coupled.match(f);
    const auto own = coupled.alone().at(f, units::watts(1), 2.0).resonance;
    const double q = own->q_unloaded;
    const double current_ratio = own->capacitor_current_rms / own->loop_current_rms;
    const double capacitor_share = current_ratio * current_ratio /
                                   (2 * 3.14159265358979 * f.value() * own->tuning_capacitance.value() * q *
                                    own->resistance.total().value());
    std::vector<units::Capacitance> offsets;
    for (const double widths : {-2.0, -1.0, 0.0, 1.0, 2.0}) {
        offsets.push_back(widths / q * m.tuning_capacitance);
    }
    const auto rows = coupled.mistuning(m, offsets);
    for (std::size_t i = 0; i < rows.size(); ++i) {
        const double x = std::abs(static_cast<double>(i) - 2) * capacitor_share; // Q dC/C = 2 Q df/f
        const double accepted = 4 / (4 + x * x);                                 // |G|^2 = x^2/(4 + x^2)
        EXPECT_NEAR(rows[i].accepted_share, accepted, 0.01) << x;
        EXPECT_NEAR(rows[i].accepted_share, accepted_share(rows[i].vswr), 1e-12);
        EXPECT_NEAR(rows[i].radiated_power.value, 10 * std::log10(accepted), 0.05) << x;
    }
}

// Half-power bandwidth of the matched loop is that between VSWR 5.83 (|G|^2 = 1/2).
TEST(MatchCurve, BandwidthIsThatOfTheMatchedLoop) {
    const units::Frequency f = units::megahertz(14.1);
    design::Design d = copper_loop();
    d.coupling->diameter = best_coupling(d, f).diameter;
    const CoupledLoop coupled(d);
    const auto own = coupled.alone().at(f, units::watts(1), 2.0).resonance;
    const auto wide = coupled.bandwidth(coupled.match(f), 3 + 2 * std::sqrt(2.0));
    ASSERT_TRUE(wide);
    EXPECT_NEAR(*wide / own->bandwidth_half_power, 1, 0.02);
    EXPECT_FALSE(coupled.bandwidth(coupled.match(f), 1.0 + 1e-9));
}

TEST(MatchCurve, InterpolatedPortsGiveTheSolvedVswr) {
    const CoupledLoop coupled(over_ground());
    const Match m = coupled.match(units::megahertz(10.1));
    for (const MatchPoint& point : coupled.curve(m, units::kilohertz(60), 7)) {
        const std::complex<double> solved = coupled.input(point.frequency, m.tuning_capacitance).value();
        EXPECT_NEAR(std::abs(point.input.value() / solved - 1.0), 0, 2e-3) << point.frequency.value();
    }
}

// Meshes once, twice and three times as fine: the coupled resistance and the VSWR settle.
TEST(CoupledMesh, VswrConverges) {
    const design::Design d = copper_loop();
    const loop::FullWave alone(d);
    const detail::Tuner tuner{loop::FittedCapacitors(d), 50};
    for (const double megahertz : {7.1, 28.1}) {
        const units::Frequency f = units::megahertz(megahertz);
        const auto own = alone.at(f, units::watts(1), 2.0).resonance;
        std::vector<double> ratios;
        for (const double refinement : {1.0, 2.0, 3.0}) {
            const detail::CouplingWire fed(d, *d.coupling, alone, refinement);
            const auto port = fed.at(f);
            const double best_F = tuner.best_F(port, f.value(), *own);
            const std::complex<double> z = port.input(tuner.capacitor_ohm(best_F, f.value(), f.value()));
            ratios.push_back(vswr(units::Impedance::from_value(z), units::ohms(50)));
        }
        RecordProperty("vswr_at_" + std::to_string(static_cast<int>(megahertz)),
                       std::to_string(ratios[0]) + " " + std::to_string(ratios[1]) + " " +
                           std::to_string(ratios[2]));
        EXPECT_NEAR(ratios[0] / ratios[2], 1, 1e-3) << megahertz;
        EXPECT_LE(std::abs(ratios[1] / ratios[2] - 1), std::abs(ratios[0] / ratios[2] - 1) + 1e-4)
            << megahertz;
    }
}

TEST(CouplingSizes, AnswersHoldWhenBuilt) {
    const design::Design d = over_ground();
    const CouplingSizes sizes = coupling_sizes(d, {units::megahertz(7.1), units::megahertz(14.1)});
    ASSERT_TRUE(sizes.complete);
    for (const CouplingRow& row : sizes.rows) {
        ASSERT_TRUE(row.best && row.common);
        EXPECT_LT(row.best->match.vswr, 1.02);
        EXPECT_LE(row.best->match.vswr, row.common->vswr + 1e-3);
        // Smaller and larger ones are no better.
        for (const double change : {0.97, 1.03}) {
            design::Design other = d;
            other.coupling->diameter = change * row.best->diameter;
            EXPECT_GT(CoupledLoop(other).match(row.frequency).vswr, row.best->match.vswr - 5e-3);
        }
    }
    // At the common size the two worst are equally bad: the definition of least worst.
    EXPECT_NEAR(sizes.rows[0].common->vswr / sizes.rows[1].common->vswr, 1, 0.02);
}

TEST(CouplingSizes, LeavesOutWhatNoCapacitorTunes) {
    const CouplingSizes sizes = coupling_sizes(copper_loop(), {units::megahertz(7.1), units::megahertz(144)});
    EXPECT_TRUE(sizes.rows[0].best);
    EXPECT_FALSE(sizes.rows[1].best);
    EXPECT_LT(sizes.worst_vswr, 1.02);
    const CouplingSizes none = coupling_sizes(copper_loop(), {units::megahertz(144)});
    EXPECT_TRUE(none.complete);
    EXPECT_FALSE(none.common_diameter);
}

TEST(CouplingSizes, HeedsAStopWithin200Milliseconds) {
    using std::chrono::milliseconds;
    using std::chrono::steady_clock;
    const base::StopToken stop;
    std::vector<units::Frequency> many;
    for (int i = 0; i < 300; ++i) {
        many.push_back(units::megahertz(3 + 0.05 * i));
    }
    steady_clock::time_point asked;
    std::thread owner([&] {
        std::this_thread::sleep_for(milliseconds(150));
        asked = steady_clock::now();
        stop.request_stop();
    });
    double share = 0;
    const CouplingSizes sizes = coupling_sizes(over_ground(), many, units::ohms(50), stop,
                                               [&share](double done) { share = std::max(share, done); });
    const auto returned = steady_clock::now();
    owner.join();
    EXPECT_FALSE(sizes.complete);
    EXPECT_LT(share, 1.0);
    EXPECT_LT(std::chrono::duration_cast<milliseconds>(returned - asked).count(), 200);
    EXPECT_FALSE(common_coupling(copper_loop(), {units::megahertz(7)}, units::ohms(50), stop).complete);
}

TEST(MatchReport, WithoutAFeedLineTheRadioSeesTheFeedPoint) {
    const MatchReport report = match_report(over_ground(), units::megahertz(7.1), units::watts(5), 2.0);
    ASSERT_TRUE(report.match);
    EXPECT_FALSE(report.feed_line);
    EXPECT_EQ(report.vswr_at_radio, report.match->vswr);
    for (const CurveRow& row : report.curve) {
        EXPECT_EQ(row.vswr_at_radio, row.point.vswr);
    }
    EXPECT_TRUE(report.notices.has("feed_line_outside"));
}

// A line of 3.0103 dB halves the power both ways: |G| at the radio is half of that at the feed point.
TEST(MatchReport, FeedLineOfHalfThePowerHalvesTheReflection) {
    design::Design d = over_ground();
    d.coupling->diameter = units::metres(0.3);
    d.feed_line = design::FeedLine{units::metres(10),
                                   units::ohms(50),
                                   {{units::megahertz(7.1), units::DecibelPerMetre{std::log10(2.0)}}}};
    const MatchReport report = match_report(d, units::megahertz(7.1), units::watts(5), 2.0);
    ASSERT_TRUE(report.match && report.feed_line);
    EXPECT_NEAR(report.feed_line->matched_loss.value, 10 * std::log10(2.0), 1e-9);
    EXPECT_GT(report.match->vswr, 1.5);
    EXPECT_NEAR(reflection_magnitude(report.vswr_at_radio), 0.5 * reflection_magnitude(report.match->vswr),
                1e-9);
    EXPECT_GT(report.feed_line->total_loss, report.feed_line->matched_loss);
    for (const MistuningRow& row : report.mistuning) {
        EXPECT_LE(row.vswr_at_radio, row.point.vswr);
    }
}

// Another impedance of line is what the ratios are on.
TEST(MatchReport, StandingWavesAreOnTheGivenLine) {
    design::Design d = copper_loop();
    d.feed_line = design::FeedLine{units::metres(1), units::ohms(75), {}};
    const MatchReport report = match_report(d, units::megahertz(7.1), units::watts(5), 2.0);
    EXPECT_EQ(report.line, units::ohms(75));
    EXPECT_NEAR(report.match->vswr, vswr(report.match->input, units::ohms(75)), 1e-9);
    EXPECT_TRUE(report.notices.has("feed_line_without_loss"));
}

} // namespace
} // namespace loopwright::coupling
