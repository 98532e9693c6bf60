#pragma once
// The packed symmetric matrix written out, for Eigen.
#include "wire/solver.hpp"

#include <Eigen/Core>
#include <complex>

namespace loopwright::wire::detail {

[[nodiscard]] inline Eigen::MatrixXcd full_matrix(const FieldMatrix& z) {
    const auto n = static_cast<Eigen::Index>(z.unknowns);
    Eigen::MatrixXcd full(n, n);
    std::size_t at = 0;
    for (Eigen::Index i = 0; i < n; ++i) {
        for (Eigen::Index k = 0; k <= i; ++k, ++at) {
            full(i, k) = full(k, i) = std::complex<double>(z.re[at], z.im[at]);
        }
    }
    return full;
}

} // namespace loopwright::wire::detail
