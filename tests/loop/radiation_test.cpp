#include "base/error.hpp"
#include "conductor/proximity.hpp"
#include "conductor/skin_effect.hpp"
#include "geometry/winding.hpp"
#include "loop/radiation.hpp"
#include "support/cases.hpp"
#include "support/compared.hpp"
#include "units/constants.hpp"

#include <gtest/gtest.h>

namespace loopwright::loop {
namespace {

using support::Case;
using units::hertz;
using units::metres;
using units::constants::pi;
using units::constants::speed_of_light_m_s;

std::vector<Ring> rings(int turns, double radius, double pitch) {
    std::vector<Ring> list;
    list.reserve(static_cast<std::size_t>(turns));
    for (int i = 0; i < turns; ++i) {
        list.push_back({metres(radius), metres(i * pitch)});
    }
    return list;
}

units::Area turns_of(int turns, double area_m2) {
    return units::square_metres(turns * area_m2);
}

/// A row of docs/validation.
void compare_radiation(const Case& c, const std::string& quantity, double ours, double theirs, double limit) {
    const support::Compared table("independent-cases", "Radiation of a uniform current");
    table.share(c.id, quantity, ours, theirs, limit);
}

} // namespace

// independent_cases.json, radiation-01 to -06.
TEST(Radiation, OfUniformCurrentAgreesWithTheIndependentCases) {
    int compared = 0;
    for (const Case& c : support::independent_cases("radiation")) {
        const auto f = hertz(c.input("frequency"));
        const double wanted = c.output("R_uniform_exact");
        const double tolerance = c.tolerance("R_uniform_exact");
        ++compared;
        if (c.has_input("radius")) {
            const int turns = c.has_input("turns") ? static_cast<int>(c.input("turns")) : 1;
            const double r = c.input("radius");
            const double pitch = turns > 1 ? c.input("pitch") : 0;
            compare_radiation(c, "R_uniform_exact", rings_radiation(rings(turns, r, pitch), f).value(),
                              wanted, tolerance);
            compare_radiation(c, "R_small", small_loop_radiation(turns_of(turns, pi * r * r), f).value(),
                              c.output("R_small"), c.tolerance("R_small"));
            if (turns == 1) {
                geometry::Winding w;
                w.size = metres(2 * r);
                compare_radiation(c, "R_uniform_exact, of the path",
                                  uniform_radiation(geometry::wire_path(w), f).value(), wanted, tolerance);
            }
        } else {
            geometry::Winding w;
            w.outline = geometry::Outline::polygon;
            w.sides = static_cast<int>(c.input("n"));
            w.measure = geometry::Measure::conductor_length;
            w.size = metres(c.input("perimeter"));
            compare_radiation(c, "R_uniform_exact", uniform_radiation(geometry::wire_path(w), f).value(),
                              wanted, tolerance);
            compare_radiation(c, "R_small", small_loop_radiation(geometry::area(w), f).value(),
                              c.output("R_small"), c.tolerance("R_small"));
        }
    }
    EXPECT_EQ(compared, 6);
}

// Ratio of the exact to the small loop against k a, recomputed values of Foster's integral.
TEST(Radiation, OfARingFollowsFostersIntegral) {
    const struct {
        double ka, ratio;
    } table[] = {{0.1, .998002}, {0.2, .992029}, {0.25133, .987438}, {0.3, .982144},
                 {0.4, .968453}, {0.5, .951102}, {1.0, .816962}};
    for (const auto& row : table) {
        const auto f = hertz(row.ka * speed_of_light_m_s / (2 * pi));
        const double ratio = rings_radiation(rings(1, 1.0, 0), f).value() /
                             small_loop_radiation(units::square_metres(pi), f).value();
        EXPECT_NEAR(ratio, row.ratio, 6e-7) << row.ka;
        // First terms of its expansion: 1 - (ka)^2/5.
        EXPECT_NEAR(ratio, 1 - row.ka * row.ka / 5, 0.02 * std::pow(row.ka, 4)) << row.ka;
    }
}

// Textbook examples, digits as transcribed from the books by a public collection of worked solutions. The
// books use eta = 120 pi and c = 3e8 m/s, hence 0.07 % (eta) and, at a given frequency, 0.28 % (c^4).
TEST(Radiation, OfTheTextbooksSmallLoops) {
    const support::Compared table("published", "Small loops of textbooks");
    const double book_eta = 120 * pi / 376.730313668;
    // Balanis, Antenna Theory, example 5.1: radius lambda/25, 1 and 8 turns: 0.787572 and 50.404629 ohm.
    const double lambda = 3.0;
    const auto f = hertz(speed_of_light_m_s / lambda);
    const double area = pi * lambda * lambda / 625;
    table.share("Balanis, Antenna Theory, ex. 5.1", "R, 1 turn [ohm]",
                small_loop_radiation(turns_of(1, area), f).value() * book_eta, 0.787572, 3e-6);
    table.share("Balanis, Antenna Theory, ex. 5.1", "R, 8 turns [ohm]",
                small_loop_radiation(turns_of(8, area), f).value() * book_eta, 50.404629, 3e-6);
    // The rounded constant 31200: Wali, example 7.10.4: 0.7883 and 50.45 ohm.
    table.share("Wali, ex. 7.10.4", "R with 31200 [ohm]",
                small_loop_radiation(turns_of(1, area), f).value() * 31200 / 31149.0, 0.7883, 1e-4);
    // Sadiku, Elements of Electromagnetics, example 13.1: 10 turns, radius lambda/20: 192.3 ohm; 158 mW for
    // 5 uA/m at 2 km: H = k^2 I N A sin(t) / (4 pi r), peak.
    const double area13 = pi * lambda * lambda / 400;
    const double r13 = small_loop_radiation(turns_of(10, area13), f).value() * book_eta;
    table.share("Sadiku, ex. 13.1", "R, 10 turns [ohm]", r13, 192.278, 3e-6);
    const double k = 2 * pi / lambda;
    const double current = 5e-6 * 4 * pi * 2000 / (k * k * 10 * area13);
    table.share("Sadiku, ex. 13.1", "power [W]", 0.5 * current * current * r13, 0.158, 1e-3);
    // Kraus, Antennas, example 7-8.1: circumference 0.1 pi wavelengths: 197 C^4 = 1.919 ohm.
    const double radius = lambda * 0.05;
    table.share("Kraus, Antennas, ex. 7-8.1", "R [ohm]",
                small_loop_radiation(turns_of(1, pi * radius * radius), f).value() * book_eta, 1.919, 2e-3);
}

// textbook-01 and -02: small-loop radiation, thin-skin loss and crowding of the current, efficiency.
TEST(Radiation, OfTheIndependentTextbookCases) {
    const support::Compared table("independent-cases", "Textbook loops");
    int met = 0;
    for (const Case& c : support::independent_cases("textbook")) {
        const int turns = static_cast<int>(c.input("turns"));
        const double r = c.input("radius"), a = c.input("wire_radius");
        const auto f = hertz(c.input("frequency"));
        const double radiation = small_loop_radiation(turns_of(turns, pi * r * r), f).value();
        table.share(c.id, "R_rad", radiation, c.output("R_rad"), c.tolerance("R_rad"));
        double crowding = 0;
        if (turns > 1) {
            crowding = conductor::ProximityLoss(turns, c.input("pitch") / (2 * a)).thin_skin();
            table.share(c.id, "Rp_over_R0", crowding, c.output("Rp_over_R0"), c.tolerance("Rp_over_R0"));
        }
        const auto skin = conductor::surface_resistance(units::siemens_per_metre(c.input("sigma")), f);
        const double loss = turns * r / a * skin.value() * (1 + crowding);
        table.share(c.id, "R_loss", loss, c.output("R_loss"), c.tolerance("R_loss"));
        table.share(c.id, "efficiency", radiation / (radiation + loss), c.output("efficiency"),
                    c.tolerance("efficiency"));
        ++met;
    }
    EXPECT_EQ(met, 2);
}

TEST(Radiation, OfAPathDoesNotDependOnWhereItStarts) {
    geometry::Winding w;
    w.outline = geometry::Outline::polygon;
    w.sides = 6;
    w.measure = geometry::Measure::side;
    w.size = metres(0.5);
    const double flat = uniform_radiation(geometry::wire_path(w), units::megahertz(28)).value();
    w.corner_down = true;
    EXPECT_NEAR(uniform_radiation(geometry::wire_path(w), units::megahertz(28)).value(), flat, 1e-9 * flat);
    geometry::Placement tilted;
    tilted.tilt = units::degrees(33);
    EXPECT_NEAR(uniform_radiation(geometry::wire_path(w, tilted), units::megahertz(28)).value(), flat,
                1e-9 * flat);
    EXPECT_THROW((void)uniform_radiation(geometry::wire_path(w), hertz(0)), base::ProgramError);
}

} // namespace loopwright::loop
