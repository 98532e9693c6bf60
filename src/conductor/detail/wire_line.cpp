#include "conductor/detail/wire_line.hpp"

#include <algorithm>
#include <cmath>
#include <cstdlib>

namespace loopwright::conductor::detail {
namespace {

// Orders kept: the strengths fall like q^n, q the place of the last image inside a wire, in radii.
int orders_for(double ratio) {
    const double q = ratio - std::sqrt(ratio * ratio - 1.0);
    return std::clamp(static_cast<int>(std::ceil(-9.5 / std::log(q))) + 2, 3, 120);
}

} // namespace

WireLine::WireLine(int turns, double spacing_over_diameter)
    : turns_(turns), half_((turns + 1) / 2), orders_(orders_for(spacing_over_diameter)),
      spacing_(2.0 * spacing_over_diameter) {
    fill_tables();
}

void WireLine::fill_tables() {
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

Eigen::MatrixXd WireLine::coupling() const {
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

Eigen::VectorXd WireLine::line_currents() const {
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

} // namespace loopwright::conductor::detail
