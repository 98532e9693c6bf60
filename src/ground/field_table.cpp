#include "ground/field_table.hpp"

#include "base/error.hpp"
#include "base/stopped.hpp"
#include "ground/imaginary_unit.hpp"

#include <Eigen/Core>
#include <algorithm>
#include <cmath>

namespace loopwright::ground {

namespace {

using Complex = std::complex<double>;
using Matrix = Eigen::MatrixXd;
constexpr int margin = 2; // rows beyond a ring's own, for the cubic

// Order of the kernels in a cell.
enum Kernel : std::size_t {
    horizontal,
    vertical,
    scalar,
    scalar_dz,
    horizontal_dz,
    mixed,
    scalar_drho,
    horizontal_drho,
    vertical_true_drho,
    mixed_over_rho,
    mixed_drho,
};
constexpr std::size_t with_bessel0 = 5; // the first ones; the next four with J1, then J1/x and J0 - J1/x
constexpr std::size_t with_bessel1 = 9;

using Floats = float __attribute__((vector_size(32)));
using numeric::lane_count;
using numeric::Lanes;

std::array<double, 4> cubic_weights(double t) {
    // Lagrange through -1, 0, 1, 2.
    const double a = t + 1.0, c = t - 1.0, d = t - 2.0;
    return {-t * c * d / 6.0, a * c * d / 2.0, -a * t * d / 2.0, a * t * c / 6.0};
}

/// Bessel functions at all rho and nodes: J0, J1, J1/x, J0 - J1/x.
struct BesselRows {
    std::array<Matrix, 4> of;
    BesselRows(const std::vector<HalfSpace::Node>& nodes, const std::vector<double>& rho,
               const base::StopToken& stop) {
        const auto rows = static_cast<Eigen::Index>(rho.size());
        const auto count = static_cast<Eigen::Index>(nodes.size());
        for (Matrix& m : of) {
            m.resize(rows, count);
        }
        for (Eigen::Index n = 0; n < count; ++n) {
            base::leave_if_stopped(stop);
            for (Eigen::Index i = 0; i < rows; ++i) {
                const double x = nodes[static_cast<std::size_t>(n)].kr * rho[static_cast<std::size_t>(i)];
                const double j0 = ::j0(x);
                const double j1 = ::j1(x);
                const double j1_over_x = x < 1e-4 ? 0.5 - x * x / 16.0 : j1 / x;
                of[0](i, n) = j0;
                of[1](i, n) = j1;
                of[2](i, n) = j1_over_x;
                of[3](i, n) = j0 - j1_over_x;
            }
        }
    }
    [[nodiscard]] const Matrix& for_kernel(std::size_t q) const {
        return of[q < with_bessel0 ? 0 : q < with_bessel1 ? 1 : q == mixed_over_rho ? 2 : 3];
    }
};

/// What stands before the Bessel function, by kernel.
std::array<Complex, 11> weights_of(const HalfSpace::Node& node) {
    std::array<Complex, 11> w;
    w[horizontal] = node.horizontal;
    w[vertical] = node.vertical;
    w[scalar] = node.scalar;
    w[scalar_dz] = -j * node.kz * node.scalar;
    w[horizontal_dz] = -j * node.kz * node.horizontal;
    w[mixed] = node.mixed;
    w[scalar_drho] = -node.kr * node.scalar;
    w[horizontal_drho] = -node.kr * node.horizontal;
    w[vertical_true_drho] = -node.kr * node.vertical_true;
    w[mixed_over_rho] = w[mixed_drho] = node.kr * node.mixed;
    return w;
}

/// Changes sign with rho; the others are even in rho.
bool is_odd(std::size_t q) {
    return q == mixed || q == scalar_drho || q == horizontal_drho || q == vertical_true_drho;
}

/// True for the potentials themselves, which fall as 1/R; derivatives fall as 1/R^2.
bool is_potential(std::size_t q) {
    return q == horizontal || q == vertical || q == scalar || q == mixed;
}

} // namespace

FieldTable::FieldTable(double wavenumber_rad_m, Complex permittivity, double rho_max_m, double z_min_m,
                       double z_max_m, double step)
    : k0_(wavenumber_rad_m), rho_max_(rho_max_m), z_min_(z_min_m), z_max_(std::max(z_max_m, z_min_m * 1.01)),
      eps_(permittivity), step_u_(std::abs(permittivity.imag()) < permittivity.real() ? step * 2 / 3 : step) {
    if (!(z_min_m > 0) || !(z_max_m >= z_min_m) || !(rho_max_m >= 0) || !(step >= 0.02 && step <= 0.3)) {
        throw base::ProgramError("FieldTable: the range of rho and Z or the step is empty");
    }
    v_start_ = std::log(z_min_);
    const double v_span = std::log(z_max_) - v_start_;
    grid_v_ = std::max(5, 2 + static_cast<int>(std::ceil(v_span / step_u_)));
    step_v_ = v_span / (grid_v_ - 1);
    // A ring spans a factor of four in rho (the first: 0 to sinh of as much).
    rows_per_ring_ = static_cast<int>(std::ceil(1.4 / step_u_));
    const double u_end = std::asinh(rho_max_ / z_min_);
    ring_count_ = 1 + static_cast<std::size_t>(u_end / (step_u_ * rows_per_ring_));
    rings_ = std::make_unique<RingGrid[]>(ring_count_);
}

void FieldTable::make_ring(std::size_t ring) const {
    const int first = static_cast<int>(ring) * rows_per_ring_;
    const int rows = rows_per_ring_ + 2 * margin;
    std::vector<double> rho;
    rho.reserve(static_cast<std::size_t>(rows));
    for (int i = 0; i < rows; ++i) {
        rho.push_back(z_min_ * std::sinh(std::abs((first - margin + i) * step_u_))); // even in rho
    }
    const double inner = ring == 0 ? 0.0 : rho.front();
    const HalfSpace half_space(k0_, eps_, HalfSpace::Ring{inner, rho.back()}, z_min_);
    const auto& nodes = half_space.nodes();
    const BesselRows bessel(nodes, rho, stop_);
    const auto count = static_cast<Eigen::Index>(nodes.size());
    Eigen::MatrixXcd decay(count, grid_v_);
    for (int v = 0; v < grid_v_; ++v) {
        base::leave_if_stopped(stop_);
        const double z = std::exp(v_start_ + v * step_v_);
        for (Eigen::Index n = 0; n < count; ++n) {
            decay(n, v) = std::exp(-j * nodes[static_cast<std::size_t>(n)].kz * z);
        }
    }
    RingGrid& grid = rings_[ring];
    grid.cells.resize(static_cast<std::size_t>(rows) * static_cast<std::size_t>(grid_v_));
    Matrix right(count, 2 * grid_v_); // real parts, imaginary parts
    for (std::size_t q = 0; q < kernels; ++q) {
        base::leave_if_stopped(stop_);
        for (Eigen::Index n = 0; n < count; ++n) {
            const Complex w = weights_of(nodes[static_cast<std::size_t>(n)])[q];
            for (int v = 0; v < grid_v_; ++v) {
                const Complex value = w * decay(n, v);
                right(n, v) = value.real();
                right(n, grid_v_ + v) = value.imag();
            }
        }
        const Matrix product = bessel.for_kernel(q) * right;
        const double sign_inside = is_odd(q) ? -1.0 : 1.0;
        for (int u = 0; u < rows; ++u) {
            const double sign = first - margin + u < 0 ? sign_inside : 1.0;
            for (int v = 0; v < grid_v_; ++v) {
                const double r =
                    std::hypot(rho[static_cast<std::size_t>(u)], std::exp(v_start_ + v * step_v_));
                const Complex phase = std::exp(j * k0_ * r);
                const Complex scale = is_potential(q) ? r * phase : r * r / Complex(1, k0_ * r) * phase;
                const Complex value = sign * scale * Complex(product(u, v), product(u, grid_v_ + v));
                Cell& cell = grid.cells[static_cast<std::size_t>(u) * static_cast<std::size_t>(grid_v_) +
                                        static_cast<std::size_t>(v)];
                cell.part[2 * q] = static_cast<float>(value.real());
                cell.part[2 * q + 1] = static_cast<float>(value.imag());
            }
        }
    }
}

void FieldTable::require_covered(double rho_m, double z_sum_m) const {
    const double slack = 1e-9;
    if (!(rho_m <= rho_max_ * (1 + slack) + slack * z_min_) || !(z_sum_m >= z_min_ * (1 - slack)) ||
        !(z_sum_m <= z_max_ * (1 + slack)) || rho_m < 0) {
        throw base::ProgramError("FieldTable: a look-up outside the tabulated range");
    }
}

FieldTable::Corner FieldTable::corner_of(double u, double v) const {
    const auto ring =
        std::min(static_cast<std::size_t>(static_cast<int>(u) / rows_per_ring_), ring_count_ - 1);
    RingGrid& grid = rings_[ring];
    if (!grid.made.load(std::memory_order_acquire)) {
        std::call_once(grid.once, [&] {
            make_ring(ring);
            grid.made.store(true, std::memory_order_release);
        });
    }
    const double local = u - static_cast<double>(static_cast<int>(ring) * rows_per_ring_ - margin);
    const int iu = static_cast<int>(local);
    const int iv = std::clamp(static_cast<int>(v), 1, grid_v_ - 3);
    const auto wu = cubic_weights(local - iu);
    const auto wv = cubic_weights(v - iv);
    Corner corner;
    corner.cell = grid.cells.data() + static_cast<std::ptrdiff_t>(iu - 1) * grid_v_ + (iv - 1);
    for (std::size_t a = 0; a < 4; ++a) {
        for (std::size_t b = 0; b < 4; ++b) {
            corner.weights[4 * a + b] = static_cast<float>(wu[a] * wv[b]);
        }
    }
    return corner;
}

[[gnu::always_inline]] inline void FieldTable::interpolate(const Corner& corner, std::ptrdiff_t row_length,
                                                           Cell& sum) {
    std::array<Floats, 6> parts{}; // two sums of three: they do not wait for each other
    for (std::size_t a = 0; a < 4; ++a) {
        const Cell* row = corner.cell + static_cast<std::ptrdiff_t>(a) * row_length;
        for (std::size_t b = 0; b < 4; ++b) {
            const float w = corner.weights[4 * a + b];
            const float* values = row[b].part.data();
            for (std::size_t p = 0; p < 3; ++p) {
                Floats eight;
                __builtin_memcpy(&eight, values + 8 * p, sizeof eight);
                parts[(b % 2) * 3 + p] += w * eight;
            }
        }
    }
    for (std::size_t p = 0; p < 3; ++p) {
        const Floats both = parts[p] + parts[p + 3];
        __builtin_memcpy(sum.part.data() + 8 * p, &both, sizeof both);
    }
}

LOOPWRIGHT_TWO_PROCESSORS
void FieldTable::at(const Lanes& rho_m, const Lanes& z_sum_m, FieldKernelLanes& kernels_at) const {
    const Lanes t = rho_m / z_min_;
    Lanes root, u, v;
    numeric::lanes_sqrt(t * t + 1.0, root);
    numeric::lanes_log(t + root, u); // asinh
    numeric::lanes_log(z_sum_m, v);
    u /= step_u_;
    v = (v - v_start_) / step_v_;
    std::array<Cell, lane_count> sums;
    for (int lane = 0; lane < lane_count; ++lane) {
        require_covered(rho_m[lane], z_sum_m[lane]);
        interpolate(corner_of(std::max(0.0, u[lane]), v[lane]), grid_v_,
                    sums[static_cast<std::size_t>(lane)]);
    }
    const auto take = [&](ComplexLanes& value, std::size_t q) {
        for (int lane = 0; lane < lane_count; ++lane) {
            const auto& part = sums[static_cast<std::size_t>(lane)].part;
            value.re[lane] = static_cast<double>(part[2 * q]);
            value.im[lane] = static_cast<double>(part[2 * q + 1]);
        }
    };
    take(kernels_at.horizontal, horizontal);
    take(kernels_at.vertical, vertical);
    take(kernels_at.scalar, scalar);
    take(kernels_at.scalar_dz, scalar_dz);
    take(kernels_at.horizontal_dz, horizontal_dz);
    take(kernels_at.mixed, mixed);
    take(kernels_at.scalar_drho, scalar_drho);
    take(kernels_at.horizontal_drho, horizontal_drho);
    take(kernels_at.vertical_true_drho, vertical_true_drho);
    take(kernels_at.mixed_over_rho, mixed_over_rho);
    take(kernels_at.mixed_drho, mixed_drho);
}

FieldKernels FieldTable::at(double rho_m, double z_sum_m) const {
    require_covered(rho_m, z_sum_m);
    const double u = std::asinh(rho_m / z_min_) / step_u_;
    const double v = (std::log(z_sum_m) - v_start_) / step_v_;
    Cell sums;
    interpolate(corner_of(u, v), grid_v_, sums);
    const auto& sum = sums.part;
    const double r = std::sqrt(rho_m * rho_m + z_sum_m * z_sum_m);
    const Complex potential = Complex(std::cos(k0_ * r), -std::sin(k0_ * r)) / r;
    const Complex slope = potential * Complex(1, k0_ * r) / r;
    const auto value = [&](std::size_t q) {
        return (is_potential(q) ? potential : slope) *
               Complex(static_cast<double>(sum[2 * q]), static_cast<double>(sum[2 * q + 1]));
    };
    FieldKernels kernels_at{};
    kernels_at.potential = {value(horizontal), value(vertical), value(mixed), value(scalar)};
    kernels_at.scalar_drho = value(scalar_drho);
    kernels_at.scalar_dz = value(scalar_dz);
    kernels_at.horizontal_drho = value(horizontal_drho);
    kernels_at.horizontal_dz = value(horizontal_dz);
    kernels_at.vertical_true_drho = value(vertical_true_drho);
    kernels_at.mixed_drho = value(mixed_drho);
    kernels_at.mixed_over_rho = value(mixed_over_rho);
    return kernels_at;
}

} // namespace loopwright::ground
