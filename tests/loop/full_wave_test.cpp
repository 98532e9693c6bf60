// The full-wave model of a design against the independent full-wave cases (another program's method of
// moments with Sommerfeld ground, same gap), and against the closed form where both hold.
#include "loop/full_wave.hpp"

#include "base/error.hpp"
#include "support/cases.hpp"
#include "support/compared.hpp"
#include "support/fullwave_designs.hpp"

#include <algorithm>
#include <cmath>
#include <gtest/gtest.h>

namespace loopwright::loop {
namespace {

using support::design_of;

Resonance answer(const design::Design& design, double frequency_Hz, double power_W = 10) {
    const auto point = FullWave(design).at(units::hertz(frequency_Hz), units::watts(power_W), 2.0);
    EXPECT_TRUE(point.resonance.has_value());
    return point.resonance.value();
}

// Limits stated with the cases: C 0.3 % + 0.4 pF; resistances and voltage 0.5 %, ground 1 %; gain 0.05 dB.
TEST(FullWave, IndependentCases) {
    const support::Compared table("full-wave-cases", "Model of the design");
    int met = 0;
    for (const auto& c : support::fullwave_cases()) {
        if (c.text("drive") != "series gap opposite the capacitor") {
            continue; // the coupling loop's own cases belong to coupling/
        }
        const Resonance r = answer(design_of(c), c.in("f"));
        const double pF = r.tuning_capacitance.value() * 1e12;
        table.amount(c.id, "C [pF]", pF, c.out("C_pF"), 0.003 * c.out("C_pF") + 0.4);
        table.share(c.id, "R to the sky [ohm]", r.resistance.radiation.value(), c.out("R_rad_sky"), 0.005);
        if (!c.free_space()) {
            table.share(c.id, "R of the ground [ohm]", r.resistance.ground->value(), c.out("R_ground"), 0.01);
        } else {
            EXPECT_FALSE(r.resistance.ground.has_value()) << c.id;
        }
        const bool one_turn = c.text("shape") != "stack8"; // those leave proximity out, which is in our model
        if (one_turn) {
            table.share(c.id, "R total [ohm]", r.resistance.total().value(), c.out("R_total"), 0.005);
            table.share(c.id, "peak V at 10 W", r.capacitor_voltage_peak.value(), c.out("Vcap_peak_10W"),
                        0.005);
            table.share(c.id, "bandwidth, VSWR 2 [Hz]", r.bandwidth_vswr.value(), c.out("bw_swr2_Hz"), 0.01);
            table.amount(c.id, "gain [dBi]", r.gain_max->value, c.out("gain_max_dBi"), 0.05);
        } else {
            EXPECT_GT(r.resistance.conductor.value(), c.out("R_conductor")) << c.id;
        }
        ++met;
    }
    EXPECT_EQ(met, 17);
}

design::Design copper_loop(double lowest_m) {
    design::Design d;
    d.capacitor.loss.q = 1000.0;
    d.capacitor.maximum = units::picofarads(1000);
    d.site.ground.kind = design::GroundKind::soil;
    d.site.lowest_point = units::metres(lowest_m);
    return d;
}

TEST(FullWave, AgreesWithTheClosedFormInFreeSpace) {
    design::Design d;
    d.capacitor.loss.q = 1000.0;
    for (const double f : {3.6e6, 7.1e6, 14.1e6, 21.1e6}) {
        const Resonance full = answer(d, f);
        const auto closed = make_model(d, Model::closed_form)->at(units::hertz(f), units::watts(10), 2.0);
        ASSERT_TRUE(closed.resonance.has_value());
        EXPECT_NEAR(full.resistance.total().value() / closed.resonance->resistance.total().value(), 1.0, 0.01)
            << f;
        EXPECT_NEAR(full.tuning_capacitance.value() * 1e12,
                    closed.resonance->tuning_capacitance.value() * 1e12,
                    0.4 + 0.003 * full.tuning_capacitance.value() * 1e12)
            << f;
        EXPECT_NEAR(full.q_unloaded / closed.resonance->q_unloaded, 1.0, 0.015) << f;
    }
}

TEST(FullWave, PowerAddsUp) {
    for (const double low : {0.3, 1.0, 5.0}) {
        const Resonance r = answer(copper_loop(low), 14.1e6, 5);
        const double current = r.loop_current_rms.value();
        EXPECT_NEAR(current * current * r.resistance.total().value(), 5.0, 1e-9);
        EXPECT_GE(r.efficiency_from_bandwidth, r.efficiency);
        EXPECT_GT(r.resistance.ground->value(), 0.0);
    }
}

// "loop current and capacitor voltage" of the independent cases: I = sqrt(P/R), V = I/(wC), peak sqrt(2) of
// rms. Its figures carried to the loop's own P, R, C and f by those laws; both models.
TEST(FullWave, CurrentAndVoltageAreThoseOfTheIndependentCase) {
    const auto cases = support::independent_cases("matching");
    const auto c = std::find_if(cases.begin(), cases.end(),
                                [](const auto& one) { return one.id == "open-matching-05"; });
    ASSERT_NE(c, cases.end());
    for (const Model model : {Model::closed_form, Model::full_wave}) {
        const double hertz = 7.1e6, watts = 20;
        const Resonance r =
            *make_model({}, model)->at(units::hertz(hertz), units::watts(watts), 2.0).resonance;
        const double amperes =
            c->output("i_rms") *
            std::sqrt(watts / c->input("power") * c->input("R_total") / r.resistance.total().value());
        EXPECT_NEAR(r.loop_current_rms.value() / amperes, 1, 1e-9);
        const double times = r.capacitor_current_rms.value() / c->output("i_rms") * c->input("frequency") *
                             c->input("C") / (hertz * r.tuning_capacitance.value());
        // A capacitor of Q 1000 with its contacts has 1 + 1/Q^2 of the lossless one's impedance.
        EXPECT_NEAR(r.capacitor_voltage_rms.value() / (times * c->output("v_rms")), 1, 1e-5);
        EXPECT_NEAR(r.capacitor_voltage_peak.value() / (times * c->output("v_peak")), 1, 1e-5);
    }
}

TEST(FullWave, GroundTakesLessFromAHigherLoop) {
    double last = 1.0;
    for (const double low : {0.3, 1.0, 3.0, 10.0}) {
        const Resonance r = answer(copper_loop(low), 7.1e6);
        const double share = r.resistance.ground->value() / r.resistance.total().value();
        EXPECT_LT(share, last) << low;
        last = share;
    }
}

TEST(FullWave, PerfectGroundTakesNothing) {
    design::Design d = copper_loop(1.0);
    d.site.ground.kind = design::GroundKind::perfect;
    const Resonance r = answer(d, 14.1e6);
    EXPECT_LT(r.resistance.ground->value(), 1e-4 * r.resistance.total().value());
}

TEST(FullWave, SaysWhereItDoesNotHold) {
    design::Design d;
    d.loop.size = units::metres(6.0);
    const auto point = FullWave(d).at(units::megahertz(50), units::watts(5), 2.0);
    EXPECT_FALSE(point.resonance.has_value());
    EXPECT_TRUE(point.notices.has("perimeter_beyond_range"));
    const auto resonant = FullWave(d).at(units::megahertz(13), units::watts(5), 2.0);
    EXPECT_FALSE(resonant.resonance.has_value());
    EXPECT_TRUE(resonant.notices.has("self_resonant"));
}

// Over any ground and in none: currents on the feed line's outside, metal beside the loop, the capacitor's
// body.
TEST(FullWave, SaysWhatIsNotModelled) {
    design::Design free_space;
    for (const design::Design& d : {copper_loop(1.0), free_space}) {
        const auto notices = FullWave(d).at(units::megahertz(14), units::watts(5), 2.0).notices;
        for (const char* code : {"feed_line_outside", "surroundings", "capacitor_body"}) {
            EXPECT_TRUE(notices.has(code)) << code;
        }
        EXPECT_EQ(notices.has("soil_constants"), d.site.ground.kind == design::GroundKind::soil);
    }
}

TEST(FullWave, RefusesALoopInTheGround) {
    EXPECT_THROW(FullWave(copper_loop(0.01)), base::InputError);
}

// The estimate is a third of the difference to half the mesh; a mesh four times as fine is the judge.
TEST(FullWave, EstimatesTheErrorOfItsMesh) {
    const design::Design d;
    const units::Frequency f = units::megahertz(21);
    const auto estimate = FullWave(d, Workload::few_frequencies).mesh_error(f);
    ASSERT_TRUE(estimate);
    const auto tuned = [&](double refinement) {
        return FullWave(d, Workload::few_frequencies, refinement).solved(f)->tuning_capacitance.value();
    };
    const double actual = tuned(1) / tuned(4) - 1;
    EXPECT_NEAR(estimate->capacitance, actual, 0.4 * std::abs(actual));
    EXPECT_LT(std::abs(estimate->resistance), 0.005);
    EXPECT_GT(estimate->unknowns, 24U);
    const auto finer = FullWave(d, Workload::few_frequencies, 2).mesh_error(f);
    EXPECT_LT(std::abs(finer->capacitance), 0.5 * std::abs(estimate->capacitance));
    EXPECT_THROW(FullWave(d, Workload::few_frequencies, 9), base::InputError);
}

// The quick way for one frequency and the interpolated one for many.
TEST(FullWave, GroundDirectAndInterpolatedAgree) {
    design::Design d;
    d.site.ground.kind = design::GroundKind::soil;
    d.site.lowest_point = units::metres(0.3);
    for (const double megahertz : {3.6, 7.1, 14.1, 28.5}) {
        const units::Frequency f = units::megahertz(megahertz);
        const auto one = FullWave(d, Workload::few_frequencies).at(f, units::watts(5), 2.0);
        const auto many = FullWave(d, Workload::many_frequencies).at(f, units::watts(5), 2.0);
        const Resonance &a = *one.resonance, &b = *many.resonance;
        EXPECT_NEAR(a.tuning_capacitance / b.tuning_capacitance, 1, 1e-6);
        EXPECT_NEAR(a.resistance.total() / b.resistance.total(), 1, 1e-4);
        EXPECT_NEAR(a.q_unloaded / b.q_unloaded, 1, 1e-3);
    }
}

// What is kept from an earlier question must not be told from what is solved for this one.
TEST(FullWave, PointsThatAreKeptAreThoseThatAreSolved) {
    design::Design d;
    d.site.ground.kind = design::GroundKind::soil;
    d.loop.size = units::metres(0.913);
    const units::Frequency f = units::megahertz(10.1);
    const auto point = [&](const design::Design& design, double watts) {
        return *make_model(design, Model::full_wave)->at(f, units::watts(watts), 2.0).resonance;
    };
    const Resonance at_5_W = point(d, 5);
    const auto solved = *FullWave(d).at(f, units::watts(20), 2.0).resonance;
    const Resonance at_20_W = point(d, 20);
    EXPECT_NEAR(at_20_W.capacitor_voltage_peak / solved.capacitor_voltage_peak, 1, 1e-12);
    EXPECT_NEAR(at_20_W.loop_current_rms / solved.loop_current_rms, 1, 1e-12);
    EXPECT_NEAR(at_20_W.capacitor_voltage_peak_range.high / solved.capacitor_voltage_peak_range.high, 1,
                1e-12);
    EXPECT_NEAR(at_20_W.capacitor_voltage_peak / at_5_W.capacitor_voltage_peak, 2, 1e-12);
    EXPECT_EQ(at_20_W.efficiency, at_5_W.efficiency);

    design::Design small = d; // a capacitor that does not reach
    small.capacitor.maximum = units::picofarads(13);
    EXPECT_TRUE(at_5_W.in_capacitor_range);
    EXPECT_FALSE(point(small, 5).in_capacitor_range);
    design::Design lossy = d; // and one that loses more
    lossy.capacitor.loss.q = 100;
    EXPECT_LT(point(lossy, 5).efficiency, 0.8 * at_5_W.efficiency);
    design::Design higher = d;
    higher.site.lowest_point = units::metres(4);
    EXPECT_EQ(point(higher, 5).efficiency,
              FullWave(higher).at(f, units::watts(1), 2.0).resonance->efficiency);
}

} // namespace
} // namespace loopwright::loop
