#pragma once
// Vectors and symmetric matrices over the currents that make up the loop's current (see LoopSeries).
#include <array>
#include <complex>
#include <cstddef>

namespace loopwright::loop::detail {

/// How many currents make up the loop's.
inline constexpr std::size_t currents = 3;

/// Coefficients of the currents.
using CurrentVector = std::array<std::complex<double>, currents>;

/// Symmetric matrix over the currents, upper triangle by rows: 00 01 02 11 12 22.
template <class T>
using Symmetric = std::array<T, currents*(currents + 1) / 2>;
[[nodiscard]] constexpr std::size_t entry(std::size_t i, std::size_t k) noexcept {
    return i <= k ? i * currents - i * (i + 1) / 2 + k : k * currents - k * (k + 1) / 2 + i;
}

} // namespace loopwright::loop::detail
