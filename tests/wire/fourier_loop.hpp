#pragma once
// The thin circular loop by Fourier series, apart from the solver: J. E. Storer, Trans. AIEE 75 (1956) 606;
// T. T. Wu, J. Math. Phys. 3 (1962) 1301; as given by R. W. P. King and G. S. Smith, Antennas in Matter
// (1981) (formulas from memory, and re-derived from the kernel's Fourier integral).
#include <complex>

namespace loopwright::wire::testing {

/// A loop of perfect conductor, driven by a voltage spread evenly over a gap; the currents are means over
/// gaps of that width.
struct FourierLoop {
    double radius_m = 1, wire_radius_m = 0.01, gap_m = 0.02;
    /// Current at the angle from the drive, for 1 V there [S].
    [[nodiscard]] std::complex<double> admittance(double wavenumber_rad_m, double angle) const;
};

/// K_n of Wu for x = 2 k b and the ratio wire radius over loop radius.
[[nodiscard]] std::complex<double> wu_coefficient(int n, double x, double ratio);

} // namespace loopwright::wire::testing
