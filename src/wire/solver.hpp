#pragma once
// The method of moments on thin wires: geometry filled once, then a frequency at a time.
//
// Mixed-potential electric-field integral equation, Galerkin with linear functions along the wires' own arcs
// and straight lines; exp(+j omega t), rms. Equations: docs/theory/wire.md. Range: radius below a hundredth
// of a wavelength and of the radius of curvature, current even around the wire (wires side by side more than
// four radii apart; nearer, the field is right but the crowding of current is not in it).
#include "units/quantities.hpp"
#include "wire/mesh.hpp"
#include "wire/port_matrix.hpp"

#include <complex>
#include <memory>
#include <span>
#include <vector>

namespace loopwright::wire {

/// An impedance matrix of fields between the unknowns, symmetric, packed: entry (i, k <= i) at i (i + 1)/2 +
/// k [ohm]. The real part is what leaves the wires as field.
struct FieldMatrix {
    std::size_t unknowns = 0;
    std::vector<double> re, im;
};

/// The current everywhere for given voltages at the ports: linear between nodes.
struct Currents {
    double wavenumber_rad_m = 0;
    std::vector<std::complex<double>> unknown_A; ///< basis of the matrix
    std::vector<std::complex<double>> node_A;    ///< at the nodes
};

/// Where the power goes [W]. field: radiated in free space; over ground radiated and lost in it.
struct PowerParts {
    double field_W = 0;
    std::vector<double> conductor_W; ///< by conductor
    std::vector<double> load_W;      ///< by load
    [[nodiscard]] double total_W() const;
};

/// One frequency, solved. Holds what it needs; may outlive its Solver.
class Solution {
public:
    [[nodiscard]] const Mesh& mesh() const;
    [[nodiscard]] double wavenumber_rad_m() const noexcept { return wavenumber_; }
    /// Current through port i (mean over its gap) for 1 V at port k, the other ports shorted.
    [[nodiscard]] const PortMatrix& admittance() const noexcept { return admittance_; }
    /// One voltage for each port; the current is driven in the wire's direction by a positive voltage.
    [[nodiscard]] Currents currents(std::span<const std::complex<double>> port_V) const;
    /// Quadratic forms of the currents: no difference of large numbers, however small a part is.
    [[nodiscard]] PowerParts powers(const Currents& currents) const;
    /// Current at a gap, mean over its width [A].
    [[nodiscard]] std::complex<double> current_at(const Currents& currents, const Gap& gap) const;
    /// Largest |Z x - v| of the solved system, v being about 1: what rounding left [V].
    [[nodiscard]] double residual() const noexcept { return residual_; }

private:
    friend class Solver;
    struct Parts; ///< of the geometry, shared with the Solver
    std::shared_ptr<const Parts> parts_;
    double wavenumber_ = 0;
    Loading loading_;
    FieldMatrix field_;
    std::vector<std::complex<double>> per_volt_; ///< [port][unknown]
    PortMatrix admittance_;
    double residual_ = 0;
};

class Solver {
public:
    /// Meshes and fills. highest: no frequency above it will be asked from the series (higher ones, and those
    /// where k times the extent is above about 5.4, are computed directly, 100 times slower). Throws what
    /// Mesh throws.
    Solver(WireModel model, const MeshOptions& options, units::Frequency highest);

    [[nodiscard]] const Mesh& mesh() const;
    /// Free space, from the series where it reaches, else direct.
    [[nodiscard]] FieldMatrix free_space(units::Frequency frequency) const;
    /// The same by quadrature of the kernel itself: the check, and the way beyond the series.
    [[nodiscard]] FieldMatrix free_space_direct(units::Frequency frequency) const;

    /// loading: one entry for each conductor and each load of the model. added: what the surroundings add to
    /// free space (ground_hook.hpp), or null. Throws base::ProgramError for a frequency not above 0, missing
    /// entries, negative resistances, a matrix of another size.
    [[nodiscard]] Solution solve(units::Frequency frequency, const Loading& loading,
                                 const FieldMatrix* added = nullptr) const;

private:
    std::shared_ptr<const Solution::Parts> parts_;
};

} // namespace loopwright::wire
