#include "conductor/proximity.hpp"

#include "base/error.hpp"
#include "conductor/detail/wire_line.hpp"
#include "numeric/bessel.hpp"

#include <Eigen/LU>
#include <algorithm>
#include <cmath>
#include <complex>
#include <cstddef>

namespace loopwright::conductor {
namespace {

using detail::WireLine;

void check_line(int turns, double spacing_over_diameter) {
    if (turns < 1 || turns > 64 || !(spacing_over_diameter >= 1.02) ||
        !std::isfinite(spacing_over_diameter)) {
        throw base::ProgramError("proximity: turns outside 1..64 or spacing under 1.02 diameters");
    }
}

// How many wires of the line the wire i of the solved half stands for.
double weight_of(int i, int turns) {
    return 2 * i + 1 == turns ? 1.0 : 2.0;
}

// Loss of a round wire in a uniform transverse field over its thin-skin value, (C26): h = z I0/(2 I1).
double dipole_share(double radius_over_skin_depth) {
    const double q_squared = radius_over_skin_depth * radius_over_skin_depth;
    const std::complex<double> h = numeric::half_z_i0_over_i1({0.0, 2.0 * q_squared});
    return 0.5 * q_squared * h.imag() / (std::norm(h) * h.real());
}

} // namespace

ProximityLoss::ProximityLoss(int turns, double spacing_over_diameter) {
    check_line(turns, spacing_over_diameter);
    factors_.assign(static_cast<std::size_t>(turns), 1.0);
    if (turns == 1) {
        return;
    }
    const WireLine line(turns, spacing_over_diameter);
    Eigen::MatrixXd system = line.coupling();
    system.diagonal().array() += 1.0;
    const Eigen::PartialPivLU<Eigen::MatrixXd> solver(system);
    const Eigen::VectorXd currents = line.line_currents();
    const Eigen::VectorXd x = solver.solve(-currents);
    Eigen::VectorXd y = x; // y(i, n) = n x(i, n), for the first order in skin depth over radius
    for (Eigen::Index k = 0; k < y.size(); ++k) {
        y(k) *= static_cast<double>(k % line.orders() + 1);
    }
    const Eigen::VectorXd answer = solver.solve(y);
    double thin = 0.0, first_order = 0.0, filaments = 0.0; // sums over the wires
    for (int i = 0; i < line.half(); ++i) {
        const Eigen::Index start = Eigen::Index{i} * line.orders();
        const double weight = weight_of(i, turns);
        const auto x_i = x.segment(start, line.orders());
        const auto y_i = y.segment(start, line.orders());
        const double excess = 2.0 * x_i.dot(y_i);
        factors_[static_cast<std::size_t>(i)] = factors_[static_cast<std::size_t>(turns - 1 - i)] =
            1.0 + excess;
        thin += weight * excess;
        first_order +=
            weight * (4.0 * y_i.dot(answer.segment(start, line.orders())) - 2.0 * y_i.squaredNorm());
        filaments += weight * 2.0 * currents(start) * currents(start);
    }
    added_ = thin / turns;
    thick_limit_ = filaments / thin;
    const double slope = first_order / thin - 1.0; // g = 1 - slope / q for large q
    const double bend = std::fabs(1.0 - thick_limit_) > 1e-9 ? slope / (1.0 - thick_limit_) : 0.0;
    bend_ = std::fmax(bend, 0.0);
    if (bend_ > 0.0) {
        sharpness_ = std::clamp(3.0 * std::pow(bend_, -0.7), 1.0, 3.0);
    }
}

double ProximityLoss::added(double radius_over_skin_depth) const {
    if (!(radius_over_skin_depth >= 0.0) || !std::isfinite(radius_over_skin_depth)) {
        throw base::ProgramError("proximity: radius over skin depth must not be negative");
    }
    if (added_ == 0.0 || radius_over_skin_depth == 0.0) {
        return 0.0;
    }
    double bridge = 1.0;
    if (bend_ > 0.0) {
        const double reach = std::pow(radius_over_skin_depth / bend_, sharpness_);
        bridge -= (1.0 - thick_limit_) * std::pow(1.0 + reach, -1.0 / sharpness_);
    }
    return added_ * dipole_share(radius_over_skin_depth) * bridge;
}

double proximity_added_exact(int turns, double spacing_over_diameter, double radius_over_skin_depth) {
    check_line(turns, spacing_over_diameter);
    const double q = radius_over_skin_depth;
    if (!(q >= 1e-3 && q <= 1e5)) {
        throw base::ProgramError("proximity: radius over skin depth outside 1e-3..1e5");
    }
    if (turns == 1) {
        return 0.0;
    }
    const WireLine line(turns, spacing_over_diameter);
    const std::complex<double> w(0.0, 2.0 * q * q);
    Eigen::VectorXcd answer(line.orders()); // c = -answer * d of a wire, order by order
    numeric::i_ratios_two_apart(w, line.orders(), answer.data());
    // Unknown d sqrt(n) rather than c sqrt(n): finite however small the answer is.
    Eigen::MatrixXcd system = line.coupling().cast<std::complex<double>>();
    for (Eigen::Index k = 0; k < system.cols(); ++k) {
        system.col(k) *= answer(k % line.orders());
        system(k, k) += 1.0;
    }
    const Eigen::VectorXcd d = system.partialPivLu().solve(line.line_currents().cast<std::complex<double>>());
    const double ratio = q * q / numeric::half_z_i0_over_i1(w).real();
    double sum = 0.0;
    for (Eigen::Index k = 0; k < d.size(); ++k) {
        const int i = static_cast<int>(k / line.orders());
        sum += weight_of(i, turns) * std::norm(d(k)) * answer(k % line.orders()).imag() * ratio;
    }
    return sum / turns;
}

} // namespace loopwright::conductor
