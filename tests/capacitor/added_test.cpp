// Fixed capacitors beside the variable one: range and loss against the circuit itself in complex arithmetic.
#include "base/error.hpp"
#include "capacitor/capacitor.hpp"

#include <complex>
#include <gtest/gtest.h>
#include <numbers>
#include <numeric>

namespace loopwright::capacitor {
namespace {

using Complex = std::complex<double>;

FixedCapacitor fixed(double pF, Connection connection, std::optional<double> q = {}) {
    FixedCapacitor made;
    made.capacitance = units::picofarads(pF);
    made.connection = connection;
    made.q = q;
    return made;
}

CapacitorSpec spec_with(std::vector<FixedCapacitor> added) {
    CapacitorSpec spec;
    spec.minimum = units::picofarads(12);
    spec.maximum = units::picofarads(150);
    spec.stray = units::picofarads(3);
    spec.loss.q = 1500;
    spec.contact_resistance = units::ohms(0.01);
    spec.added = std::move(added);
    return spec;
}

/// Impedance of a capacitor with a Q.
Complex lossy(double pF, double q, double omega) {
    const double x = 1 / (omega * pF * 1e-12);
    return {x / q, -x};
}

Complex parallel(Complex a, Complex b) {
    return a * b / (a + b);
}

} // namespace

TEST(Added, RangeFollowsTheNetwork) {
    const Capacitor padded(spec_with({fixed(100, Connection::series), fixed(50, Connection::parallel)}));
    // 12 and 150 pF in series with 100 pF: 10.714 and 60 pF; 53 pF on top.
    EXPECT_NEAR(padded.range().low.value() * 1e12, 12.0 * 100 / 112 + 53, 1e-9);
    EXPECT_NEAR(padded.range().high.value() * 1e12, 113, 1e-9);
    EXPECT_TRUE(padded.can_supply(units::picofarads(64)));
    EXPECT_FALSE(padded.can_supply(units::picofarads(63)));
    EXPECT_FALSE(padded.can_supply(units::picofarads(114)));
    EXPECT_NEAR(padded.variable_for(units::picofarads(113))->value() * 1e12, 150, 1e-9);
    EXPECT_FALSE(padded.variable_for(units::picofarads(53)).has_value());
    EXPECT_FALSE(padded.variable_for(units::picofarads(153)).has_value()); // more than 100 pF of the branch
}

TEST(Added, LossIsThatOfTheCircuit) {
    for (const bool series_law : {false, true}) {
        CapacitorSpec spec =
            spec_with({fixed(100, Connection::series, 800), fixed(50, Connection::parallel, 2000),
                       fixed(200, Connection::series, 3000)});
        if (series_law) {
            spec.loss.q.reset();
            spec.loss.series_resistance = units::ohms(0.04);
            spec.loss.at = units::megahertz(7);
            spec.loss.exponent = 0;
        }
        const Capacitor capacitor(spec);
        const double omega = 2 * std::numbers::pi * 7e6;
        for (const double own_pF : {12.0, 60.0, 150.0}) {
            Complex z = lossy(own_pF, 1500, omega);
            if (series_law) {
                z = Complex(0.04, z.imag());
            }
            z += 0.01 + lossy(100, 800, omega) + lossy(200, 3000, omega);
            z = parallel(z, lossy(50, 2000, omega));
            z = parallel(z, series_law ? Complex(0, -1 / (omega * 3e-12)) : lossy(3, 1500, omega));
            const double branch_pF = 1 / (1 / own_pF + 1 / 100.0 + 1 / 200.0);
            const auto whole = units::picofarads(branch_pF + 53);
            const SeriesLoss loss = capacitor.series_loss(whole, units::megahertz(7));
            EXPECT_NEAR(loss.total.value() / z.real(), 1, 2e-6) << own_pF;
            EXPECT_EQ(loss.range.low, loss.total);
            const LossShares shares = capacitor.loss_shares(whole, units::megahertz(7));
            const auto sum = std::accumulate(shares.added.begin(), shares.added.end(),
                                             shares.variable + shares.contact + shares.stray);
            EXPECT_NEAR(sum.value() / loss.total.value(), 1, 1e-12);
        }
    }
    EXPECT_TRUE(Capacitor(spec_with({})).notices().empty());
}

TEST(Added, NothingAddedIsTheCapacitorAlone) {
    // The network's formula with nothing to add, against the one for the capacitor alone (another path).
    const Capacitor alone(spec_with({}));
    for (const double pF : {2.0, 15.0, 80.0, 200.0}) { // 2 pF: less than the stray
        const auto shares = alone.loss_shares(units::picofarads(pF), units::megahertz(14));
        const auto loss = alone.series_loss(units::picofarads(pF), units::megahertz(14));
        EXPECT_NEAR(((shares.variable + shares.stray) / loss.loss).value(), 1, 1e-12) << pF;
        EXPECT_NEAR(shares.contact.value(), loss.contact.value(), 1e-15);
    }
}

TEST(Added, WithoutAQTheClassValueIsUsedAndSaid) {
    const Capacitor capacitor(spec_with({fixed(50, Connection::parallel)}));
    EXPECT_TRUE(capacitor.notices().has("added_capacitor_loss_assumed"));
    EXPECT_FALSE(capacitor.notices().has("capacitor_loss_assumed"));
    const auto r = capacitor.series_loss(units::picofarads(100), units::megahertz(7));
    const double omega = 2 * std::numbers::pi * 7e6;
    const double of_added = 0.25 / (omega * 1000 * 50e-12); // half of the current, squared
    EXPECT_NEAR((r.range.high - r.total).value(), of_added * (1000.0 / 300 - 1), 1e-12);
    EXPECT_NEAR((r.total - r.range.low).value(), of_added * (1 - 1000.0 / 3000), 1e-12);
}

TEST(Added, OutsideItsRangeTheLossStaysFiniteAndPositive) {
    const Capacitor capacitor(
        spec_with({fixed(100, Connection::series, 800), fixed(50, Connection::parallel, 2000)}));
    for (const double pF : {0.1, 10.0, 52.9, 53.1, 152.9, 153.1, 1e4}) {
        const double ohm = capacitor.series_loss(units::picofarads(pF), units::megahertz(7)).total.value();
        EXPECT_TRUE(std::isfinite(ohm) && ohm > 0) << pF << ' ' << ohm;
    }
}

TEST(Added, RefusesWhatNoCapacitorIs) {
    EXPECT_THROW(Capacitor{spec_with({fixed(0, Connection::series)})}, base::InputError);
    EXPECT_THROW(Capacitor{spec_with({fixed(10, Connection::parallel, 5)})}, base::InputError);
    FixedCapacitor bad = fixed(10, Connection::parallel);
    bad.peak_voltage = units::volts(0);
    EXPECT_THROW(Capacitor{spec_with({bad})}, base::InputError);
}

} // namespace loopwright::capacitor
