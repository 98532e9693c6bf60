// Mismatch, feed line and transformer against the independent matching cases, a textbook example, and
// circuits solved another way.
#include "coupling/feed_line.hpp"
#include "coupling/mismatch.hpp"
#include "coupling/transformer.hpp"

#include "base/error.hpp"
#include "support/cases.hpp"
#include "support/compared.hpp"
#include "units/constants.hpp"

#include <cmath>
#include <complex>
#include <gtest/gtest.h>

namespace loopwright::coupling {
namespace {

using Complex = std::complex<double>;

TEST(Mismatch, TextbookDipoleOn75Ohm) {
    // M. N. O. Sadiku, Elements of Electromagnetics, 3rd ed., Oxford 2001, Ex. 13.2, p. 603 (read in a
    // transcription).
    EXPECT_NEAR(vswr(units::Impedance::from_value({73.0, 42.5}), units::ohms(75)), 1.7636, 5e-5);
}

TEST(Mismatch, TextbookReflectionEfficiency) {
    // C. A. Balanis, Antenna Theory, Ex. 2.10, p. 68 (read in a transcription): 73 ohm on 50 ohm,
    // -0.154573670944 dB.
    const double s = vswr(units::Impedance::from_value({73.0, 0.0}), units::ohms(50));
    EXPECT_NEAR(10.0 * std::log10(accepted_share(s)), -0.154573670944, 1e-11);
}

TEST(Mismatch, ResonatorMatchesTheIndependentCases) {
    const support::Compared table("independent-cases", "Resonator and matching");
    int met = 0;
    for (const auto& c : support::independent_cases("matching")) {
        if (!c.has_input("offset")) {
            continue;
        }
        const double f0 = c.input("f0");
        const double s = resonator_vswr(units::hertz(f0), c.input("Q_unloaded"), 1.0,
                                        units::hertz(f0 + c.input("offset")));
        table.share(c.id, "swr_at_f0_plus_offset", s, c.output("swr_at_f0_plus_offset"),
                    c.tolerance("swr_at_f0_plus_offset"));
        EXPECT_NEAR(
            resonator_vswr(units::hertz(f0), c.input("Q_unloaded"), 1.0, units::hertz(c.output("f_lo_vswr"))),
            c.input("vswr"), 1e-6);
        ++met;
    }
    EXPECT_EQ(met, 3);
}

TEST(Mismatch, CriticalCouplingMatchesTheIndependentCase) {
    const support::Compared table("independent-cases", "Resonator and matching");
    for (const auto& c : support::independent_cases("matching")) {
        if (!c.has_input("L_coupling")) {
            continue;
        }
        const CriticalCoupling k =
            critical_coupling(units::ohms(c.input("R_loop")), units::henries(c.input("L_coupling")),
                              units::hertz(c.input("frequency")), units::ohms(c.input("z0")));
        table.share(c.id, "M", k.mutual.value(), c.output("M"), c.tolerance("M"));
        table.share(c.id, "X_detune", std::abs(k.detuning_reactance.value()), c.output("X_detune"),
                    c.tolerance("X_detune"));
    }
}

TEST(FeedLine, LossLawGoesThroughItsPoints) {
    const double a = 3e-6, b = 2e-10; // dB/m per sqrt(Hz), per Hz
    FeedLine line{units::metres(5), units::ohms(50), {}};
    for (const double f : {3e6, 10e6, 30e6}) {
        line.loss.push_back({units::hertz(f), a * std::sqrt(f) + b * f});
    }
    base::Notices notices;
    EXPECT_NEAR(matched_loss(line, units::megahertz(14), &notices).value,
                5.0 * (a * std::sqrt(14e6) + b * 14e6), 1e-12);
    EXPECT_TRUE(notices.empty());
    (void)matched_loss(line, units::megahertz(144), &notices);
    EXPECT_TRUE(notices.has("feed_line_extrapolated"));
    EXPECT_THROW((void)matched_loss({units::metres(-1), units::ohms(50), {}}, units::megahertz(7), nullptr),
                 base::InputError);
}

TEST(FeedLine, AgreesWithTheTravellingWavesOnTheLine) {
    // The same line solved as waves: forward falls, backward falls again; power in minus power out.
    const double matched_dB = 1.3, s = 3.2;
    const double g = reflection_magnitude(s);
    const double forward_at_load = std::pow(10.0, -matched_dB / 20.0);
    const double backward_at_radio = forward_at_load * g * std::pow(10.0, -matched_dB / 20.0);
    const double in = 1.0 - backward_at_radio * backward_at_radio;
    const double out = forward_at_load * forward_at_load * (1.0 - g * g);
    const LineEnd end = line_end({matched_dB}, s);
    EXPECT_NEAR(end.total_loss.value, -10.0 * std::log10(out / in), 1e-12);
    EXPECT_NEAR(reflection_magnitude(end.vswr_at_radio), backward_at_radio, 1e-12);
    EXPECT_NEAR(line_end({0.0}, s).vswr_at_radio, s, 1e-12);
}

TEST(Transformer, IdealCoreIsTheTurnsRatio) {
    ToroidTransformer t{10, units::henries(1e-3), 1e6, 0.0};
    const TransformerInput in =
        transformer_input(t, units::Impedance::from_value({0.5, 0.0}), units::megahertz(7), units::ohms(50));
    EXPECT_NEAR(in.impedance.value().real(), 50.0, 1e-3);
    EXPECT_LT(in.core_loss_share, 1e-4);
    EXPECT_FALSE(in.notices.has("transformer_low_inductance"));
}

TEST(Transformer, PowerGoesIntoCoreAndLoop) {
    const ToroidTransformer t{8, units::henries(0.5e-6), 20.0, 0.03};
    const Complex z_loop{0.6, 0.2};
    const TransformerInput in =
        transformer_input(t, units::Impedance::from_value(z_loop), units::megahertz(7), units::ohms(50));
    // Solve the mesh: 1 A in; voltage behind the leakage; power in the core's parallel resistance and in the
    // loop.
    const double x = 2.0 * units::constants::pi * 7e6 * 64.0 * 0.5e-6;
    const Complex v = in.impedance.value() - Complex(0, 0.03 * x);
    const double in_core = std::norm(v) / (x * 20.0);
    const double in_loop = (std::norm(v) / (64.0 * std::conj(z_loop))).real();
    EXPECT_NEAR(in.impedance.value().real() / (in_core + in_loop), 1.0, 1e-3);
    EXPECT_NEAR(in.core_loss_share / (in_core / (in_core + in_loop)), 1.0, 1e-2);
}

} // namespace
} // namespace loopwright::coupling
