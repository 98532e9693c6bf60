#include "base/error.hpp"
#include "conductor/curvature.hpp"
#include "geometry/winding.hpp"
#include "loop/detail/loop_series.hpp"
#include "loop/inductance.hpp"
#include "support/cases.hpp"
#include "support/compared.hpp"
#include "units/constants.hpp"

#include <gsl/gsl_sf_ellint.h>
#include <gtest/gtest.h>

namespace loopwright::loop {
namespace {

using support::Case;
using units::metres;
using units::constants::magnetic_constant_H_m;
using units::constants::pi;

void expect_near_share(double value, double wanted, double tolerance, const std::string& what) {
    EXPECT_NEAR(value / wanted - 1, 0, tolerance) << what << ": " << value << " against " << wanted;
}

std::vector<Ring> stacked(int turns, double radius, double pitch) {
    std::vector<Ring> rings;
    rings.reserve(static_cast<std::size_t>(turns));
    for (int i = 0; i < turns; ++i) {
        rings.push_back({metres(radius), metres(i * pitch)});
    }
    return rings;
}

int count_with(const std::string& output) {
    int count = 0;
    for (const Case& c : support::independent_cases("inductance")) {
        count += c.has_output(output) ? 1 : 0;
    }
    return count;
}

/// A row of docs/validation.
void compare(const Case& c, const std::string& quantity, double ours, double theirs, double limit) {
    const support::Compared table("independent-cases", "Inductance");
    table.share(c.id, quantity, ours, theirs, limit);
}

} // namespace

// independent_cases.json, inductance-01 to -03.
TEST(Inductance, OfARingInItsThinForms) {
    ASSERT_EQ(count_with("L_skin_thin"), 3);
    for (const Case& c : support::independent_cases("inductance")) {
        if (c.has_output("L_skin_thin")) {
            const auto r = metres(c.input("radius"));
            const auto a = metres(c.input("wire_diameter") / 2);
            compare(c, "L_skin_thin", circle_inductance_thin(r, a).value(), c.output("L_skin_thin"),
                    c.tolerance("L_skin_thin"));
            compare(c, "L_dc_thin", circle_inductance_dc(r, a).value(), c.output("L_dc_thin"),
                    c.tolerance("L_dc_thin"));
            compare(c, "L_flux_inner_disc", coaxial_mutual(r, r - a, metres(0)).value(),
                    c.output("L_flux_inner_disc"), c.tolerance("L_flux_inner_disc"));
        }
    }
}

// Rosa and Grover (1912), ring of 25 cm radius, wire of 0.05 cm radius: 654.40496 pi cm = 2.05587 uH at
// direct current (recalled from memory; the digits follow from the formula).
TEST(Inductance, OfTheRingOfRosaAndGrover) {
    expect_near_share(circle_inductance_dc(metres(0.25), metres(0.0005)).value(), 654.40496 * pi * 1e-9, 1e-8,
                      "Rosa and Grover");
}

// Maxwell, A Dynamical Theory of the Electromagnetic Field, art. 112 (manuscript read): two equal near
// circles at the distance r, M = 4 pi a (ln(8a/r) - 2) in electromagnetic units: the limit for r << a.
TEST(Inductance, OfTwoNearCirclesApproachesMaxwellsFirstApproximation) {
    const double a = 0.4;
    for (const double r : {1e-3, 1e-4}) {
        const double wanted = 4 * pi * a * (std::log(8 * a / r) - 2) * 1e-7;
        const support::Compared published("published", "Coils and circles of handbooks");
        published.share(
            "Maxwell, Dynamical Theory, art. 112, radius/distance " + std::to_string(std::lround(a / r)),
            "M [H]", coaxial_mutual(metres(a), metres(a), metres(r)).value(), wanted, 5 * r * r / a / a);
    }
}

// inductance-13 and -14, and the same formula with the GNU Scientific Library's elliptic integrals.
TEST(Inductance, MutualOfCoaxialCircles) {
    ASSERT_EQ(count_with("M_adjacent"), 2);
    for (const Case& c : support::independent_cases("inductance")) {
        if (c.has_input("r1")) {
            const double m =
                coaxial_mutual(metres(c.input("r1")), metres(c.input("r2")), metres(c.input("distance")))
                    .value();
            compare(c, "M", m, c.output("M"), c.tolerance("M"));
        }
    }
    for (const double z : {0.001, 0.05, 0.8, 12.0}) {
        const double r1 = 0.7;
        const double r2 = 0.3;
        const double k = std::sqrt(4 * r1 * r2 / ((r1 + r2) * (r1 + r2) + z * z));
        const double wanted = magnetic_constant_H_m * std::sqrt(r1 * r2) *
                              ((2 / k - k) * gsl_sf_ellint_Kcomp(k, GSL_PREC_DOUBLE) -
                               2 / k * gsl_sf_ellint_Ecomp(k, GSL_PREC_DOUBLE));
        const support::Compared theory("theory",
                                       "Mutual inductance of coaxial circles with GSL's elliptic integrals");
        theory.share("0.7 m and 0.3 m, " + std::to_string(z).substr(0, 6) + " m apart", "M [H]",
                     coaxial_mutual(metres(r1), metres(r2), metres(z)).value(), wanted, 1e-10);
    }
}

TEST(Inductance, MutualIsReciprocalAndFallsWithDistance) {
    double last = 1;
    for (const double z : {0.01, 0.05, 0.2, 0.5, 2.0}) {
        const double m = coaxial_mutual(metres(0.5), metres(0.3), metres(z)).value();
        EXPECT_DOUBLE_EQ(m, coaxial_mutual(metres(0.3), metres(0.5), metres(z)).value());
        EXPECT_DOUBLE_EQ(m, coaxial_mutual(metres(0.5), metres(0.3), metres(-z)).value());
        EXPECT_LT(m, last);
        EXPECT_GT(m, 0);
        last = m;
    }
    for (const double offset : {0.0, 0.1, 0.36, 0.9}) {
        const double m = parallel_axis_mutual(metres(0.5), metres(0.1), metres(offset), metres(0.05)).value();
        const double reversed =
            parallel_axis_mutual(metres(0.1), metres(0.5), metres(offset), metres(0.05)).value();
        EXPECT_NEAR(m, reversed, 1e-9 * std::abs(m) + 1e-20) << offset;
    }
}

// inductance-11 and -12.
TEST(Inductance, MutualOfCirclesWithParallelAxes) {
    ASSERT_EQ(count_with("M"), 4);
    for (const Case& c : support::independent_cases("inductance")) {
        if (c.has_input("main_radius")) {
            const double m =
                parallel_axis_mutual(metres(c.input("main_radius")), metres(c.input("small_radius")),
                                     metres(c.input("centre_offset")), metres(c.input("height")))
                    .value();
            compare(c, "M", m, c.output("M"), c.tolerance("M"));
        }
    }
}

// inductance-04 to -07.
TEST(Inductance, OfStraightSidedLoops) {
    int compared = 0;
    for (const Case& c : support::independent_cases("inductance")) {
        if (!c.has_output("L_skin")) {
            continue;
        }
        ++compared;
        const auto a = metres(c.input("wire_diameter") / 2);
        const bool polygon = c.has_input("n");
        const double l =
            polygon
                ? polygon_inductance(static_cast<int>(c.input("n")), metres(c.input("perimeter")), a).value()
                : rectangle_inductance(metres(c.input("width")), metres(c.input("height")), a).value();
        compare(c, "L_skin", l, c.output("L_skin"), c.tolerance("L_skin"));
        if (polygon) {
            const double inside = magnetic_constant_H_m / (8 * pi) * c.input("perimeter");
            compare(c, "L_dc", l + inside, c.output("L_dc"), c.tolerance("L_dc"));
        }
    }
    EXPECT_EQ(compared, 4);
}

// Grover's formula for the square as printed in handbooks, without its corner term a/s and the inside of the
// wire (from memory): 8 s (ln(s/a) - 0.77401) in 1e-7 H.
TEST(Inductance, OfTheSquareOfTheHandbooks) {
    const double side = 1.1;
    const double a = 0.004;
    expect_near_share(polygon_inductance(4, metres(4 * side), metres(a)).value(),
                      8e-7 * side * (std::log(side / a) - 0.77401), 3e-6, "Grover");
    expect_near_share(rectangle_inductance(metres(side), metres(side), metres(a)).value(),
                      polygon_inductance(4, metres(4 * side), metres(a)).value(), 1e-12, "square");
}

TEST(Inductance, OfManySidesApproachesTheCircle) {
    const double circle = circle_inductance_thin(metres(0.5), metres(0.0001)).value();
    double last = 1;
    for (const int sides : {8, 16, 32, 64}) {
        const double gap = circle / polygon_inductance(sides, metres(pi), metres(0.0001)).value() - 1;
        EXPECT_LT(std::abs(gap), 0.45 * last) << sides;
        last = std::abs(gap);
    }
    EXPECT_LT(last, 0.002);
}

// inductance-08 to -10: rings with the current spread evenly exactly; the redistribution, which the cases
// have from a perfectly conducting solution, within a tenth of itself.
TEST(Inductance, OfSeveralTurns) {
    int compared = 0;
    for (const Case& c : support::independent_cases("inductance")) {
        if (!c.has_output("L_rings")) {
            continue;
        }
        ++compared;
        const bool spiral = c.has_input("outer_mean_radius");
        const int turns = static_cast<int>(c.input("turns"));
        std::vector<Ring> rings =
            spiral ? std::vector<Ring>{} : stacked(turns, c.input("radius"), c.input("pitch"));
        for (int i = 0; spiral && i < turns; ++i) {
            rings.push_back({metres(c.input("outer_mean_radius") - i * c.input("pitch")), metres(0)});
        }
        const auto a = metres(c.input("wire_diameter") / 2);
        compare(c, "L_rings", rings_inductance(rings, a).value(), c.output("L_rings"),
                c.tolerance("L_rings"));
        const double taken = c.output("L_rings_pec") - c.output("L_rings");
        compare(c, "L_rings_pec - L_rings", rings_redistribution(rings, a).value(), taken, 0.1);
        if (c.has_output("M_adjacent")) {
            compare(c, "M_adjacent",
                    coaxial_mutual(rings[0].radius, rings[1].radius, metres(c.input("pitch"))).value(),
                    c.output("M_adjacent"), c.tolerance("M_adjacent"));
        }
    }
    EXPECT_EQ(compared, 3);
}

// Grover, Inductance Calculations (Dover 1973), Table 36: Nagaoka's coefficient K of the current sheet, whose
// inductance is mu0 N^2 A K / l. Rings of wire radius pitch/(2 pi) have the sheet's inductance when there are
// many: a strip as wide as the pitch acts on itself like a wire of pitch exp(-3/2), and on the others less
// than its middle by 0.3379 = ln(2 pi) - 3/2 in all (Rosa's two corrections).
TEST(Inductance, OfManyRingsApproachesNagaokasCurrentSheet) {
    const struct {
        double length_over_diameter, k;
    } table[] = {{0.20, 0.319825}, {0.50, 0.525510}, {1.00, 0.688423}};
    const int turns = 200;
    for (const auto& row : table) {
        const double radius = 0.5;
        const double length = row.length_over_diameter * 2 * radius;
        const double pitch = length / turns;
        const double sheet = magnetic_constant_H_m * turns * turns * pi * radius * radius * row.k / length;
        const double rings =
            rings_inductance(stacked(turns, radius, pitch), metres(pitch / (2 * pi))).value();
        const support::Compared published("published", "Coils and circles of handbooks");
        published.share("Grover, Table 36 (Nagaoka), length/diameter " +
                            std::to_string(row.length_over_diameter).substr(0, 4),
                        "K, from 200 rings", rings / sheet * row.k, row.k, 5e-5);
    }
}

// The sum over the real path: a circle, polygons with their corners as tubes, a stack with its leads.
TEST(Inductance, SummedOverThePathAgreesWithTheClosedForms) {
    geometry::Winding w;
    const auto of_path = [](const geometry::Winding& winding, double a) {
        detail::Cutting cutting;
        cutting.longest = 1.0 / (24 * winding.turns);
        cutting.even_turns = winding.turns > 1;
        return detail::prepare_loop(geometry::wire_path(winding), a, 0, {}, {}, cutting).series.inductance_H;
    };
    expect_near_share(of_path(w, 0.001), circle_inductance_thin(metres(0.5), metres(0.001)).value(), 2e-4,
                      "circle");
    w.outline = geometry::Outline::polygon;
    w.sides = 4;
    w.measure = geometry::Measure::side;
    // A tube of length s has 4 a/pi more in the bracket of (L.4) than its thin form; at right angles sides do
    // not act on each other.
    const double corners = magnetic_constant_H_m / (2 * pi) * 4 * 4 / pi * 0.0075;
    expect_near_share(of_path(w, 0.0075), polygon_inductance(4, metres(4), metres(0.0075)).value() + corners,
                      1e-4, "square");
    w = {};
    w.turns = 3;
    w.size = metres(0.8);
    w.spacing = units::millimetres(40);
    w.lead = units::millimetres(15);
    // Short leads against three turns: the rings are close, not the same.
    expect_near_share(of_path(w, 0.005), rings_inductance(stacked(3, 0.4, 0.04), metres(0.005)).value(),
                      0.006, "stack");
}

TEST(Inductance, RefusesSizesThatDoNotFit) {
    EXPECT_THROW((void)circle_inductance_thin(metres(0.1), metres(0.1)), base::ProgramError);
    EXPECT_THROW((void)coaxial_mutual(metres(0.1), metres(0.1), metres(0)), base::ProgramError);
    EXPECT_THROW((void)polygon_inductance(2, metres(1), metres(0.01)), base::ProgramError);
    EXPECT_THROW((void)rectangle_inductance(metres(0), metres(1), metres(0.01)), base::ProgramError);
}

} // namespace loopwright::loop
