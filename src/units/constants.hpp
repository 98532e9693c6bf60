#pragma once
// Constants of nature in SI, as plain doubles for kernels. Not Boost.Units' set, which is CODATA 2006.
// Source: CODATA 2018 recommended values (NIST, "Fundamental Physical Constants", 2019); BIPM, The
// International System of Units (SI), 9th edition 2019, for the defined ones.
namespace loopwright::units::constants {

// defined
inline constexpr double speed_of_light_m_s = 299'792'458.0;
inline constexpr double pi = 3.141592653589793238462643383279502884;
/// Zero of the Celsius scale in kelvin.
inline constexpr double celsius_zero_K = 273.15;
/// Boltzmann constant in J/K.
inline constexpr double boltzmann_J_K = 1.380649e-23;

// measured (CODATA 2018; relative standard uncertainty 1.5e-10). No longer exactly 4 pi 1e-7 since 2019.
inline constexpr double magnetic_constant_H_m = 1.25663706212e-6;

// derived
inline constexpr double electric_constant_F_m =
    1.0 / (magnetic_constant_H_m * speed_of_light_m_s * speed_of_light_m_s);
inline constexpr double free_space_impedance_ohm = magnetic_constant_H_m * speed_of_light_m_s;

} // namespace loopwright::units::constants
