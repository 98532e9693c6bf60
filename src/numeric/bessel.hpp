#pragma once
// Modified Bessel functions of complex argument, in the scaled and ratio forms that conductors need.
// Boost.Math has them for real arguments only.
#include <complex>

namespace loopwright::numeric {

/// h(z) = z I0(z) / (2 I1(z)) [1], from w = z^2: h is an even function of z, and a purely imaginary w keeps
/// both parts of h accurate however small z is. Method: for Re z < 18 the continued fraction h = 1 + (w/2)/(4
/// + w/(6 + w/(8 + ...))) (Abramowitz and Stegun 9.6.26 applied repeatedly), evaluated backward; beyond, the
/// asymptotic series of I0/I1 in 1/z (from A&S 9.7.1). Range: |arg z| <= pi/3 with |z| up to 1e150, z = 0
/// included (h = 1). Accuracy: 1e-14 relative in each part on the ray arg z = pi/4, in modulus elsewhere.
[[nodiscard]] std::complex<double> half_z_i0_over_i1(std::complex<double> w);

/// I_{n+1}(z) / I_{n-1}(z) for n = 1..count, from w = z^2, written to `out` (count values): how a round wire
/// answers a transverse magnetic field of order n (-> 1 for a perfect conductor, -> w / (4 n (n + 1)) small).
/// Range and accuracy as half_z_i0_over_i1 (1e-13).
void i_ratios_two_apart(std::complex<double> w, int count, std::complex<double>* out);

/// I0, I1 times exp(-z) and K0, K1 times exp(z).
struct ScaledBessel {
    std::complex<double> i0, i1, k0, k1;
};

/// All four for Re z > 0, z != 0, |arg z| <= pi/3. K by the series of A&S 9.6.13/9.6.11 for |z| <= 2, by
/// Steed's continued fraction (Temme 1975) above; I from its ratio and the Wronskian I0 K1 + I1 K0 = 1/z
/// (A&S 9.6.15). Accuracy 1e-13 relative in modulus for 1e-8 <= |z| <= 1e5. Throws base::ProgramError
/// outside.
[[nodiscard]] ScaledBessel scaled_bessel(std::complex<double> z);

} // namespace loopwright::numeric
