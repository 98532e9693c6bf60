#include "wire/detail/port_solve.hpp"

#include "wire/detail/full_matrix.hpp"
#include "wire/detail/symmetric_factor.hpp"

#include <Eigen/LU>
#include <algorithm>
#include <cmath>

namespace loopwright::wire::detail {

namespace {

using Complex = std::complex<double>;

constexpr double acceptable_residual = 1e-9;

// max |Z x - v| for one right-hand side; not a number where x is not.
double residual_of(const FieldMatrix& z, std::span<const Complex> x, const std::vector<double>& v) {
    std::vector<Complex> sum(v.begin(), v.end());
    std::size_t at = 0;
    for (std::size_t i = 0; i < z.unknowns; ++i) {
        for (std::size_t k = 0; k <= i; ++k, ++at) {
            const Complex entry(z.re[at], z.im[at]);
            sum[i] -= entry * x[k];
            if (k != i) {
                sum[k] -= entry * x[i];
            }
        }
    }
    double worst = 0;
    for (const Complex value : sum) {
        if (std::isnan(std::abs(value))) {
            return std::abs(value);
        }
        worst = std::max(worst, std::abs(value));
    }
    return worst;
}

double worst_residual(const FieldMatrix& z, const std::vector<std::vector<double>>& ports,
                      const std::vector<Complex>& x) {
    double worst = 0;
    for (std::size_t p = 0; p < ports.size(); ++p) {
        const double residual = residual_of(z, {&x[p * z.unknowns], z.unknowns}, ports[p]);
        if (std::isnan(residual)) {
            return residual;
        }
        worst = std::max(worst, residual);
    }
    return worst;
}

void solve_with_interchanges(const FieldMatrix& z, const std::vector<std::vector<double>>& ports,
                             std::vector<Complex>& x) {
    const auto n = static_cast<Eigen::Index>(z.unknowns);
    const auto factor = full_matrix(z).partialPivLu();
    for (std::size_t p = 0; p < ports.size(); ++p) {
        const Eigen::Map<const Eigen::VectorXd> v(ports[p].data(), n);
        Eigen::Map<Eigen::VectorXcd>(&x[p * z.unknowns], n) = factor.solve(v.cast<Complex>().eval());
    }
}

} // namespace

PortCurrents solve_ports(const FieldMatrix& z, const std::vector<std::vector<double>>& ports) {
    PortCurrents currents;
    std::vector<Complex>& x = currents.per_volt;
    for (const std::vector<double>& port : ports) {
        x.insert(x.end(), port.begin(), port.end());
    }
    const SymmetricFactor factor(z.re, z.im, z.unknowns);
    for (std::size_t p = 0; p < ports.size(); ++p) {
        factor.solve({&x[p * z.unknowns], z.unknowns});
    }
    currents.residual = worst_residual(z, ports, x);
    if (!(currents.residual < acceptable_residual)) {
        solve_with_interchanges(z, ports, x);
        currents.residual = worst_residual(z, ports, x);
    }
    return currents;
}

} // namespace loopwright::wire::detail
