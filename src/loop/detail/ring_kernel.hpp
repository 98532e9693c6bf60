#pragma once
// Fourier coefficients round a circle of what two points of a thin round conductor do to each other.
#include <array>
#include <cstddef>

namespace loopwright::loop::detail {

/// K_n = int 𝒦 cos(n t) R dt round the circle [1] of the static kernel (L.5), 𝒦 taken at the chord 2 R
/// sin(t/2): a charge or an axial current that goes with cos(n t) sees K_n times itself. Averaged round both
/// surfaces the kernel is that of all pairs of points, so K_n = 2 mean Q_{n-1/2}(1 + h (1 - cos p)), h =
/// (a/R)^2, with Legendre's functions of the second kind, and
///   K_n = 2 (f - h (x f)'/6 + e (1 + h (m^2/2 - 1/6))), f(x) = I0(x) K0(x), x = m a/R, m^2 = n^2 + 1/12,
///   e = ln m - psi(n + 1/2), (L.26)
/// our own expansion in h (docs/theory/loop-closed-form.md). Relative error below 1e-8 up to a/R = 0.02,
/// 5e-6 at 0.1, 2e-4 at 0.25. Holds for 0 < a/R <= 0.3.
class RingKernel {
public:
    /// Orders that are computed as whole numbers.
    static constexpr std::size_t low = 35;

    explicit RingKernel(double wire_over_ring_radius) noexcept;
    /// n < low.
    [[nodiscard]] double of(std::size_t order) const noexcept;
    /// The same function of an order from 32 up that need not be whole; its logarithm is given with it.
    [[nodiscard]] double beyond(double order, double log_order) const noexcept;

private:
    double log_ratio_ = 0, sixth_of_h_ = 0;
};

/// int (1 + h - cos t)^(p/2) cos(n t) dt round the circle for p = 0 to 6 and n < orders: (R/(R_ring sqrt
/// 2))^p with R^2 = d^2 + 2 a^2, d the chord. Even p: finite sums. Odd p: from complete elliptic integrals by
/// recurrence. Accuracy 1e-14 of the largest of each power.
template <std::size_t Orders>
using RingPowers = std::array<std::array<double, Orders>, 7>;
inline constexpr std::size_t ring_power_orders = 34;
[[nodiscard]] RingPowers<ring_power_orders> ring_powers(double h) noexcept;

} // namespace loopwright::loop::detail
