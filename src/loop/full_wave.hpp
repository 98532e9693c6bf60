#pragma once
// The full-wave model: Maxwell's equations for the loop as it stands, thin wires above real ground.
//
// One factorisation a frequency and two ports (opposite the capacitor, and the capacitor's gap); the
// capacitance that makes the reactance opposite the capacitor zero follows from the two-port matrix.
// Equations: docs/theory/wire.md, docs/theory/ground.md, docs/theory/loop-full-wave.md.
#include "ground/power_flux.hpp"
#include "loop/loop_model.hpp"
#include "wire/ground_matrix.hpp"
#include "wire/solver.hpp"

#include <complex>
#include <memory>
#include <optional>

namespace loopwright::loop {

/// A loop tuned to resonance and solved, for 1 A rms opposite the capacitor. Currents are on the mesh's own
/// coordinates; `stand` sets them up above the ground (docs of wire::GroundMatrices).
struct SolvedLoop {
    wire::Solution solution;
    wire::Currents currents;
    geometry::Frame stand;
    std::optional<wire::Underground> underground; ///< nothing: free space
    units::Frequency frequency{};
    units::Capacitance tuning_capacitance{};
    units::Resistance total{}; ///< real part of the impedance opposite the capacitor
    /// The current as short pieces where they stand, for far and near fields.
    [[nodiscard]] std::vector<ground::CurrentElement> elements() const;
    /// Complex relative permittivity of the ground; a very good conductor for perfect ground; 1 in free
    /// space.
    [[nodiscard]] std::complex<double> permittivity() const;
};

/// Estimated relative errors that the mesh makes, signed: (value - converged)/converged. The error falls with
/// the square of the elements' length, so it is a third of the difference to a mesh of twice that length
/// (Richardson's extrapolation).
struct MeshError {
    double capacitance = 0;
    double resistance = 0; ///< total, the capacitor's own left out
    std::size_t unknowns = 0;
};

/// A prepared design. at() and solved() may be called from any number of threads. The mesh's static part is
/// shared between designs of equal geometry, the ground's matrices between designs of equal geometry, place
/// and soil.
class FullWave final : public LoopModel {
public:
    /// mesh_refinement: divides the length of every element, 0.25 to 4. Throws base::InputError.
    explicit FullWave(const design::Design& design, Workload workload = Workload::many_frequencies,
                      double mesh_refinement = 1.0);
    ~FullWave() override;

    [[nodiscard]] Model kind() const noexcept override { return Model::full_wave; }
    [[nodiscard]] OperatingPoint at(units::Frequency frequency, units::Power power,
                                    double vswr_limit) const override;
    /// Nothing where no positive capacitance resonates the loop or the model does not hold.
    [[nodiscard]] std::optional<SolvedLoop> solved(units::Frequency frequency) const;
    /// Against a mesh half as fine, see MeshError. Nothing where solved() gives nothing.
    [[nodiscard]] std::optional<MeshError> mesh_error(units::Frequency frequency) const;
    /// Internal impedance of the conductor as it is solved with [ohm/m]: skin effect, proximity between turns
    /// and the joints spread along it. For models that put more wires beside the loop.
    [[nodiscard]] std::complex<double> conductor_ohm_per_m(units::Frequency frequency) const;

private:
    struct Prepared;
    std::unique_ptr<const Prepared> prepared_;
};

/// Up to this many wavelengths of conductor the model answers; a loop tuned by a series capacitor has its use
/// far below.
inline constexpr double full_wave_range_wavelengths = 1.0;

} // namespace loopwright::loop
