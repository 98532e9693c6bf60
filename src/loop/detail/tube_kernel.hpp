#pragma once
// The static kernel of a thin round conductor: 1/R averaged over the surfaces of two equal tubes.
#include <cmath>

namespace loopwright::loop::detail {

/// 1/R [1/m] averaged round both surfaces of parallel tubes of radius a at axis distance d, both points at
/// the same height: 1 / AGM(sqrt(d^2 + 4 a^2), d), (L.5). Exact for uniform currents round each; logarithmic
/// at d = 0, where it must not be called.
[[nodiscard]] inline double tube_kernel(double d_m, double radius_m) noexcept {
    double a = std::sqrt(d_m * d_m + 4 * radius_m * radius_m);
    double b = d_m;
    while (a - b > 1e-7 * a) {
        const double mean = 0.5 * (a + b);
        b = std::sqrt(a * b);
        a = mean;
    }
    return 2 / (a + b);
}

/// Second antiderivative of the kernel of radius 1 from 0: F(x) = int_0^x (x - y) K(y) dy, even in x.
/// Accuracy 1e-10 of F. For x >= 12 the series of the averaged multipoles, below from a table made once.
[[nodiscard]] double tube_double_integral(double x) noexcept;

/// int int K ds dt over two intervals of one straight tube [m], the first of length l1, the second of length
/// l2, their middles x apart.
[[nodiscard]] double collinear_integral(double l1_m, double l2_m, double x_m, double radius_m) noexcept;

} // namespace loopwright::loop::detail
