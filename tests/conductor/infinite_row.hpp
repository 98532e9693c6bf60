#pragma once
// One wire of an infinite row of equal parallel wires, thin skin, by lattice sums and plain elimination:
// written apart from src/conductor to check it. Wire radius 1; c(n) are the multipoles of every wire.
#include <cmath>
#include <cstddef>
#include <numbers>
#include <vector>

namespace loopwright::conductor {

struct InfiniteRow {
    double row = 1;  ///< resistance over that of a single wire, the row alone in space
    double coil = 1; ///< with the uniform field added that makes one side field-free: a long coil
};

// Riemann zeta for integer k >= 2: direct sum to 19, Euler-Maclaurin beyond.
inline double zeta(int k) {
    double sum = 0.0;
    for (int n = 1; n < 20; ++n) {
        sum += std::pow(n, -k);
    }
    return sum + std::pow(20.0, 1 - k) / (k - 1) + 0.5 * std::pow(20.0, -k) +
           k * std::pow(20.0, -k - 1) / 12.0 - k * (k + 1.0) * (k + 2.0) * std::pow(20.0, -k - 3) / 720.0;
}

using Rows = std::vector<std::vector<double>>;

// Elimination without pivoting (the diagonal leads); the last column is the right-hand side.
inline std::vector<double> solved(Rows a) {
    const std::size_t size = a.size();
    for (std::size_t k = 0; k < size; ++k) {
        for (std::size_t i = k + 1; i < size; ++i) {
            const double factor = a[i][k] / a[k][k];
            for (std::size_t j = k; j <= size; ++j) {
                a[i][j] -= factor * a[k][j];
            }
        }
    }
    std::vector<double> c(size);
    for (std::size_t k = size; k-- > 0;) {
        double sum = a[k][size];
        for (std::size_t j = k + 1; j < size; ++j) {
            sum -= a[k][j] * c[j];
        }
        c[k] = sum / a[k][k];
    }
    return c;
}

// Excess of resistance from the cosine multipoles (net currents of the others) or the sine ones (uniform
// field).
inline double row_excess(double diameter_over_pitch, bool sine) {
    constexpr int orders = 80;
    const double pitch = 2.0 / diameter_over_pitch;
    std::vector<double> lattice(2 * orders + 1, 0.0); // sum over the others, both sides, of 1/distance^k
    for (int k = 2; k <= 2 * orders; k += 2) {
        lattice[static_cast<std::size_t>(k)] = 2.0 * zeta(k) * std::pow(pitch, -k);
    }
    Rows a(orders, std::vector<double>(orders + 1, 0.0));
    for (int m = 1; m <= orders; ++m) {
        auto& row = a[static_cast<std::size_t>(m - 1)];
        double binomial = 1.0; // (m + n - 1)! / (m! (n - 1)!)
        for (int n = 1; n <= orders; ++n) {
            const double sign = (n % 2 == 0) != sine ? 1.0 : -1.0;
            row[static_cast<std::size_t>(n - 1)] =
                sign * binomial * lattice[static_cast<std::size_t>(m + n)] + (m == n ? 1.0 : 0.0);
            binomial *= static_cast<double>(m + n) / n;
        }
        if (sine) {
            row[orders] = m == 1 ? std::numbers::pi / pitch : 0.0;
        } else {
            row[orders] = -lattice[static_cast<std::size_t>(m)] / m;
        }
    }
    double excess = 0.0;
    const std::vector<double> c = solved(a);
    for (std::size_t k = 0; k < c.size(); ++k) {
        const double strength = static_cast<double>(k + 1) * c[k];
        excess += 2.0 * strength * strength;
    }
    return excess;
}

inline InfiniteRow infinite_row(double diameter_over_pitch) {
    const double row = 1.0 + row_excess(diameter_over_pitch, false);
    return {row, row + row_excess(diameter_over_pitch, true)};
}

} // namespace loopwright::conductor
