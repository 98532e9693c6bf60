// The comparison dipole against published values: Balanis, Antenna Theory, sections 4.6 and 8.7; Kraus,
// Antennas, examples 2-10.2 and 6-12.1 (transcribed in a list of published values; the book pages not seen
// here).
#include "loop/dipole.hpp"

#include "base/error.hpp"

#include <gtest/gtest.h>

#include <cmath>

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
