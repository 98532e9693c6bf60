#include "conductor/proximity.hpp"

#include "base/error.hpp"

#include <Eigen/Core>
#include <Eigen/LU>
#include <algorithm>
#include <cmath>
#include <cstddef>

namespace loopwright::conductor {
namespace {

// Orders kept: the strengths fall like q^n, q the place of the last image inside a wire, in radii.
int orders_for(double ratio) {
    const double q = ratio - std::sqrt(ratio * ratio - 1.0);
    return std::clamp(static_cast<int>(std::ceil(-9.5 / std::log(q))) + 2, 3, 120);
}

// The line of wires in units of the wire radius. Unknowns x(i, n) = sqrt(n) c(i, n), c the outer multipole n
// of wire i; the right half of the line mirrors the left, c(N-1-i, n) = (-1)^n c(i, n), and is not solved
// for.
class Line {
public:
    Line(int turns, double ratio)
        : turns_(turns), half_((turns + 1) / 2), orders_(orders_for(ratio)), spacing_(2.0 * ratio) {
        fill_tables();
    }
    [[nodiscard]] int half() const { return half_; }
    [[nodiscard]] int orders() const { return orders_; }
    [[nodiscard]] int unknowns() const { return half_ * orders_; }
    /// T: scaled regular multipoles at wire i of the outer ones of all other wires, (C.22).
    [[nodiscard]] Eigen::MatrixXd coupling() const;
    /// Scaled regular multipoles at wire i of the net currents of all other wires.
    [[nodiscard]] Eigen::VectorXd line_currents() const;

private:
    void fill_tables();
    // From order n at a wire `steps` places to the right (left: negative) to order m here.
    [[nodiscard]] double kernel(int m, int n, int steps) const {
        const bool even = (steps < 0 ? m : n) % 2 == 0;
        const double size = base_(m - 1, n - 1) * power_(m + n, std::abs(steps));
        return even ? size : -size;
    }
    int turns_, half_, orders_;
    double spacing_;
    Eigen::ArrayXXd base_;  // sqrt(m n) (m + n - 1)! / (m! n!)
    Eigen::ArrayXXd power_; // (spacing * steps)^-k
};

void Line::fill_tables() {
    base_.resize(orders_, orders_);
    for (int m = 1; m <= orders_; ++m) {
        double binomial = 1.0; // (m + n - 1)! / (m! (n - 1)!)
        for (int n = 1; n <= orders_; ++n) {
            base_(m - 1, n - 1) = binomial * std::sqrt(static_cast<double>(m) / n);
            binomial *= static_cast<double>(m + n) / n;
        }
    }
    power_.resize(2 * orders_ + 1, turns_);
    for (int steps = 1; steps < turns_; ++steps) {
        power_(0, steps) = 1.0;
        for (int k = 1; k <= 2 * orders_; ++k) {
            power_(k, steps) = power_(k - 1, steps) / (spacing_ * steps);
        }
    }
}

Eigen::MatrixXd Line::coupling() const {
    Eigen::MatrixXd t = Eigen::MatrixXd::Zero(unknowns(), unknowns());
    for (int j = 0; j < half_; ++j) {
        const int mirror = turns_ - 1 - j;
        for (int n = 1; n <= orders_; ++n) {
            const double mirror_sign = n % 2 == 0 ? 1.0 : -1.0;
            for (int i = 0; i < half_; ++i) {
                for (int m = 1; m <= orders_; ++m) {
                    double sum = i == j ? 0.0 : kernel(m, n, j - i);
                    if (mirror != j) {
                        sum += mirror_sign * kernel(m, n, mirror - i);
                    }
                    t(i * orders_ + m - 1, j * orders_ + n - 1) = sum;
                }
            }
        }
    }
    return t;
}

Eigen::VectorXd Line::line_currents() const {
    Eigen::VectorXd b = Eigen::VectorXd::Zero(unknowns());
    for (int i = 0; i < half_; ++i) {
        for (int m = 1; m <= orders_; ++m) {
            double sum = 0.0;
            for (int j = 0; j < turns_; ++j) {
                if (j != i) {
                    const double size = power_(m, std::abs(j - i));
                    sum += j < i && m % 2 != 0 ? -size : size;
                }
            }
            b(i * orders_ + m - 1) = sum / std::sqrt(static_cast<double>(m));
        }
    }
    return b;
}

} // namespace

ProximityLoss::ProximityLoss(int turns, double spacing_over_diameter) {
    if (turns < 1 || turns > 64 || !(spacing_over_diameter >= 1.02) ||
        !std::isfinite(spacing_over_diameter)) {
        throw base::ProgramError("proximity: turns outside 1..64 or spacing under 1.02 diameters");
    }
    factors_.assign(static_cast<std::size_t>(turns), 1.0);
    if (turns == 1) {
        return;
    }
    const Line line(turns, spacing_over_diameter);
    Eigen::MatrixXd system = line.coupling();
    system.diagonal().array() += 1.0;
    const Eigen::VectorXd x = system.partialPivLu().solve(-line.line_currents());
    for (int i = 0; i < line.half(); ++i) {
        double excess = 0.0;
        for (int n = 1; n <= line.orders(); ++n) {
            const double strength = x(i * line.orders() + n - 1);
            excess += 2.0 * n * strength * strength;
        }
        factors_[static_cast<std::size_t>(i)] = 1.0 + excess;
        factors_[static_cast<std::size_t>(turns - 1 - i)] = 1.0 + excess;
    }
    for (const double factor : factors_) {
        added_ += (factor - 1.0) / turns;
    }
}

} // namespace loopwright::conductor
