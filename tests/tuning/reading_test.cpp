// From the dial to the frequency and back, on hardware made at random.
#include "tuning/reading.hpp"

#include "loop/design_parts.hpp"

#include <cmath>
#include <gtest/gtest.h>
#include <random>

namespace loopwright::tuning {
namespace {

using units::picofarads;

struct Hardware {
    design::Capacitor capacitor;
    double inductance_H = 2e-6, own_F = 5e-12; // of the loop: C + own = 1/(w^2 L)
};

double uniform(std::mt19937_64& random, double low, double high) {
    return std::uniform_real_distribution<double>(low, high)(random);
}

Hardware made_at_random(std::mt19937_64& random) {
    Hardware made;
    design::Capacitor& c = made.capacitor;
    c.minimum = picofarads(uniform(random, 3, 40));
    c.maximum = picofarads(c.minimum.value.value() * 1e12 * uniform(random, 2, 20));
    c.stray = picofarads(uniform(random, 0, 8));
    for (int i = static_cast<int>(uniform(random, 0, 3)); i > 0; --i) {
        c.added.emplace_back();
        c.added.back().capacitance = picofarads(uniform(random, 20, 400));
        c.added.back().connection =
            uniform(random, 0, 1) < 0.5 ? design::AddedConnection::parallel : design::AddedConnection::series;
    }
    design::Dial dial;
    const int law = static_cast<int>(uniform(random, 0, 4));
    dial.law = static_cast<design::DialLaw>(law);
    dial.at_minimum = uniform(random, 0, 5);
    dial.at_maximum = dial.at_minimum + uniform(random, 8, 400);
    if (uniform(random, 0, 1) < 0.5) {
        std::swap(dial.at_minimum, dial.at_maximum);
    }
    if (dial.law == design::DialLaw::table) {
        const int entries = static_cast<int>(uniform(random, 2, 9));
        for (int i = 0; i < entries; ++i) {
            const double u = i / (entries - 1.0);
            const double low = c.minimum.value.value(), high = c.maximum.value.value();
            dial.table.push_back(
                {dial.at_minimum + u * (dial.at_maximum - dial.at_minimum),
                 units::farads(i + 1 == entries ? high : low + std::pow(u, 1.4) * (high - low))});
        }
    }
    c.dial = dial;
    made.inductance_H = uniform(random, 0.3e-6, 12e-6);
    made.own_F = uniform(random, 1e-12, 12e-12);
    return made;
}

/// Across the loop's ends, by the rules of capacitors in series and in parallel.
double whole_F(const design::Capacitor& c, double variable_F) {
    double elastance = 1 / variable_F, parallel = c.stray.value.value();
    for (const design::AddedCapacitor& each : c.added) {
        if (each.connection == design::AddedConnection::series) {
            elastance += 1 / each.capacitance.value.value();
        } else {
            parallel += each.capacitance.value.value();
        }
    }
    return 1 / elastance + parallel;
}

double resonance_Hz(const Hardware& made, double variable_F) {
    return 1 / (2 * M_PI * std::sqrt(made.inductance_H * (whole_F(made.capacitor, variable_F) + made.own_F)));
}

Needed needed_at(const Hardware& made, double frequency_Hz) {
    const double omega = 2 * M_PI * frequency_Hz;
    const double total_F = 1 / (omega * omega * made.inductance_H);
    Needed needed;
    needed.whole = units::farads(total_F - made.own_F);
    needed.range = {needed.whole * 0.999, needed.whole * 1.001};
    needed.frequency = units::hertz(frequency_Hz);
    needed.farads_per_Hz = -2 * total_F / frequency_Hz;
    return needed;
}

TEST(Reading, DialToFrequencyToDialOnRandomHardware) {
    std::mt19937_64 random(20261126);
    for (int trial = 0; trial < 3000; ++trial) {
        const Hardware made = made_at_random(random);
        const DialCurve curve(made.capacitor);
        const capacitor::Capacitor network = loop::capacitor_of(made.capacitor);
        const auto stops = curve.readings();
        const double travel = stops.high - stops.low;
        const double dial = uniform(random, stops.low, stops.high);
        const double frequency_Hz = resonance_Hz(made, curve.capacitance_at(dial).value());
        const auto back = reading_for(curve, network, needed_at(made, frequency_Hz));
        ASSERT_TRUE(back) << trial;
        EXPECT_NEAR(back->reading, dial, 1e-6 * travel) << trial;
        EXPECT_TRUE(back->within_stops) << trial;
        EXPECT_LE(back->range.low, back->reading);
        EXPECT_GE(back->range.high, back->reading);
        EXPECT_GT(back->uncertainty(), 0);
    }
}

// The slope against the hardware's own: two readings close together, the frequencies they give.
TEST(Reading, ChangePerHertzIsThatOfTheHardware) {
    std::mt19937_64 random(4711);
    for (int trial = 0; trial < 500; ++trial) {
        Hardware made = made_at_random(random);
        if (made.capacitor.dial->law == design::DialLaw::table) {
            continue; // corners at the entries
        }
        const DialCurve curve(made.capacitor);
        const auto stops = curve.readings();
        const double travel = stops.high - stops.low, step = 1e-4 * travel;
        const double dial = uniform(random, stops.low + 0.05 * travel, stops.high - 0.05 * travel);
        const auto at = [&](double r) { return resonance_Hz(made, curve.capacitance_at(r).value()); };
        const double per_Hz = 2 * step / (at(dial + step) - at(dial - step));
        const auto back = reading_for(curve, loop::capacitor_of(made.capacitor), needed_at(made, at(dial)));
        ASSERT_TRUE(back);
        EXPECT_NEAR(back->per_Hz / per_Hz, 1, 2e-4) << trial;
    }
}

TEST(Reading, BeyondTheStopsIsMarkedAndBelowTheFixedOnesIsNothing) {
    Hardware made;
    made.capacitor.dial = design::Dial{};
    made.capacitor.stray = picofarads(3);
    const DialCurve curve(made.capacitor);
    const capacitor::Capacitor network = loop::capacitor_of(made.capacitor);
    const auto beyond = reading_for(curve, network, needed_at(made, resonance_Hz(made, 160e-12)));
    ASSERT_TRUE(beyond);
    EXPECT_FALSE(beyond->within_stops);
    EXPECT_GT(beyond->reading, 180);
    Needed nothing = needed_at(made, 10e6);
    nothing.whole = picofarads(2);
    nothing.range = {picofarads(1), picofarads(3)};
    EXPECT_FALSE(reading_for(curve, network, nothing));
}

} // namespace
} // namespace loopwright::tuning
