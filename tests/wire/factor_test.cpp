// The factorisation without interchanges against Eigen's with them.
#include "wire/detail/full_matrix.hpp"
#include "wire/detail/port_solve.hpp"
#include "wire/detail/symmetric_factor.hpp"

#include <Eigen/LU>
#include <gtest/gtest.h>
#include <random>

namespace loopwright::wire::testing {
namespace {

using Complex = std::complex<double>;

/// Imaginary part of both signs on the diagonal blocks, small positive real part: like an impedance matrix.
FieldMatrix like_an_impedance(std::size_t n) {
    std::mt19937 random(7);
    std::normal_distribution<double> normal;
    Eigen::MatrixXd x(static_cast<Eigen::Index>(n), static_cast<Eigen::Index>(n));
    for (double& value : x.reshaped()) {
        value = normal(random);
    }
    Eigen::MatrixXd im = -1e4 * x * x.transpose();
    im.topLeftCorner(2, 2) << 3, 0, 0, 3;
    const Eigen::MatrixXd between = x.topRightCorner(2, im.cols() - 2);
    im.topRightCorner(2, im.cols() - 2) = between;
    im.bottomLeftCorner(im.rows() - 2, 2) = between.transpose();
    FieldMatrix packed{n, {}, {}};
    for (Eigen::Index i = 0; i < im.rows(); ++i) {
        for (Eigen::Index k = 0; k <= i; ++k) {
            packed.im.push_back(im(i, k));
            packed.re.push_back(i == k ? 1e-3 : 0.0);
        }
    }
    return packed;
}

TEST(SymmetricFactor, SolvesWhatTheGeneralOneSolves) {
    for (const std::size_t n : {3U, 4U, 17U, 60U}) {
        const FieldMatrix z = like_an_impedance(n);
        std::vector<Complex> x(n, 0.0);
        x[0] = 1;
        x[n / 2] = {0.5, -1};
        const Eigen::VectorXcd right = Eigen::Map<Eigen::VectorXcd>(x.data(), static_cast<Eigen::Index>(n));
        const Eigen::VectorXcd wanted = detail::full_matrix(z).fullPivLu().solve(right);
        detail::SymmetricFactor(z.re, z.im, n).solve(x);
        const Eigen::VectorXcd got = Eigen::Map<Eigen::VectorXcd>(x.data(), static_cast<Eigen::Index>(n));
        EXPECT_LT((got - wanted).norm(), 1e-9 * wanted.norm()) << n;
    }
}

TEST(PortSolve, FallsBackOnInterchangesForAVanishingPivot) {
    const FieldMatrix z{2, {0, 1, 0}, {0, 0, 0}}; // 0 1 / 1 0
    const detail::PortCurrents currents = detail::solve_ports(z, {{1, 0}, {0.5, 0.5}});
    EXPECT_EQ(currents.per_volt[0], Complex(0));
    EXPECT_EQ(currents.per_volt[1], Complex(1));
    EXPECT_EQ(currents.per_volt[2], Complex(0.5));
    EXPECT_LT(currents.residual, 1e-15);
}

} // namespace
} // namespace loopwright::wire::testing
