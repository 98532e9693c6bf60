#include "conductor/curvature.hpp"

#include "base/error.hpp"
#include "support/cases.hpp"
#include "support/compared.hpp"
#include "support/spaced.hpp"

#include <cmath>
#include <gtest/gtest.h>

namespace loopwright::conductor {

// The independent cases of a circular loop; their resistance factor is known to 1e-9.
TEST(RingCurrent, AgreesWithTheIndependentCases) {
    int checked = 0;
    for (const support::Case& c : support::independent_cases("inductance")) {
        if (!c.has_output("R_curvature_factor")) {
            continue;
        }
        const auto ring =
            ring_current(units::metres(c.input("radius")), units::metres(0.5 * c.input("wire_diameter")));
        const support::Compared table("independent-cases", "Inductance");
        table.share(c.id, "R_curvature_factor", ring.resistance_factor, c.output("R_curvature_factor"), 3e-9);
        const double exact_H = c.output("L_skin_exact");
        table.share(c.id, "L_skin_exact", ring.inductance.value(), exact_H, 1e-11);
        ++checked;
    }
    EXPECT_EQ(checked, 3);
}

// Thin ring: mu0 R (ln(8R/a) - 2), Rosa and Grover, NBS Bulletin 8 (1912), formula for current on the surface
// (from memory), with a correction of order (a/R)^2 ln.
TEST(RingCurrent, TendsToTheThinRing) {
    for (const double ratio : {1e3, 1e5, 1e7}) {
        const auto ring = ring_current(units::metres(ratio), units::metres(1.0));
        const double thin_H = 1.25663706212e-6 * ratio * (std::log(8.0 * ratio) - 2.0);
        EXPECT_NEAR(ring.inductance.value(), thin_H, 20.0 / (ratio * ratio) * thin_H + 1e-11 * thin_H)
            << ratio;
        EXPECT_NEAR(ring.resistance_factor, 1.0, 200.0 / (ratio * ratio) + 1e-11) << ratio;
    }
}

// Fat rings by mpmath 1.2.1, tests/reference/make_ring_table.py: ratio R/a, resistance factor, L/(mu0 R).
TEST(RingCurrent, AgreesWithMpmathForFatRings) {
    const double rows[][3] = {{1.5, 1.00724924193, 0.305635835434},
                              {2, 1.09987876379, 0.611628239117},
                              {4, 1.09532287654, 1.38032629952},
                              {10, 1.03697685326, 2.35516270148}};
    for (const auto& row : rows) {
        const auto ring = ring_current(units::metres(row[0]), units::metres(1.0));
        EXPECT_NEAR(ring.resistance_factor, row[1], 1e-11) << row[0];
        EXPECT_NEAR(ring.inductance.value() / (1.25663706212e-6 * row[0]), row[2], 1e-11) << row[0];
    }
}

// Below R/a = 3 the shorter path along the inner side takes back what the crowding costs.
TEST(RingCurrent, BendingRaisesTheResistanceOfLoops) {
    double before = 1e9;
    for (const double ratio : support::geometric(3, 1e4, 1.3)) {
        const double factor = curvature_factor(units::metres(ratio), units::metres(1.0));
        EXPECT_GT(factor, 1.0) << ratio;
        EXPECT_LT(factor, before) << ratio;
        before = factor;
    }
    EXPECT_THROW((void)curvature_factor(units::metres(1.0), units::metres(1.0)), base::ProgramError);
}

} // namespace loopwright::conductor
