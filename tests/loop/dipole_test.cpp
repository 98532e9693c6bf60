// The comparison dipole against published values: Balanis, Antenna Theory, sections 4.6 and 8.7; Kraus,
// Antennas, examples 2-10.2 and 6-12.1 (transcribed in a list of published values; the book pages not seen
// here).
#include "loop/dipole.hpp"

#include "base/error.hpp"
#include "ground/power_flux.hpp"
#include "ground/soil.hpp"

#include <gtest/gtest.h>

#include <cmath>
#include <utility>
#include <vector>

namespace loopwright::loop {
namespace {

const units::Frequency frequency = units::megahertz(14.1);
constexpr double wavelength_m = 299792458.0 / 14.1e6;

design::Ground perfect() {
    design::Ground ground;
    ground.kind = design::GroundKind::perfect;
    return ground;
}

ComparisonDipole at(double height_m, bool vertical = false) {
    ComparisonDipole dipole;
    dipole.height = units::metres(height_m);
    dipole.vertical = vertical;
    return dipole;
}

TEST(Dipole, InFreeSpaceHasThePublishedGainAndResistance) {
    const DipoleOverGround dipole({}, frequency, {});
    EXPECT_NEAR(dipole.gain(units::degrees(0), units::degrees(90)).value, half_wave_dipole_gain.value, 0.005);
    EXPECT_NEAR(dipole.gain(units::degrees(40), units::degrees(90)).value, half_wave_dipole_gain.value,
                0.005);
    EXPECT_NEAR(dipole.low_angle_gain().value, half_wave_dipole_gain.value, 0.005);
    EXPECT_LT(dipole.gain(units::degrees(0), units::degrees(0)).value, -60);
    EXPECT_NEAR(dipole.input_resistance().value(), 73.13, 0.2);
}

// Over a perfect mirror R = R11 -+ R12(2 h): parallel half-wave dipoles half a wavelength apart have R12 =
// -12.53 ohm, so that at a quarter of a wavelength the resistance is 85.7/73.1 of that in free space.
TEST(Dipole, OverPerfectGroundSeesItsImage) {
    const double alone = DipoleOverGround({}, frequency, {}).input_resistance().value();
    const double over =
        DipoleOverGround(perfect(), frequency, at(wavelength_m / 4)).input_resistance().value();
    EXPECT_NEAR(over / alone, (73.13 + 12.53) / 73.13, 0.002);
}

// The image doubles the field at the zenith a quarter of a wavelength up: 6.02 dB more, less what the
// resistance takes.
TEST(Dipole, OverPerfectGroundHasFourTimesTheIntensityOverhead) {
    const DipoleOverGround alone({}, frequency, {});
    const DipoleOverGround over(perfect(), frequency, at(wavelength_m / 4));
    const double more = 10 * std::log10(4 * (alone.input_resistance() / over.input_resistance()).value());
    EXPECT_NEAR(over.gain(units::degrees(90), units::degrees(0)).value, half_wave_dipole_gain.value + more,
                0.03);
}

/// The sinusoidal current of a half-wave dipole, 1 A rms at its middle, as short pieces.
std::vector<ground::CurrentElement> half_wave_pieces(double height_m, bool vertical) {
    const double pi = std::acos(-1.0), length_m = wavelength_m / 2;
    constexpr int count = 200;
    std::vector<ground::CurrentElement> pieces;
    for (int i = 0; i < count; ++i) {
        const double along = (i + 0.5) / count - 0.5;
        const double moment = std::cos(pi * along) * length_m / count;
        ground::CurrentElement piece{};
        piece.position_m = {vertical ? 0 : along * length_m, 0,
                            height_m + (vertical ? (along + 0.5) * length_m : 0)};
        piece.moment_A_m[vertical ? 2 : 0] = moment;
        pieces.push_back(piece);
    }
    return pieces;
}

// Over soil no resistance is published here; what goes in must reach the sky (far field) or the soil (flux of
// the plane-wave spectrum), two sums that know nothing of the induced EMF.
TEST(Dipole, OverSoilGivesWhatSkyAndSoilTake) {
    const double k = 2 * std::acos(-1.0) / wavelength_m;
    for (const auto& [permittivity, conductivity] :
         {std::pair{13.0, 0.005}, std::pair{3.0, 1e-4}, std::pair{70.0, 5.0}}) {
        design::Ground soil;
        soil.kind = design::GroundKind::soil;
        soil.relative_permittivity = permittivity;
        soil.conductivity = units::siemens_per_metre(conductivity);
        const auto eps =
            ground::complex_permittivity({permittivity, units::siemens_per_metre(conductivity)}, frequency);
        for (const bool vertical : {false, true}) {
            for (const double height : {2.0, 5.0, 12.0}) {
                const auto pieces = half_wave_pieces(height, vertical);
                const double out =
                    ground::sky_power_W(pieces, k, eps) + ground::ground_power_W(pieces, k, eps);
                const DipoleOverGround dipole(soil, frequency, at(height, vertical));
                EXPECT_NEAR(dipole.input_resistance().value() / out, 1, 0.001)
                    << permittivity << ' ' << vertical << ' ' << height;
            }
        }
    }
}

TEST(Dipole, TurnsAndStandsAsAsked) {
    ComparisonDipole turned = at(8);
    turned.azimuth = units::degrees(90);
    design::Ground soil;
    soil.kind = design::GroundKind::soil;
    const DipoleOverGround straight(soil, frequency, at(8));
    const DipoleOverGround across(soil, frequency, turned);
    EXPECT_NEAR(straight.gain(units::degrees(20), units::degrees(90)).value,
                across.gain(units::degrees(20), units::degrees(180)).value, 1e-6);
    EXPECT_NEAR(straight.low_angle_gain().value, across.low_angle_gain().value, 1e-6);
    const DipoleOverGround upright(soil, frequency, at(0.5, true));
    EXPECT_NEAR(upright.gain(units::degrees(20), units::degrees(0)).value,
                upright.gain(units::degrees(20), units::degrees(77)).value, 1e-6);
    EXPECT_LT(upright.gain(units::degrees(90), units::degrees(0)).value, -60);
}

TEST(Dipole, RefusesWhatItCannotHangUp) {
    EXPECT_THROW(DipoleOverGround(perfect(), frequency, at(0.01)), base::InputError);
    EXPECT_THROW(DipoleOverGround(perfect(), frequency, at(500)), base::InputError);
    EXPECT_THROW(DipoleOverGround({}, units::hertz(10), {}), base::InputError);
}

} // namespace
} // namespace loopwright::loop
