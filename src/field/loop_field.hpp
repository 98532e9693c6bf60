#pragma once
// Electric and magnetic field of a tuned loop at any point above the ground, from its currents and charges as
// solved.
#include "loop/full_wave.hpp"
#include "units/quantities.hpp"

#include <array>
#include <complex>

namespace loopwright::field {

/// Complex components along x, y, z (z up, directions of the design's conventions), rms.
struct Field {
    std::array<std::complex<double>, 3> electric_V_m{};
    std::array<std::complex<double>, 3> magnetic_A_m{};
    /// Root of the sum of the squared magnitudes of the components, rms.
    [[nodiscard]] units::ElectricField electric() const;
    [[nodiscard]] units::MagneticField magnetic() const;
};

/// The field of one solved loop. Free-space part: wire::near_field. Ground part: the Sommerfeld kernels of
/// ground::HalfSpace and their derivatives, source point by source point; the magnetic field from the true
/// vector potential (docs/theory/ground.md). Cost over soil: a few milliseconds a point; at() may be called
/// from any number of threads. Range: above the ground (z > 0), outside the conductor, up to about 100 m.
/// Accuracy: within 1 % (magnetic) and 1.5 % (electric) at 0.5 m or more from the wire; nearer the
/// capacitor's body, which is not in the model, decides.
class LoopField {
public:
    /// power: accepted by the loop [W], > 0.
    LoopField(loop::SolvedLoop loop, units::Power power);

    /// Throws base::InputError for a point below the ground or inside a conductor.
    [[nodiscard]] Field at(units::Length x, units::Length y, units::Length z) const;

private:
    loop::SolvedLoop loop_;
    double scale_ = 1; ///< of the loop's 1 A
};

} // namespace loopwright::field
