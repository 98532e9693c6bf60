#pragma once
// How the ground enters the wire solver: as one more impedance matrix, added to that of free space
// (Solver::solve's `added`).
//
// The ground gives, for pairs of points above it, what it adds to the kernels of the two potentials
// (ground::PotentialKernels, docs/theory/ground.md G4 to G8); the wire knows positions, tangents and charges:
//   Z_ik = j k eta Int Int I_i I_k K_A  -  j eta/k Int Int I_i' I_k' K_phi,
//   K_A  = (t.t')_h K_horizontal + tz tz' K_vertical + [tz (t'.rho) - (t.rho) tz'] K_mixed,
// t, I of the observer, t', I' of the source, rho the horizontal unit vector from source to observer. It is
// symmetric, since K_mixed enters with opposite signs.
#include "ground/half_space.hpp"
#include "ground/half_space_table.hpp"
#include "units/quantities.hpp"
#include "wire/solver.hpp"

#include <array>
#include <span>
#include <vector>

namespace loopwright::wire {

/// Kernels for many pairs of points at one frequency. rho_m: horizontal distances, z_sum_m: sums of the two
/// heights, out: as many results [1/m], the 1/(4 pi) in them.
class GroundKernels {
public:
    virtual ~GroundKernels() = default;
    virtual void potentials(std::span<const double> rho_m, std::span<const double> z_sum_m,
                            std::span<ground::PotentialKernels> out) const = 0;

protected:
    GroundKernels() = default;
    GroundKernels(const GroundKernels&) = default;
    GroundKernels& operator=(const GroundKernels&) = default;
};

/// Perfectly conducting ground: the image, exp(-jkR)/(4 pi R) with -1 for horizontal currents and charges, +1
/// for vertical currents.
class PerfectGround final : public GroundKernels {
public:
    explicit PerfectGround(double wavenumber_rad_m) : k_(wavenumber_rad_m) {}
    void potentials(std::span<const double> rho_m, std::span<const double> z_sum_m,
                    std::span<ground::PotentialKernels> out) const override;

private:
    double k_;
};

/// Soil from a table, which has to cover GroundPairs' ranges.
class TabulatedGround final : public GroundKernels {
public:
    explicit TabulatedGround(const ground::HalfSpaceTable& table) : table_(&table) {}
    void potentials(std::span<const double> rho_m, std::span<const double> z_sum_m,
                    std::span<ground::PotentialKernels> out) const override;

private:
    const ground::HalfSpaceTable* table_;
};

/// The pairs of quadrature points of a mesh, made once per geometry and height; then a matrix per frequency
/// and soil.
class GroundPairs {
public:
    /// height_m: added to all z of the mesh, so that a change of height does not need a new Solver.
    /// points: Gauss points an element; 0 chooses 2 to 4 from the longest element over its height.
    /// Throws base::InputError where the axis of a wire comes nearer to the ground than its radius.
    explicit GroundPairs(const Mesh& mesh, double height_m = 0, int points = 0);
    /// The same with the mesh set up anywhere: its x along stand.right, y along rise, z along up, from
    /// origin.
    GroundPairs(const Mesh& mesh, const geometry::Frame& stand, int points = 0);

    [[nodiscard]] double greatest_rho_m() const noexcept { return greatest_rho_; }
    [[nodiscard]] double least_z_sum_m() const noexcept { return least_z_; }
    [[nodiscard]] double greatest_z_sum_m() const noexcept { return greatest_z_; }
    [[nodiscard]] std::size_t pairs() const noexcept { return rho_.size(); }

    /// What the ground adds, for Solver::solve.
    [[nodiscard]] FieldMatrix matrix(double wavenumber_rad_m, const GroundKernels& kernels) const;

private:
    struct Local { ///< what an unknown carries at the sites of one element
        std::size_t unknown;
        double begin, end, charge_per_m;
    };
    struct Pair { ///< of sites: factors of the kernels
        double horizontal, vertical, mixed, weight_m2, x, y;
    };
    std::size_t unknowns_ = 0;
    std::size_t sites_per_element_ = 0;
    std::vector<std::vector<Local>> locals_; ///< by element
    std::vector<double> rho_, z_sum_;
    std::vector<Pair> pairs_; ///< element pair by element pair, q <= p, all sites of p times all of q
    double greatest_rho_ = 0, least_z_ = 0, greatest_z_ = 0;
};

} // namespace loopwright::wire
