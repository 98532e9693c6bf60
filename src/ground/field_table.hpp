#pragma once
// What the ground adds to near fields, tabulated for very many points at one frequency.
//
// Rings of rho, each with its own short integral (HalfSpace::Ring) and made when first asked for. Stored on
// asinh(rho/z_min) x ln Z, the distance taken out: potentials times R exp(j k0 R), derivatives times
// R^2/(1 + j k0 R) exp(j k0 R); local cubic interpolation. Equations: docs/theory/ground.md.
#include "base/job.hpp"
#include "ground/half_space.hpp"
#include "numeric/lanes.hpp"

#include <array>
#include <atomic>
#include <complex>
#include <cstddef>
#include <memory>
#include <mutex>
#include <vector>

namespace loopwright::ground {

/// Four numbers, real and imaginary parts.
struct ComplexLanes {
    numeric::Lanes re, im;
};

/// Kernels at four places over their free-space shape: potentials times R exp(+j k R), derivatives and
/// mixed_over_rho times R^2 exp(+j k R)/(1 + j k R).
struct FieldKernelLanes {
    ComplexLanes horizontal, vertical, scalar, scalar_dz, horizontal_dz, mixed, scalar_drho, horizontal_drho,
        vertical_true_drho, mixed_over_rho, mixed_drho;
};

class FieldTable {
public:
    /// Covers 0 <= rho <= rho_max_m and z_min_m <= Z <= z_max_m. step: of the grid in both logarithms, two
    /// thirds of it over soil whose loss tangent is below 1, where the wave in the soil is seen far out; 0.08
    /// holds 1e-3 of 1/(4 pi R) and of |1 + j k R|/(4 pi R^2), the error falls with its fourth power. Throws
    /// base::ProgramError for an empty range or a step outside 0.02 to 0.3.
    FieldTable(double wavenumber_rad_m, std::complex<double> permittivity, double rho_max_m, double z_min_m,
               double z_max_m, double step = 0.08);

    /// Kernels by interpolation, about 0.1 microseconds; the first call in a ring makes it (a few
    /// milliseconds). From any number of threads. Outside the range: base::ProgramError.
    [[nodiscard]] FieldKernels at(double rho_m, double z_sum_m) const;

    /// The same at four places, without their shape: what a sum over many pieces wants.
    void at(const numeric::Lanes& rho_m, const numeric::Lanes& z_sum_m, FieldKernelLanes& kernels_at) const;

    /// From now on the token is read between the steps of making a ring (under a millisecond each); after a
    /// stop a look-up that needs a new ring throws base::Stopped, rings made stay. Not while others look up.
    void heed(const base::StopToken& stop) { stop_ = stop; }

    [[nodiscard]] double rho_max_m() const noexcept { return rho_max_; }
    [[nodiscard]] double z_min_m() const noexcept { return z_min_; }
    [[nodiscard]] double z_max_m() const noexcept { return z_max_; }

private:
    static constexpr std::size_t kernels = 11;
    /// Real and imaginary parts, two floats of padding; single precision (6e-8) is far below the grid's own
    /// error, and a look-up is bound by what it reads from memory.
    struct alignas(32) Cell {
        std::array<float, 24> part{};
    };
    struct RingGrid {
        std::once_flag once;
        std::atomic<bool> made = false; ///< cheaper to ask than the flag
        std::vector<Cell> cells;        ///< [iu * grid_v_ + iv], iu from the ring's first row
    };
    /// Where a look-up reads, and its weights.
    struct Corner {
        const Cell* cell;
        std::array<float, 16> weights;
    };
    void make_ring(std::size_t ring) const;
    void require_covered(double rho_m, double z_sum_m) const;
    /// u, v: in steps of the grid.
    [[nodiscard]] Corner corner_of(double u, double v) const;
    static void interpolate(const Corner& corner, std::ptrdiff_t row_length, Cell& sum);

    base::StopToken stop_;
    double k0_, rho_max_, z_min_, z_max_;
    std::complex<double> eps_;
    double step_u_ = 0.08, step_v_ = 0.08, v_start_ = 0;
    int rows_per_ring_ = 14, grid_v_ = 0;
    std::size_t ring_count_ = 1;
    std::unique_ptr<RingGrid[]> rings_;
};

} // namespace loopwright::ground
