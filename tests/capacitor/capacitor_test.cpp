#include "capacitor/capacitor.hpp"

#include "base/error.hpp"

#include <complex>
#include <gtest/gtest.h>
#include <limits>
#include <numbers>

namespace loopwright::capacitor {
namespace {

CapacitorSpec spec_losing(const LossLaw& loss) {
    CapacitorSpec spec;
    spec.minimum = units::picofarads(12);
    spec.maximum = units::picofarads(150);
    spec.stray = units::picofarads(3);
    spec.loss = loss;
    return spec;
}

} // namespace

TEST(Capacitor, RangeCarriesTheStray) {
    const Capacitor capacitor(spec_losing({}));
    EXPECT_NEAR(capacitor.range().low.value(), 15e-12, 1e-22);
    EXPECT_NEAR(capacitor.range().high.value(), 153e-12, 1e-22);
    EXPECT_TRUE(capacitor.can_supply(units::picofarads(15.001)));
    EXPECT_FALSE(capacitor.can_supply(units::picofarads(14.999)));
    EXPECT_FALSE(capacitor.can_supply(units::picofarads(153.001)));
}

// Definition of Q: reactance over series resistance (IEEE Std 100, from memory).
TEST(Capacitor, QGivesReactanceOverQ) {
    LossLaw loss;
    loss.q = 2000;
    const Capacitor capacitor(spec_losing(loss));
    const auto r = capacitor.series_loss(units::picofarads(100), units::megahertz(7.1));
    EXPECT_NEAR(r.total.value(), 1.0 / (2.0 * std::numbers::pi * 7.1e6 * 100e-12 * 2000.0), 1e-15);
    EXPECT_EQ(r.range.low, r.total);
    EXPECT_TRUE(capacitor.notices().empty());
}

// Against the circuit itself: (R + 1/jwC) in parallel with the stray, its series resistance by complex
// arithmetic.
TEST(Capacitor, SeriesResistanceAndStrayAgreeWithTheCircuit) {
    LossLaw loss;
    loss.series_resistance = units::ohms(0.04);
    loss.at = units::megahertz(10);
    CapacitorSpec spec = spec_losing(loss);
    spec.contact_resistance = units::ohms(0.02);
    const Capacitor capacitor(spec);
    for (const double own_pF : {12.0, 40.0, 150.0}) {
        for (const double f_Hz : {3.5e6, 14e6, 28e6}) {
            const double w = 2.0 * std::numbers::pi * f_Hz;
            const double series_ohm = 0.04 * std::sqrt(f_Hz / 10e6) + 0.02;
            const std::complex<double> branch(series_ohm, -1.0 / (w * own_pF * 1e-12));
            const std::complex<double> stray(0.0, -1.0 / (w * 3e-12));
            const std::complex<double> both = branch * stray / (branch + stray);
            const auto r = capacitor.series_loss(units::picofarads(own_pF + 3.0), units::hertz(f_Hz));
            EXPECT_NEAR(r.total.value(), both.real(), 1e-6 * both.real());
            EXPECT_NEAR(r.loss.value() / r.contact.value(), 2.0 * std::sqrt(f_Hz / 10e6), 1e-9);
        }
    }
}

TEST(Capacitor, LossTangentExponentIsAConstantQ) {
    LossLaw loss;
    loss.series_resistance = units::ohms(0.1);
    loss.exponent = -1.0;
    CapacitorSpec spec = spec_losing(loss);
    spec.stray = {};
    const Capacitor capacitor(spec);
    const auto low = capacitor.series_loss(units::picofarads(50), units::megahertz(5));
    const auto high = capacitor.series_loss(units::picofarads(50), units::megahertz(20));
    EXPECT_NEAR(low.total.value(), 0.2, 1e-12);
    EXPECT_NEAR(high.total.value(), 0.05, 1e-12);
}

TEST(Capacitor, WithoutALossTheClassValueIsUsedAndSaid) {
    const Capacitor capacitor(spec_losing({}));
    ASSERT_TRUE(capacitor.notices().has("capacitor_loss_assumed"));
    const auto r = capacitor.series_loss(units::picofarads(100), units::megahertz(7));
    EXPECT_NEAR(r.range.high.value() / r.total.value(), 1000.0 / 300.0, 1e-12);
    EXPECT_NEAR(r.range.low.value() / r.total.value(), 1000.0 / 3000.0, 1e-12);
}

TEST(Capacitor, RefusesWhatNoCapacitorIs) {
    const auto refused = [](auto change) {
        CapacitorSpec spec = spec_losing({});
        change(spec);
        EXPECT_THROW(Capacitor{spec}, base::InputError);
    };
    refused([](CapacitorSpec& s) { s.minimum = units::picofarads(0); });
    refused([](CapacitorSpec& s) { s.minimum = units::picofarads(151); });
    refused([](CapacitorSpec& s) { s.stray = units::picofarads(-1); });
    refused([](CapacitorSpec& s) { s.maximum = units::farads(std::numeric_limits<double>::quiet_NaN()); });
    refused([](CapacitorSpec& s) { s.loss.q = 5; });
    refused([](CapacitorSpec& s) { s.contact_resistance = units::ohms(-1e-3); });
    refused([](CapacitorSpec& s) { s.peak_voltage = units::volts(0); });
    refused([](CapacitorSpec& s) {
        s.loss.q = 1000;
        s.loss.series_resistance = units::ohms(0.1);
    });
    CapacitorSpec high_q = spec_losing({});
    high_q.loss.q = 1e12;
    EXPECT_NO_THROW(Capacitor{high_q});
}

} // namespace loopwright::capacitor
