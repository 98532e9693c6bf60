#pragma once
// What a geometry is filled with once.
#include "wire/detail/moments.hpp"
#include "wire/solver.hpp"

namespace loopwright::wire {

namespace detail {

struct SparseEntry {
    std::size_t row, column; ///< column <= row
    double value;
    [[nodiscard]] std::size_t at() const noexcept { return row * (row + 1) / 2 + column; }
};

/// Sum of weights times unknowns: the mean current at a gap.
[[nodiscard]] inline std::complex<double> weighted(const std::vector<double>& weights,
                                                   const std::complex<double>* unknowns) {
    std::complex<double> sum = 0;
    for (std::size_t i = 0; i < weights.size(); ++i) {
        sum += weights[i] * unknowns[i];
    }
    return sum;
}

} // namespace detail

struct Solution::Parts {
    Mesh mesh;
    detail::Moments moments;
    double highest_wavenumber = 0;
    std::vector<std::vector<detail::SparseEntry>> conductors; ///< integral of I_i I_k over each conductor [m]
    std::vector<std::vector<double>> ports, loads;            ///< weights over the unknowns
    std::vector<std::vector<detail::SparseEntry>> load_forms; ///< the loads' weights squared
};

} // namespace loopwright::wire
