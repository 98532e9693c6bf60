// Tap and transformer in series with the loop of the full-wave model.
#include "capacitor/capacitor.hpp"
#include "coupling/copper_loop.hpp"
#include "coupling/coupled_loop.hpp"
#include "coupling/detail/series_feed.hpp"
#include "coupling/detail/tap_path.hpp"
#include "coupling/transformer.hpp"
#include "loop/design_parts.hpp"
#include "units/constants.hpp"
#include "wire/port_matrix.hpp"

#include <cmath>
#include <gtest/gtest.h>

namespace loopwright::coupling {
namespace {

using Complex = std::complex<double>;
using units::constants::pi;

design::Design wound_loop(design::CouplingKind kind) {
    design::Design d = copper_loop();
    d.coupling->kind = kind;
    d.coupling->turns = 8;
    d.coupling->turn_inductance = units::henries(0.3e-6);
    return d;
}

Complex capacitor_ohm(const design::Design& d, units::Capacitance c, units::Frequency f) {
    const double loss = loop::capacitor_of(d.capacitor).series_loss(c, f).total.value();
    return {loss, -1 / (2 * pi * f.value() * c.value())};
}

// What goes in at the feed comes out as the loop's own power, known from the model without coupling, and as
// the feed's heat.
template <class Feed>
void expect_power_balance(const design::Design& d, const Feed& feed, const loop::FullWave& alone,
                          double tolerance) {
    for (const double megahertz : {7.1, 14.1}) {
        const units::Frequency f = units::megahertz(megahertz);
        const Match m = CoupledLoop(d).match(f);
        const auto own = alone.at(f, units::watts(1), 2.0).resonance;
        const double squeeze = own->loop_current_rms.value() / own->capacitor_current_rms.value();
        const double loop_ohm = own->resistance.total().value() * squeeze * squeeze;
        const auto port = feed.at(f);
        const Complex load = capacitor_ohm(d, m.tuning_capacitance, f);
        const double into_loop = std::norm(port.capacitor_per_feed(load)) * loop_ohm;
        const double accepted = port.input(load).real();
        EXPECT_NEAR(into_loop / accepted + feed.own_loss_share(f, port, load), 1, tolerance) << megahertz;
        EXPECT_NEAR(m.own_loss_share, feed.own_loss_share(f, port, load), 1e-12);
    }
}

TEST(TapFeed, PowerBalance) {
    const design::Design d = wound_loop(design::CouplingKind::tap);
    const loop::FullWave alone(d);
    // The tapped part's share of the feed's current stands in neither: below 0.5 %.
    expect_power_balance(d, detail::TapFeed(d, *d.coupling, alone), alone, 5e-3);
}

TEST(TransformerFeed, PowerBalance) {
    const design::Design d = wound_loop(design::CouplingKind::transformer);
    const loop::FullWave alone(d);
    expect_power_balance(d, detail::TransformerFeed(*d.coupling, alone, units::ohms(50)), alone, 5e-3);
}

// The same circuit solved another way: the loop's series impedance, then the transformer.
TEST(TransformerFeed, IsTheTransformerOnTheLoopsSeriesImpedance) {
    const design::Design d = wound_loop(design::CouplingKind::transformer);
    const CoupledLoop coupled(d);
    const units::Frequency f = units::megahertz(10.1);
    const auto solved = coupled.alone().solved(f);
    const wire::TwoPort y = wire::two_port(solved->solution.admittance());
    for (const double share : {0.999, 1.0, 1.001}) {
        const units::Capacitance c = share * solved->tuning_capacitance;
        const Complex series = y.input_impedance(1.0 / capacitor_ohm(d, c, f));
        const ToroidTransformer t{8, units::henries(0.3e-6), 50, 0.02};
        const Complex expected =
            transformer_input(t, units::Impedance::from_value(series), f, units::ohms(50)).impedance.value();
        EXPECT_NEAR(std::abs(coupled.input(f, c).value() / expected - 1.0), 0, 1e-8) << share;
    }
}

// N^2 R where the core is ideal.
TEST(TransformerFeed, IdealCoreShowsTheTurnsRatio) {
    design::Design d = wound_loop(design::CouplingKind::transformer);
    d.coupling->turn_inductance = units::henries(1e-3);
    d.coupling->core_q = 1e6;
    d.coupling->leakage_share = 0;
    const CoupledLoop coupled(d);
    const units::Frequency f = units::megahertz(7.1);
    const auto own = coupled.alone().at(f, units::watts(1), 2.0).resonance;
    EXPECT_NEAR(coupled.input(f, own->tuning_capacitance).value().real() /
                    (64 * own->resistance.total().value()),
                1, 1e-3);
}

// A short tap beside a long straight side: flux of a straight wire through the strip, mu0 l/(2 pi) ln(h/a),
// and a two-wire line of unequal wires, mu0 l/(2 pi) ln(h^2/(a r)) (textbook: flux of a straight wire).
TEST(TapFeed, LongStraightSideIsTheStripBesideAWire) {
    design::LoopShape loop;
    loop.outline = design::Outline::rectangle;
    loop.width = loop.height = units::metres(40);
    design::Coupling tap;
    tap.tap_length = units::metres(4);
    tap.tap_spacing = units::millimetres(50);
    const double a = 0.011, h = 0.05, l = 4, r = 0.002;
    const detail::TapPath path = detail::tap_path(loop, tap, a);
    const auto whole = detail::conductor_pieces(loop, a);
    const double per_m = 4e-7 * pi / (2 * pi);
    EXPECT_NEAR(partial_inductance(whole, path.circuit).value() / (-per_m * l * std::log(h / a)), 1, 0.02);
    EXPECT_NEAR(partial_inductance(path.circuit, path.circuit).value() /
                    (per_m * l * std::log(h * h / (a * r))),
                1, 0.02);
}

// The rod closes: every piece begins where the one before ended, at the stated distance from the conductor.
TEST(TapFeed, PathIsClosedAndParallel) {
    for (const auto outline :
         {design::Outline::circle, design::Outline::polygon, design::Outline::rectangle}) {
        design::LoopShape loop;
        loop.outline = outline;
        if (outline == design::Outline::polygon) {
            loop.size_is = design::SizeMeaning::across_flats;
        }
        const detail::TapPath path = detail::tap_path(loop, design::Coupling{}, 0.011);
        for (std::size_t i = 0; i < path.circuit.size(); ++i) {
            const WirePiece& next = path.circuit[(i + 1) % path.circuit.size()];
            EXPECT_NEAR(norm(path.circuit[i].to - next.from), 0, 1e-12);
        }
        EXPECT_NEAR(norm(path.circuit.front().to - path.circuit.front().from), 0.05, 1e-9);
    }
}

// Far from a tap's end the answer does not depend on how finely the loop is cut, and a longer tap sees more.
TEST(TapFeed, LongerTapSeesMoreResistance) {
    const auto largest = [](double tap_m) {
        design::Design d = wound_loop(design::CouplingKind::tap);
        d.coupling->tap_length = units::metres(tap_m);
        const loop::FullWave alone(d);
        const detail::TapFeed feed(d, *d.coupling, alone);
        const units::Frequency f = units::megahertz(7.1);
        const auto port = feed.at(f);
        const auto own = alone.at(f, units::watts(1), 2.0).resonance;
        double most = 0;
        for (int i = -200; i <= 200; ++i) {
            const units::Capacitance c = own->tuning_capacitance * (1 + 1e-5 * i);
            most = std::max(most, port.input(capacitor_ohm(d, c, f)).real());
        }
        return most;
    };
    // Mutual inductance with the length, resistance with its square: for taps short against the loop.
    EXPECT_NEAR(largest(0.4) / largest(0.2), 4, 0.6);
}

TEST(SeriesFeed, StatesItsLimits) {
    design::Design tap = wound_loop(design::CouplingKind::tap);
    tap.coupling->tap_spacing = units::millimetres(20);
    const CoupledLoop close(tap);
    EXPECT_TRUE(close.notices(units::megahertz(7)).has("tap_circuit_model"));
    EXPECT_TRUE(close.notices(units::megahertz(7)).has("tap_close"));
    EXPECT_FALSE(close.notices(units::megahertz(7)).has("tap_long"));
    EXPECT_TRUE(close.notices(units::megahertz(58)).has("tap_long"));
    const CoupledLoop wound(wound_loop(design::CouplingKind::transformer));
    EXPECT_TRUE(wound.notices(units::megahertz(7)).has("transformer_circuit_model"));
    EXPECT_FALSE(wound.powers(wound.match(units::megahertz(7))));
}

} // namespace
} // namespace loopwright::coupling
