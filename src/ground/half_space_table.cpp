#include "ground/half_space_table.hpp"

#include "base/error.hpp"
#include "units/constants.hpp"

#include <Eigen/Core>
#include <algorithm>
#include <cmath>

namespace loopwright::ground {

namespace {

using Complex = std::complex<double>;
using Matrix = Eigen::MatrixXd;
using units::constants::pi;
constexpr int kernels = 4;

/// Chebyshev nodes of the first kind on [a, b], descending.
std::vector<double> chebyshev_points(int n, double a, double b) {
    std::vector<double> x(static_cast<std::size_t>(n));
    for (int i = 0; i < n; ++i) {
        x[static_cast<std::size_t>(i)] = 0.5 * (a + b) + 0.5 * (b - a) * std::cos(pi * (i + 0.5) / n);
    }
    return x;
}

/// Row m: T_m at the nodes, so that (transform * values) are the coefficients.
Matrix chebyshev_transform(int n) {
    Matrix t(n, n);
    for (int m = 0; m < n; ++m) {
        for (int i = 0; i < n; ++i) {
            t(m, i) = (m == 0 ? 1.0 : 2.0) / n * std::cos(pi * m * (i + 0.5) / n);
        }
    }
    return t;
}

/// Row p: T_m at `count` even points from a to b.
Matrix chebyshev_at_grid(int n, int count) {
    Matrix t(count, n);
    for (int p = 0; p < count; ++p) {
        const double x = count > 1 ? -1.0 + 2.0 * p / (count - 1.0) : 0.0;
        const double angle = std::acos(std::clamp(x, -1.0, 1.0));
        for (int m = 0; m < n; ++m) {
            t(p, m) = std::cos(m * angle);
        }
    }
    return t;
}

struct NodeValues {
    std::array<Matrix, kernels> re, im; ///< nu x nv, R exp(j k0 R) taken out
};

/// The kernels at all pairs of nodes: Bessel matrix times weights times exponentials.
NodeValues at_nodes(const HalfSpace& half_space, const std::vector<double>& rho,
                    const std::vector<double>& z) {
    const auto& nodes = half_space.nodes();
    const auto count = static_cast<Eigen::Index>(nodes.size());
    const auto nu = static_cast<Eigen::Index>(rho.size());
    const auto nv = static_cast<Eigen::Index>(z.size());
    Matrix bessel0(nu, count);
    Matrix bessel1(nu, count);
    for (Eigen::Index n = 0; n < count; ++n) {
        for (Eigen::Index i = 0; i < nu; ++i) {
            const double x = nodes[static_cast<std::size_t>(n)].kr * rho[static_cast<std::size_t>(i)];
            bessel0(i, n) = ::j0(x);
            bessel1(i, n) = ::j1(x);
        }
    }
    std::array<Matrix, kernels> right_re;
    std::array<Matrix, kernels> right_im;
    for (int q = 0; q < kernels; ++q) {
        right_re[static_cast<std::size_t>(q)].resize(count, nv);
        right_im[static_cast<std::size_t>(q)].resize(count, nv);
    }
    for (Eigen::Index n = 0; n < count; ++n) {
        const HalfSpace::Node& node = nodes[static_cast<std::size_t>(n)];
        const std::array<Complex, kernels> weight{node.horizontal, node.vertical, node.scalar, node.mixed};
        for (Eigen::Index i = 0; i < nv; ++i) {
            const Complex e = std::exp(Complex(0, -1) * node.kz * z[static_cast<std::size_t>(i)]);
            for (std::size_t q = 0; q < kernels; ++q) {
                const Complex value = weight[q] * e;
                right_re[q](n, i) = value.real();
                right_im[q](n, i) = value.imag();
            }
        }
    }
    NodeValues values;
    for (std::size_t q = 0; q < kernels; ++q) {
        const Matrix& bessel = q == 3 ? bessel1 : bessel0;
        values.re[q].noalias() = bessel * right_re[q];
        values.im[q].noalias() = bessel * right_im[q];
    }
    return values;
}

void take_out_distance(NodeValues& values, double k0, const std::vector<double>& rho,
                       const std::vector<double>& z) {
    for (std::size_t i = 0; i < rho.size(); ++i) {
        for (std::size_t n = 0; n < z.size(); ++n) {
            const double r = std::hypot(rho[i], z[n]);
            const Complex factor = r * std::exp(Complex(0, k0 * r));
            const auto row = static_cast<Eigen::Index>(i);
            const auto col = static_cast<Eigen::Index>(n);
            for (std::size_t q = 0; q < kernels; ++q) {
                const Complex scaled = factor * Complex(values.re[q](row, col), values.im[q](row, col));
                values.re[q](row, col) = scaled.real();
                values.im[q](row, col) = scaled.imag();
            }
        }
    }
}

/// Largest coefficients of the last two orders, by rows (u) and by columns (v).
struct Tail {
    double u = 0, v = 0;
};
Tail tail_of(const Matrix& coefficients) {
    const Eigen::Index nu = coefficients.rows();
    const Eigen::Index nv = coefficients.cols();
    return {coefficients.bottomRows(std::min<Eigen::Index>(2, nu)).cwiseAbs().maxCoeff(),
            coefficients.rightCols(std::min<Eigen::Index>(2, nv)).cwiseAbs().maxCoeff()};
}

/// Error of cubic interpolation down the columns: predicts each value from its neighbours at -3, -1, 1, 3
/// steps, which errs 16 times as much as the look-up between neighbours.
double cubic_error_down(const Matrix& grid) {
    const Eigen::Index rows = grid.rows();
    if (rows < 7) {
        return 0;
    }
    const Eigen::Index count = rows - 6;
    const Matrix predicted = (9.0 / 16.0) * (grid.middleRows(2, count) + grid.middleRows(4, count)) -
                             (1.0 / 16.0) * (grid.topRows(count) + grid.bottomRows(count));
    return (predicted - grid.middleRows(3, count)).cwiseAbs().maxCoeff() / 16.0;
}

std::array<double, 4> cubic_weights(double t) {
    // Lagrange through -1, 0, 1, 2.
    const double a = t + 1.0, c = t - 1.0, d = t - 2.0;
    return {-t * c * d / 6.0, a * c * d / 2.0, -a * t * d / 2.0, a * t * c / 6.0};
}

} // namespace

struct HalfSpaceTable::Coefficients {
    std::array<Matrix, std::size_t{2} * kernels> parts;
};

HalfSpaceTable::HalfSpaceTable(double wavenumber_rad_m, Complex permittivity, double rho_max_m,
                               double z_min_m, double z_max_m, double tolerance)
    : k0_(wavenumber_rad_m), rho_max_(rho_max_m), z_min_(z_min_m),
      z_max_(std::max(z_max_m, z_min_m * 1.001)) {
    if (!(z_min_m > 0) || !(z_max_m >= z_min_m) || !(rho_max_m >= 0)) {
        throw base::ProgramError("HalfSpaceTable: the range of rho and Z is empty");
    }
    u_end_ = std::max(std::asinh(rho_max_ / z_min_), 1e-3);
    v_start_ = std::log(z_min_);
    v_end_ = std::log(z_max_);
    build(HalfSpace(k0_, permittivity, rho_max_m, z_min_m), tolerance);
}

void HalfSpaceTable::build(const HalfSpace& half_space, double tolerance) {
    constexpr int most = 64;
    nu_ = std::clamp(static_cast<int>(6 + 4.0 * u_end_), 8, most);
    nv_ = std::clamp(static_cast<int>(6 + 4.0 * (v_end_ - v_start_)), 7, most);
    const double wanted = tolerance / (4.0 * pi);
    Coefficients expansion;
    auto& coefficients = expansion.parts;
    for (;;) {
        std::vector<double> rho = chebyshev_points(nu_, 0.0, u_end_);
        std::vector<double> z = chebyshev_points(nv_, v_start_, v_end_);
        std::for_each(rho.begin(), rho.end(), [&](double& u) { u = z_min_ * std::sinh(u); });
        std::for_each(z.begin(), z.end(), [](double& v) { v = std::exp(v); });
        NodeValues values = at_nodes(half_space, rho, z);
        take_out_distance(values, k0_, rho, z);
        const Matrix left = chebyshev_transform(nu_);
        const Matrix right = chebyshev_transform(nv_).transpose();
        Tail worst;
        for (std::size_t q = 0; q < kernels; ++q) {
            coefficients[2 * q] = left * values.re[q] * right;
            coefficients[2 * q + 1] = left * values.im[q] * right;
            for (const std::size_t part : {2 * q, 2 * q + 1}) {
                const Tail tail = tail_of(coefficients[part]);
                worst.u = std::max(worst.u, tail.u);
                worst.v = std::max(worst.v, tail.v);
            }
        }
        error_ = std::max(worst.u, worst.v) * 4.0 * pi;
        const bool more_u = worst.u > wanted && nu_ < most;
        const bool more_v = worst.v > wanted && nv_ < most;
        if (!more_u && !more_v) {
            break;
        }
        nu_ = more_u ? std::min(most, nu_ + nu_ / 2) : nu_;
        nv_ = more_v ? std::min(most, nv_ + nv_ / 2) : nv_;
    }
    // Finer until the cubic interpolation holds too; its error falls with the fourth power of the step.
    for (double step = std::clamp(std::pow(tolerance / 0.05, 0.25), 0.01, 0.12);; step *= 0.6) {
        grid_u_ = std::max(8, 1 + static_cast<int>(std::ceil(u_end_ / step)));
        grid_v_ = std::max(8, 1 + static_cast<int>(std::ceil((v_end_ - v_start_) / step)));
        const double error = fill_grid(expansion) * 4.0 * pi;
        if (error <= tolerance || step < 0.01) {
            error_ = std::max(error_, error);
            return;
        }
    }
}

double HalfSpaceTable::fill_grid(const Coefficients& coefficients) {
    step_u_ = u_end_ / (grid_u_ - 1);
    step_v_ = (v_end_ - v_start_) / (grid_v_ - 1);
    const Matrix left = chebyshev_at_grid(nu_, grid_u_);
    const Matrix right = chebyshev_at_grid(nv_, grid_v_).transpose();
    grid_.resize(static_cast<std::size_t>(grid_u_) * static_cast<std::size_t>(grid_v_));
    double error = 0;
    for (std::size_t part = 0; part < coefficients.parts.size(); ++part) {
        const Matrix fine = left * coefficients.parts[part] * right;
        error = std::max({error, cubic_error_down(fine), cubic_error_down(fine.transpose())});
        for (Eigen::Index u = 0; u < grid_u_; ++u) {
            for (Eigen::Index v = 0; v < grid_v_; ++v) {
                grid_[static_cast<std::size_t>(u * grid_v_ + v)][part] = fine(u, v);
            }
        }
    }
    return error;
}

PotentialKernels HalfSpaceTable::potentials(double rho_m, double z_sum_m) const {
    const double slack = 1e-9;
    if (!(rho_m <= rho_max_ * (1 + slack) + slack * z_min_) || !(z_sum_m >= z_min_ * (1 - slack)) ||
        !(z_sum_m <= z_max_ * (1 + slack)) || rho_m < 0) {
        throw base::ProgramError("HalfSpaceTable: a look-up outside the tabulated range");
    }
    const double u = std::asinh(rho_m / z_min_) / step_u_;
    const double v = (std::log(z_sum_m) - v_start_) / step_v_;
    const int iu = std::clamp(static_cast<int>(u), 1, grid_u_ - 3);
    const int iv = std::clamp(static_cast<int>(v), 1, grid_v_ - 3);
    const auto wu = cubic_weights(u - iu);
    const auto wv = cubic_weights(v - iv);
    Cell sum{};
    for (int a = 0; a < 4; ++a) {
        const Cell* row = &grid_[static_cast<std::size_t>((iu - 1 + a) * grid_v_ + iv - 1)];
        for (int b = 0; b < 4; ++b) {
            const double w = wu[static_cast<std::size_t>(a)] * wv[static_cast<std::size_t>(b)];
            for (std::size_t part = 0; part < sum.size(); ++part) {
                sum[part] += w * row[b][part];
            }
        }
    }
    const double r = std::hypot(rho_m, z_sum_m);
    const Complex back = std::exp(Complex(0, -k0_ * r)) / r;
    return {back * Complex(sum[0], sum[1]), back * Complex(sum[2], sum[3]), back * Complex(sum[6], sum[7]),
            back * Complex(sum[4], sum[5])};
}

} // namespace loopwright::ground
