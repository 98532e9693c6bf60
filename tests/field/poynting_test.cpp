// Energy: what leaves through a closed surface around the loop is what the loop does not keep as heat
// (Poynting's theorem, J. D. Jackson, Classical Electrodynamics, sec. 6.7, from memory as to the section).
#include "field/quick_field.hpp"
#include "units/constants.hpp"

#include <boost/math/quadrature/gauss.hpp>
#include <cmath>
#include <gtest/gtest.h>

namespace loopwright::field {
namespace {

using units::metres;
using units::constants::pi;
using Point = std::array<double, 3>;

design::Design a_loop(design::GroundKind ground, double tilt_deg) {
    design::Design d;
    d.capacitor.loss.q = 1000.0;
    d.site.ground.kind = ground;
    d.site.tilt = units::degrees(tilt_deg);
    d.site.lowest_point = metres(0.5);
    return d;
}

/// Real part of E x H* along a direction [W/m^2], rms fields.
double flux(const QuickField& field, const Point& at, const Point& normal) {
    const Field f = field.at_1W(at);
    double sum = 0;
    for (std::size_t i = 0; i < 3; ++i) {
        const std::size_t b = (i + 1) % 3, c = (i + 2) % 3;
        sum += normal[i] * (f.electric_V_m[b] * std::conj(f.magnetic_A_m[c]) -
                            f.electric_V_m[c] * std::conj(f.magnetic_A_m[b]))
                               .real();
    }
    return sum;
}

/// Outward through the sphere, or its upper half.
double through_sphere(const QuickField& field, double radius, double lowest_cosine) {
    using Rule = boost::math::quadrature::gauss<double, 30>;
    constexpr int azimuths = 36;
    return Rule::integrate(
        [&](double cosine) {
            const double sine = std::sqrt(1 - cosine * cosine);
            double around = 0;
            for (int i = 0; i < azimuths; ++i) {
                const double a = 2 * pi * i / azimuths;
                const Point out{sine * std::cos(a), sine * std::sin(a), cosine};
                around += flux(field, {radius * out[0], radius * out[1], radius * out[2]}, out);
            }
            return around * 2 * pi / azimuths * radius * radius;
        },
        lowest_cosine, 1.0);
}

/// Downward through the disc on the ground.
double into_the_ground(const QuickField& field, double radius) {
    using Rule = boost::math::quadrature::gauss<double, 30>;
    constexpr int azimuths = 48;
    double sum = 0;
    for (const auto& [from, to] : {std::pair{0.0, 0.8}, std::pair{0.8, 2.0}, std::pair{2.0, radius}}) {
        sum += Rule::integrate(
            [&](double r) {
                double around = 0;
                for (int i = 0; i < azimuths; ++i) {
                    const double a = 2 * pi * (i + 0.5) / azimuths;
                    around += flux(field, {r * std::cos(a), r * std::sin(a), 0}, {0, 0, -1});
                }
                return around * 2 * pi / azimuths * r;
            },
            from, to);
    }
    return sum;
}

TEST(Poynting, FreeSpaceFluxIsTheRadiatedPower) {
    for (const double f : {7.1e6, 28.5e6}) {
        const design::Design d = a_loop(design::GroundKind::free_space, 0);
        const loop::FullWave model(d);
        const double radiated = model.at(units::hertz(f), units::watts(1), 2.0).resonance.value().efficiency;
        const QuickField field(model.solved(units::hertz(f)).value(), metres(30), metres(1));
        for (const double radius : {1.2, 3.0, 12.0}) {
            EXPECT_NEAR(through_sphere(field, radius, -1.0) / radiated, 1, 0.01) << f << " Hz, " << radius;
        }
    }
}

TEST(Poynting, OverSoilFluxIsSkyAndGroundTogether) {
    for (const double tilt : {0.0, 50.0}) {
        const double f = 14.1e6;
        const design::Design d = a_loop(design::GroundKind::soil, tilt);
        const loop::FullWave model(d);
        const auto point = model.at(units::hertz(f), units::watts(1), 2.0);
        const loop::ResistanceParts& r = point.resonance.value().resistance;
        const double leaves = (r.radiation + r.ground.value()) / r.total();
        const QuickField field(model.solved(units::hertz(f)).value(), metres(30), metres(30));
        for (const double radius : {2.5, 5.0, 12.0}) {
            const double up = through_sphere(field, radius, 0.0);
            const double down = into_the_ground(field, radius);
            EXPECT_GT(down, 0);
            EXPECT_NEAR((up + down) / leaves, 1, 0.01) << tilt << " deg, " << radius << " m, up " << up;
        }
    }
}

} // namespace
} // namespace loopwright::field
