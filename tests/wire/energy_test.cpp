// Energy over ground: what goes in at the port against what reaches the sky (far field with its reflected
// wave), what crosses the surface (flux of the plane-wave spectrum) and what conductor and capacitor turn to
// heat. The last three are sums of their own; only the currents are common.
#include "conductor/skin_effect.hpp"
#include "ground/ground_classes.hpp"
#include "ground/power_flux.hpp"
#include "support/compared.hpp"
#include "support/sanitized.hpp"
#include "units/constants.hpp"
#include "wire/ground_hook.hpp"
#include "wire/loops.hpp"
#include "wire/samples.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <gtest/gtest.h>

namespace loopwright::wire::testing {
namespace {

using geometry::Frame;
using geometry::Vector3;
using units::constants::pi;

constexpr double diameter_m = 1.0, radius_m = 0.011, gap_m = 0.02, limit = 1e-3;
constexpr bool thinned = support::sanitized; // an instrumented build is ten times slower

/// Heights and bands of the grid; in part: two points.
std::vector<double> heights_m(bool in_part) {
    return in_part ? std::vector{0.1, 3.0} : std::vector{0.1, 0.3, 1.0, 3.0, 10.0, 20.0};
}
std::vector<double> bands_Hz(bool in_part) {
    return in_part ? std::vector{14.2e6} : std::vector{1.85e6, 7.1e6, 28.5e6};
}

Solver loop_of_copper() {
    return {{{vertical_circle(diameter_m, radius_m)}, {{0, pi * diameter_m / 2, gap_m}, {0, 0, gap_m}}, {}},
            {},
            units::megahertz(29)};
}

/// Tilted about x, its lowest point at the height.
Frame standing(double height_m, double tilt_deg) {
    const double t = tilt_deg * pi / 180;
    return {{0, 0, height_m + diameter_m / 2 * std::cos(t)},
            {1, 0, 0},
            {0, std::sin(t), std::cos(t)},
            {0, std::cos(t), -std::sin(t)}};
}

std::vector<ground::CurrentElement> placed(std::vector<ground::CurrentElement> pieces, const Frame& stand) {
    for (auto& piece : pieces) {
        const std::array<double, 3> p = piece.position_m;
        const auto m = piece.moment_A_m;
        const auto part = [](const Vector3& v, std::size_t i) { return i == 0 ? v.x : i == 1 ? v.y : v.z; };
        for (std::size_t i = 0; i < 3; ++i) {
            const double right = part(stand.right, i), rise = part(stand.rise, i), up = part(stand.up, i);
            piece.position_m[i] = part(stand.origin, i) + p[0] * right + p[1] * rise + p[2] * up;
            piece.moment_A_m[i] = m[0] * right + m[1] * rise + m[2] * up;
        }
    }
    return pieces;
}

struct Balance {
    double error = 0, ground_share = 0;
};

Balance balance_of(const Solver& solver, const GroundPairs& pairs, const Frame& stand,
                   const ground::Soil& soil, double frequency_Hz) {
    const units::Frequency f = units::hertz(frequency_Hz);
    const double k = 2 * pi * frequency_Hz / units::constants::speed_of_light_m_s;
    const Complex eps = ground::complex_permittivity(soil, f);
    const ground::HalfSpaceTable table(k, eps, pairs.greatest_rho_m() * 1.001, pairs.least_z_sum_m() * 0.999,
                                       pairs.greatest_z_sum_m() * 1.001);
    const FieldMatrix added = pairs.matrix(k, TabulatedGround(table));
    const Complex copper =
        conductor::wire_internal_impedance(units::metres(2 * radius_m), units::siemens_per_metre(58e6), f)
            .value();
    const Tuned tuned = tune(solver.solve(f, {{copper}, {}}, &added), 1000);
    // Near the ground the decaying part of the spectrum sees single pieces and single azimuths.
    const double lowest = 0.5 * pairs.least_z_sum_m();
    const int points = lowest < 0.2 ? 6 : 2;
    const int azimuths = lowest < 0.2 ? 32 : 16;
    const auto pieces = placed(current_elements(solver.mesh(), tuned.per_ampere, points), stand);
    const double sky = ground::sky_power_W(pieces, k, eps);
    const double soil_W = ground::ground_power_W(pieces, k, eps, azimuths);
    const double input = tuned.input_ohm.real();
    return {(sky + soil_W + tuned.conductor_ohm + tuned.capacitor_ohm) / input - 1, soil_W / input};
}

struct EnergyGround {
    const char* name;
    bool in_part; ///< between two others, time being short
};

class Energy : public ::testing::TestWithParam<EnergyGround> {};

TEST_P(Energy, InputIsSkyGroundAndLosses) {
    const ground::Soil soil = ground::find_ground_class(GetParam().name)->soil;
    const bool in_part = thinned || GetParam().in_part;
    const auto heights = heights_m(in_part), bands = bands_Hz(in_part);
    const Solver solver = loop_of_copper();
    const support::Compared table("power-balance", "Input = sky + ground + losses");
    for (const double tilt : {0.0, 30.0, 60.0, 90.0}) {
        double worst = 0, most = 0, least = 1;
        for (const double height : heights) {
            const Frame stand = standing(height, tilt);
            const GroundPairs pairs(solver.mesh(), stand);
            for (const double band : bands) {
                const Balance b = balance_of(solver, pairs, stand, soil, band);
                EXPECT_LT(std::abs(b.error), limit) << tilt << ' ' << height << ' ' << band;
                worst = std::abs(b.error) > std::abs(worst) ? b.error : worst;
                most = std::max(most, b.ground_share);
                least = std::min(least, b.ground_share);
            }
        }
        if (!in_part) { // the grid holds points where the ground matters and where it does not
            EXPECT_GT(most, 10 * least);
        }
        if (!thinned) {
            table.amount(std::string(GetParam().name) + ", tilt " + std::to_string(std::lround(tilt)) +
                             " degrees",
                         "worst sum over input, - 1, of " + std::to_string(heights.size() * bands.size()) +
                             " points [%]",
                         100 * worst, 0, 100 * limit);
        }
    }
}

INSTANTIATE_TEST_SUITE_P(
    Grounds, Energy,
    ::testing::Values(EnergyGround{"sea water", false}, EnergyGround{"wet ground", false},
                      EnergyGround{"average ground", false}, EnergyGround{"very dry ground", false},
                      EnergyGround{"fresh water", true}, EnergyGround{"medium dry ground", true}),
    [](const auto& chosen) {
        std::string name = chosen.param.name;
        std::erase(name, ' ');
        return name;
    });

} // namespace
} // namespace loopwright::wire::testing
