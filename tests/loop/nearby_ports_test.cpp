// The admittances beside a frequency against the solutions they stand for, and that no edit is served old
// ones.
#include "loop/detail/nearby_ports.hpp"

#include "design/winding.hpp"
#include "loop/design_parts.hpp"
#include "loop/detail/solver_cache.hpp"
#include "loop/detail/underground.hpp"
#include "loop/full_wave.hpp"

#include <algorithm>
#include <cmath>
#include <gtest/gtest.h>

namespace loopwright::loop {
namespace {

using Complex = std::complex<double>;

struct NearbyCase {
    const char* name;
    design::Design design;
    double centre_Hz;
    double relative; ///< greatest difference
};

std::shared_ptr<const detail::SolvedFrequencies> solved_for(const design::Design& d) {
    const auto solver =
        detail::solver_of(design::as_winding(d.loop), conductor_of(d.conductor).equivalent_radius().value());
    if (d.site.ground.kind == design::GroundKind::free_space) {
        return detail::solved_frequencies_of(solver, nullptr, Workload::many_frequencies);
    }
    return detail::solved_frequencies_of(
        solver,
        detail::ground_of(solver, detail::underground_of(d.site.ground),
                          geometry::frame_of(design::as_winding(d.loop), placement_of(d.site)),
                          Workload::many_frequencies),
        Workload::many_frequencies);
}

std::vector<NearbyCase> nearby_cases() {
    // The ground's matrices are interpolated in octaves from 10 kHz: 5.12, 10.24, 20.48 MHz.
    constexpr double octaves_meet = 1e-8, within_one = 1e-11;
    std::vector<NearbyCase> all;
    design::Design d;
    all.push_back({"free space", d, 14.2e6, within_one});
    d.site.ground.kind = design::GroundKind::soil;
    d.site.lowest_point = units::metres(0.3);
    all.push_back({"low over soil", d, 7.1e6, within_one});
    all.push_back({"where the ground's octaves meet", d, 10.1e6, octaves_meet});
    d.site.tilt = units::degrees(55);
    all.push_back({"tilted", d, 28.2e6, within_one});
    d.site.ground.kind = design::GroundKind::perfect;
    all.push_back({"perfect ground", d, 10.1e6, octaves_meet});
    d.loop.outline = design::Outline::polygon;
    d.loop.size_is = design::SizeMeaning::across_flats;
    all.push_back({"octagon", d, 21.2e6, octaves_meet});
    d.loop.turns = 2;
    all.push_back({"two turns", d, 5.3e6, octaves_meet});
    all.push_back({"two turns near their resonance", d, 18.1e6, within_one});
    return all;
}

double port_difference(const wire::TwoPort& a, const wire::TwoPort& b) {
    return std::max(
        {std::abs(a.y11 / b.y11 - 1.0), std::abs(a.y12 / b.y12 - 1.0), std::abs(a.y22 / b.y22 - 1.0)});
}

TEST(NearbyPorts, AreTheSolutionsBetweenTheNodes) {
    for (const NearbyCase& c : nearby_cases()) {
        const auto solved = solved_for(c.design);
        const FullWave model(c.design);
        const auto conductor = [&](double f) { return model.conductor_ohm_per_m(units::hertz(f)); };
        const auto near = solved->near(units::hertz(c.centre_Hz), conductor);
        for (const double off : {-0.097, -0.031, 0.0, 0.0004, 0.052, 0.099}) {
            const double f = c.centre_Hz * (1 + off);
            ASSERT_TRUE(near->reaches(f));
            const auto direct = wire::two_port(solved->solve(units::hertz(f), conductor(f)).admittance());
            EXPECT_LT(port_difference(near->at(f), direct), c.relative) << c.name << ' ' << off;
        }
        EXPECT_FALSE(near->reaches(1.11 * c.centre_Hz));
        EXPECT_FALSE(near->reaches(0.89 * c.centre_Hz));
    }
}

TEST(NearbyPorts, AreKeptForTheSameConductorOnly) {
    const auto solved = solved_for(nearby_cases()[1].design);
    const units::Frequency f = units::megahertz(7.2);
    const auto even = [](double) { return Complex(0.1, 0.2); };
    const auto first = solved->near(f, even);
    EXPECT_EQ(solved->near(f, even), first);
    // The same at the frequency itself, another beside it.
    const auto falling = [](double at_Hz) { return Complex(0.1 * (at_Hz == 7.2e6 ? 1 : 1.01), 0.2); };
    const auto other = solved->near(f, falling);
    EXPECT_NE(other, first);
    EXPECT_GT(port_difference(other->at(7.5e6), first->at(7.5e6)), 1e-6);
}

/// Where the loop, matched at `r.tuning_capacitance`, has the VSWR, found by halving on solutions of its own.
double edge_by_halving_Hz(const design::Design& d, const Resonance& r, double f_Hz, double vswr,
                          double side) {
    const auto solved = solved_for(d);
    const FullWave model(d);
    const double matched = r.resistance.total().value(), c = r.tuning_capacitance.value();
    double inner = f_Hz, outer = f_Hz * (1 + 0.3 * side);
    for (int step = 0; step < 40; ++step) {
        const double f = 0.5 * (inner + outer), omega = 2 * std::acos(-1.0) * f;
        const auto port = wire::two_port(
            solved->solve(units::hertz(f), model.conductor_ohm_per_m(units::hertz(f))).admittance());
        const Complex load = 1.0 / Complex(1 / (omega * c * *d.capacitor.loss.q), -1 / (omega * c));
        const Complex z = port.input_impedance(load);
        const bool beyond = std::abs((z - matched) / (z + matched)) > (vswr - 1) / (vswr + 1);
        (beyond ? outer : inner) = f;
    }
    return 0.5 * (inner + outer);
}

// Each edit follows the one before, at the same frequency, so that whatever is kept too long shows.
TEST(NearbyPorts, BandwidthAfterEveryEditIsThatOfTheEditedLoop) {
    design::Design d;
    d.capacitor.loss.q = 60;
    d.site.ground.kind = design::GroundKind::soil;
    d.site.lowest_point = units::metres(0.4);
    const auto check = [&](const char* edit, double vswr = 2.0) {
        const Resonance r = *FullWave(d).at(units::megahertz(14.2), units::watts(5), vswr).resonance;
        ASSERT_LT(r.q_unloaded, 150) << edit;
        const double width =
            edge_by_halving_Hz(d, r, 14.2e6, vswr, 1) - edge_by_halving_Hz(d, r, 14.2e6, vswr, -1);
        EXPECT_NEAR(r.bandwidth_vswr.value() / width, 1.0, 1e-5) << edit;
    };
    check("none");
    d.capacitor.loss.q = 25;
    check("loss");
    d.capacitor.loss.q = 11;
    check("more loss");
    check("edges beyond what is kept", 9.0);
    d.site.lowest_point = units::metres(1.4);
    check("height");
    d.site.tilt = units::degrees(40);
    check("tilt");
    d.site.ground.relative_permittivity = 30;
    check("soil");
    d.conductor.temperature = units::degrees_celsius(80);
    check("conductor");
    d.loop.size = units::metres(1.07);
    check("size");
}

} // namespace
} // namespace loopwright::loop
