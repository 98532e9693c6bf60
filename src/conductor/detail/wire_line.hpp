#pragma once
// The line of parallel wires as a linear system: the harmonic expansion behind proximity.hpp.
#include <Eigen/Core>

namespace loopwright::conductor::detail {

// In units of the wire radius. Unknowns x(i, n) = sqrt(n) c(i, n), c the outer multipole n of wire i; the
// right half of the line mirrors the left, c(N-1-i, n) = (-1)^n c(i, n), and is not solved for.
class WireLine {
public:
    WireLine(int turns, double spacing_over_diameter);
    [[nodiscard]] int half() const { return half_; }
    [[nodiscard]] int orders() const { return orders_; }
    [[nodiscard]] int unknowns() const { return half_ * orders_; }
    /// T: scaled regular multipoles at wire i of the outer ones of all other wires, (C24).
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

} // namespace loopwright::conductor::detail
