#pragma once
// Factorisation of a complex symmetric matrix, packed by rows of its lower triangle.
#include <complex>
#include <cstddef>
#include <span>
#include <vector>

namespace loopwright::wire::detail {

/// L D L^T without interchanges, half the work of a general factorisation. The impedance matrix suits it: at
/// low frequency its imaginary part is definite on the charges and on the uniform currents with opposite
/// signs (quasi-definite: every order of elimination works), and radiation keeps pivots from vanishing above.
/// The solver checks the residual and falls back on interchanges.
class SymmetricFactor {
public:
    /// re, im: entry (i, k <= i) at i (i + 1)/2 + k; n rows.
    SymmetricFactor(std::vector<double> re, std::vector<double> im, std::size_t n);
    /// Overwrites the right-hand side with the solution.
    void solve(std::span<std::complex<double>> x) const;

private:
    std::vector<double> re_, im_; ///< L below the diagonal, 1/D on it
    std::size_t n_;
};

} // namespace loopwright::wire::detail
