#pragma once
// The coupling loop as a driven wire beside the loop's.
#include "conductor/conductor.hpp"
#include "coupling/detail/fed_loop.hpp"
#include "design/design.hpp"
#include "loop/full_wave.hpp"
#include "wire/solver.hpp"

#include <memory>

namespace loopwright::coupling::detail {

/// Least of the loop's width and height [m]; a coupling loop is measured against it.
[[nodiscard]] double width_m(const design::LoopShape& loop);

/// A round copper wire at 20 degC.
[[nodiscard]] conductor::Conductor copper_wire(units::Length diameter);

class CouplingWire final : public FedLoop {
public:
    /// alone: the same design's loop, which must outlive this. Throws base::InputError for a coupling loop
    /// that does not fit.
    /// refinement: divides the length of every element of the mesh.
    CouplingWire(const design::Design& design, const design::Coupling& coupling, const loop::FullWave& alone,
                 double refinement = 1);
    [[nodiscard]] OpenTwoPort at(units::Frequency frequency) const override;
    [[nodiscard]] double own_loss_share(units::Frequency frequency, const OpenTwoPort& port,
                                        Complex capacitor_ohm) const override;
    [[nodiscard]] base::Notices notices(units::Frequency frequency) const override;
    /// Solved with feed (port 0) and capacitor gap (port 1), for currents and powers.
    [[nodiscard]] wire::Solution solve(units::Frequency frequency) const;

private:
    const loop::FullWave& alone_;
    conductor::Conductor wire_;
    double wire_length_m_;
    std::unique_ptr<const wire::Solver> solver_;
    std::unique_ptr<const wire::GroundMatrices> ground_;
};

} // namespace loopwright::coupling::detail
