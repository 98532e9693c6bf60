// The tapped match against the same wires solved as wires: a method of moments of the test's own with the rod
// joined to the conductor (branched_wires.hpp), against the program's circuit of partial inductances beside
// the full-wave loop. Both in free space with conductors without loss, so that what is compared is the field.
#include "coupling/branched_wires.hpp"
#include "coupling/detail/coupling_wire.hpp"
#include "coupling/detail/series_feed.hpp"
#include "loop/full_wave.hpp"
#include "support/compared.hpp"
#include "units/constants.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <cstdio>
#include <gtest/gtest.h>

namespace loopwright::coupling {
namespace {

using Complex = std::complex<double>;
using detail::OpenTwoPort;
using testing::BranchedWires;
using testing::Point;
using units::constants::pi;

constexpr double half_m = 0.5, radius_m = 0.005, rod_radius_m = 0.002, gap_m = 0.02;
constexpr double segment_m = 0.02;

struct Tap {
    double length_m, spacing_m;
};

/// A square of 1 m with the capacitor in the middle of its top and the tap along its lower side.
design::Design design_of(const Tap& tap) {
    design::Design d;
    d.loop.outline = design::Outline::polygon;
    d.loop.sides = 4;
    d.loop.size_is = design::SizeMeaning::across_flats;
    d.loop.size = units::metres(2 * half_m);
    d.loop.gap = units::metres(gap_m);
    d.conductor.form = design::ConductorForm::wire;
    d.conductor.diameter = units::metres(2 * radius_m);
    d.coupling.emplace();
    d.coupling->kind = design::CouplingKind::tap;
    d.coupling->conductor_diameter = units::metres(2 * rod_radius_m);
    d.coupling->tap_length = units::metres(tap.length_m);
    d.coupling->tap_spacing = units::metres(tap.spacing_m);
    return d;
}

/// The same in segments of about the length of the gap.
struct Wires {
    OpenTwoPort tapped;         ///< the line's gap is the near link's middle segment
    double alone_reactance = 0; ///< of the loop without the rod, at the capacitor's gap [ohm]
};
Wires as_wires(const Tap& tap, const loop::FullWave& alone, units::Frequency frequency, double longest_m) {
    const Complex conductor = alone.conductor_ohm_per_m(frequency);
    const Complex rod =
        detail::copper_wire(units::metres(2 * rod_radius_m)).internal_impedance_ohm_per_m(frequency.value());
    BranchedWires wires;
    const auto parts = [longest_m](double length_m) {
        return static_cast<std::size_t>(std::max(1L, std::lround(length_m / longest_m)));
    };
    // The rod is the outline made smaller about the centre.
    const double inner = half_m - tap.spacing_m, rod_m = tap.length_m * inner / half_m;
    const auto gap_left = wires.add_node({-0.5 * gap_m, half_m});
    const auto gap_right = wires.add_node({0.5 * gap_m, half_m});
    const auto upper_right = wires.add_node({half_m, half_m}),
               lower_right = wires.add_node({half_m, -half_m});
    const auto joined = wires.add_node({tap.length_m, -half_m}), feed = wires.add_node({0, -half_m});
    const auto lower_left = wires.add_node({-half_m, -half_m}),
               upper_left = wires.add_node({-half_m, half_m});
    constexpr std::size_t gap_parts = 4;
    const BranchedWires::Gap capacitor{wires.add_wire(gap_left, gap_right, gap_parts, radius_m, conductor),
                                       gap_parts};
    wires.add_wire(gap_right, upper_right, parts(half_m), radius_m, conductor);
    wires.add_wire(upper_right, lower_right, parts(2 * half_m), radius_m, conductor);
    wires.add_wire(lower_right, joined, parts(half_m - tap.length_m), radius_m, conductor);
    const auto tapped_part = wires.add_wire(joined, feed, parts(tap.length_m), radius_m, conductor);
    wires.add_wire(feed, lower_left, parts(half_m), radius_m, conductor);
    wires.add_wire(lower_left, upper_left, parts(2 * half_m), radius_m, conductor);
    wires.add_wire(upper_left, gap_left, parts(half_m), radius_m, conductor);
    const auto bare = wires.open_impedances(frequency.value(), {tapped_part, 1}, capacitor);
    const auto rod_near = wires.add_node({0, -inner}), rod_far = wires.add_node({rod_m, -inner});
    constexpr std::size_t link_parts = 3;
    const auto near_link = wires.add_wire(feed, rod_near, link_parts, rod_radius_m, rod);
    wires.add_wire(rod_near, rod_far, parts(rod_m), rod_radius_m, rod);
    wires.add_wire(rod_far, joined, link_parts, rod_radius_m, rod);
    const auto z = wires.open_impedances(frequency.value(), {near_link + 1, 1}, capacitor);
    return {{z[0], z[1], z[2]}, (bare[2] - bare[1] * bare[1] / bare[0]).imag()};
}

/// What a person sees at the feed: the resistance at the resonance where it is largest, and the capacitance
/// of that resonance, for a capacitor of the quality given.
struct Seen {
    double resistance_ohm = 0, capacitance_F = 0;
};
Seen seen(const OpenTwoPort& port, double frequency_Hz, double q) {
    const double omega = 2 * pi * frequency_Hz;
    const double around_F = 1 / (omega * port.z22.imag());
    Seen best;
    for (int i = -4000; i <= 4000; ++i) {
        const double c = around_F * (1 + 2e-5 * i);
        const Complex z = port.input({1 / (omega * c * q), -1 / (omega * c)});
        if (z.real() > best.resistance_ohm) {
            best = {z.real(), c};
        }
    }
    return best;
}

/// In picofarads, without the digits that a difference of large numbers leaves.
double picofarads_of(double farads) {
    return std::round(farads * 1e15) / 1e3 + 0.0;
}

/// limit: of the resistance. What the circuit leaves out (the rod's capacitance and radiation, retardation
/// along it) grows with the square of the frequency; measured are 1.6 % at a twentieth of a wavelength round
/// and 6 % at 0.37 wavelengths.
struct Trial {
    double megahertz;
    Tap tap;
    double limit;
};

class TapAsWires : public ::testing::TestWithParam<Trial> {};

} // namespace

TEST_P(TapAsWires, TheCircuitSeesWhatTheWiresDo) {
    const auto& [megahertz, tap, limit] = GetParam();
    const units::Frequency f = units::megahertz(megahertz);
    const design::Design d = design_of(tap);
    const loop::FullWave alone(d);
    constexpr double q = 500;
    const Seen ours = seen(detail::TapFeed(d, *d.coupling, alone).at(f), f.value(), q);
    const Wires wires = as_wires(tap, alone, f, segment_m);
    const Seen theirs = seen(wires.tapped, f.value(), q);
    const support::Compared table("theory", "Tapped match: circuit (ours) and wires with branches (theirs)");
    std::array<char, 80> which{};
    (void)std::snprintf(which.data(), which.size(), "square of 1 m, rod %g m long, %g m off, %g MHz",
                        tap.length_m, tap.spacing_m, megahertz);
    table.share(which.data(), "resistance at resonance [ohm]", ours.resistance_ohm, theirs.resistance_ohm,
                limit);
    // What the rod adds to the loop by its own capacitance is not in the circuit.
    const double alone_F = alone.solved(f)->tuning_capacitance.value();
    const double wires_alone_F = 1 / (2 * pi * f.value() * wires.alone_reactance);
    table.amount(which.data(), "change of C by the tap [pF]", picofarads_of(ours.capacitance_F - alone_F),
                 picofarads_of(theirs.capacitance_F - wires_alone_F), 0.03);
    table.amount(which.data(), "C of the loop alone [pF]", alone_F * 1e12, wires_alone_F * 1e12,
                 0.001 * alone_F * 1e12 + 0.1);
}

INSTANTIATE_TEST_SUITE_P(Taps, TapAsWires,
                         ::testing::Values(Trial{3.6, {0.25, 0.05}, 0.025}, Trial{7.1, {0.25, 0.05}, 0.025},
                                           Trial{14.1, {0.25, 0.05}, 0.045}, Trial{14.1, {0.4, 0.05}, 0.045},
                                           Trial{14.1, {0.25, 0.1}, 0.045}, Trial{28.1, {0.25, 0.05}, 0.07}),
                         [](const auto& one) { return "case_" + std::to_string(one.index); });

// The yardstick itself: segments half as long change little, and a shorted two-wire line has the reactance
// Z0 tan(kl), Z0 = eta/pi ln(D/a) for D far above a (textbook).
TEST(BranchedWires, HasConverged) {
    const Tap tap{0.25, 0.05};
    const loop::FullWave alone(design_of(tap));
    const units::Frequency f = units::megahertz(14.1);
    const Wires coarse = as_wires(tap, alone, f, segment_m), fine = as_wires(tap, alone, f, 0.5 * segment_m);
    const Seen one = seen(coarse.tapped, f.value(), 500), other = seen(fine.tapped, f.value(), 500);
    EXPECT_NEAR(one.resistance_ohm / other.resistance_ohm, 1, 0.01);
    const auto change_pF = [&](const Wires& wires, const Seen& found) {
        return (found.capacitance_F - 1 / (2 * pi * f.value() * wires.alone_reactance)) * 1e12;
    };
    EXPECT_NEAR(change_pF(coarse, one), change_pF(fine, other), 0.05);
}

TEST(BranchedWires, AShortedTwoWireLineIsThatOfTheTextbook) {
    constexpr double length_m = 2, apart_m = 0.05, thin_m = 0.0005, frequency_Hz = 10e6;
    BranchedWires wires;
    const auto a = wires.add_node({0, 0}), b = wires.add_node({0, apart_m});
    const auto c = wires.add_node({length_m, apart_m}), e = wires.add_node({length_m, 0});
    const auto feed = wires.add_wire(a, b, 1, thin_m, 0.0);
    wires.add_wire(b, c, 60, thin_m, 0.0);
    const auto end = wires.add_wire(c, e, 1, thin_m, 0.0);
    wires.add_wire(e, a, 60, thin_m, 0.0);
    const auto z = wires.open_impedances(frequency_Hz, {feed, 1}, {end, 1});
    const double k = 2 * pi * frequency_Hz / units::constants::speed_of_light_m_s;
    const double line_ohm = units::constants::free_space_impedance_ohm / pi * std::log(apart_m / thin_m);
    const Complex shorted = z[0] - z[1] * z[1] / z[2];
    // Half the spacing at each end: what the end wires add to the length, to first order.
    EXPECT_NEAR(shorted.imag() / (line_ohm * std::tan(k * (length_m + apart_m))), 1, 0.02);
}

} // namespace loopwright::coupling
