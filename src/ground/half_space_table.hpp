#pragma once
// The potentials' kernels of a half-space, tabulated for many look-ups at one frequency.
//
// Stored on asinh(rho/z_min) x ln Z with R exp(j k0 R) taken out (R = sqrt(rho^2 + Z^2)), which leaves smooth
// functions: Chebyshev nodes first (their tail is the error estimate), then a fine uniform grid with local
// cubic interpolation. Building is matrix products; a look-up costs about 0.1 microseconds.
#include "ground/half_space.hpp"

#include <array>
#include <complex>
#include <vector>

namespace loopwright::ground {

class HalfSpaceTable {
public:
    /// Covers 0 <= rho <= rho_max_m and z_min_m <= Z <= z_max_m. tolerance: wanted error relative to 1/(4 pi
    /// R), 1e-4 to 1e-9; nodes are added until the tail says it holds. Throws base::ProgramError for an empty
    /// range.
    HalfSpaceTable(double wavenumber_rad_m, std::complex<double> permittivity, double rho_max_m,
                   double z_min_m, double z_max_m, double tolerance = 1e-6);

    /// Kernels [1/m] by interpolation. Outside the covered range: base::ProgramError.
    [[nodiscard]] PotentialKernels potentials(double rho_m, double z_sum_m) const;

    /// Estimated error relative to 1/(4 pi R): the larger of the Chebyshev tail and the grid's own.
    [[nodiscard]] double error_estimate() const noexcept { return error_; }
    [[nodiscard]] std::array<int, 2> chebyshev_nodes() const noexcept { return {nu_, nv_}; }

private:
    /// Four kernels, real and imaginary part, side by side.
    using Cell = std::array<double, 8>;
    struct Coefficients; ///< of the Chebyshev expansion, four kernels, real and imaginary part
    void build(const HalfSpace& half_space, double tolerance);
    double fill_grid(const Coefficients& coefficients); ///< returns the estimated error of the grid [1]

    double k0_, rho_max_, z_min_, z_max_;
    double u_end_, v_start_, v_end_;
    int nu_ = 0, nv_ = 0; ///< Chebyshev nodes
    int grid_u_ = 0, grid_v_ = 0;
    double step_u_ = 1, step_v_ = 1;
    double error_ = 0;
    std::vector<Cell> grid_; ///< grid_[iu * grid_v_ + iv]
};

} // namespace loopwright::ground
