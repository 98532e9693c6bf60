#pragma once
// The matrix equation of the ports: one factorisation, a solution for each port, and a check of what rounding
// left.
#include "wire/solver.hpp"

namespace loopwright::wire::detail {

struct PortCurrents {
    std::vector<std::complex<double>> per_volt; ///< [port][unknown]
    double residual = 0;                        ///< largest |Z x - v| [V]
};

/// ports: right-hand sides, weights over the unknowns with entries of about 1. Without interchanges first;
/// with them where that leaves more than 1e-9 or no number at all.
[[nodiscard]] PortCurrents solve_ports(const FieldMatrix& z, const std::vector<std::vector<double>>& ports);

} // namespace loopwright::wire::detail
