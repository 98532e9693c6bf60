#pragma once
// The orders of a Fourier series round a circle as a sum of few terms.
#include "loop/detail/ring_kernel.hpp"

#include <array>
#include <cstddef>

namespace loopwright::loop::detail {

/// Sums over all orders n >= 1 of products of two terms that go with sin(n alpha): the first 33 orders one by
/// one, beyond 32.5 an integral (Euler and Maclaurin's formula to the first derivative) by Gauss points
/// between fixed phases, and beyond the phase 2 pi with the mean of sin^2. alpha: half of the gap's angle.
struct RingModes {
    static constexpr std::size_t singly = 33, capacity = 360;
    std::size_t size = 0;
    double scalar_0 = 0, vector_0 = 0; ///< of order 0
    std::array<double, capacity> order;
    std::array<double, capacity> weight;
    std::array<double, capacity> spread; ///< sin(n alpha) / (n alpha): mean of cos(n t) over the gap
    std::array<double, capacity> scalar; ///< K_n, (L.26)
    std::array<double, capacity> vector; ///< (K_{n-1} + K_{n+1}) / 2: of elements round the circle
    std::array<double, capacity> yield;  ///< 1 / (n^2 K_n)
    /// (-1)^n for sums of one such term, by Boole's formula; 0 beyond `singly`.
    std::array<double, singly> alternating;
};

[[nodiscard]] RingModes ring_modes(double wire_over_ring_radius, double alpha) noexcept;

} // namespace loopwright::loop::detail
