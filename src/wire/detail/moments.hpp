#pragma once
// The impedance matrix as a power series of the wave number, each coefficient a real matrix of the geometry
// alone.
#include "wire/mesh.hpp"

#include <cstddef>
#include <vector>

namespace loopwright::wire::detail {

/// A symmetric matrix: entry (i, k <= i) at i (i + 1) / 2 + k.
using Packed = std::vector<double>;

/// Z = -j eta/(4 pi k) Sum_n (-j k)^n B_n over the unknowns of unknowns.hpp, docs/theory/wire.md (W4).
/// series[n] is B_n; even n make the imaginary part of Z, odd ones the real part; series[1] is zero and
/// empty.
struct Moments {
    std::size_t unknowns = 0;
    std::vector<Packed> series;
};

inline constexpr int highest_power_possible = 31;

/// highest_power: of k; 2 gives the static matrices alone (charges n = 0, currents n = 2, and of n = 2 the
/// first correction of the charges).
[[nodiscard]] Moments moments_of(const Mesh& mesh, int highest_power);

/// Least even power at which what is left out is below 1e-11 of the radiation of a small loop, (k R)^5/5!,
/// for all distances up to extent_m. 0: beyond the series (farthest_wavenumber).
[[nodiscard]] int power_needed(double wavenumber_rad_m, double extent_m);

/// The wave number [rad/m] up to which a series of at most highest_power_possible serves distances up to
/// extent_m: k R of about 5.4.
[[nodiscard]] double farthest_wavenumber(double extent_m);

} // namespace loopwright::wire::detail
