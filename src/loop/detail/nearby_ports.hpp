#pragma once
// The ports' admittances beside a frequency that is solved: where the edges of a wide band lie, whatever the
// capacitor.
#include "wire/port_matrix.hpp"

#include <array>
#include <complex>
#include <cstddef>
#include <functional>

namespace loopwright::loop::detail {

/// Polynomial through f Y(f) at Chebyshev nodes within `reach` of a frequency (barycentric formula: J.-P.
/// Berrut and L. N. Trefethen, SIAM Review 46 (2004) 501, from memory); f Y has no pole at zero. Range: up to
/// the loop's own first resonance. Accuracy: 1e-11 of Y; 1e-8 where the ground's matrices pass from one
/// octave of their interpolation to the next.
class NearbyPorts {
public:
    static constexpr std::size_t nodes = 9;
    static constexpr double reach = 0.1; ///< of the frequency, to either side
    /// The middle one is the frequency itself.
    [[nodiscard]] static std::array<double, nodes> nodes_Hz(double centre_Hz);

    /// solved(f): the admittances at a node [Hz].
    NearbyPorts(double centre_Hz, const std::function<wire::TwoPort(double)>& solved);

    [[nodiscard]] bool reaches(double frequency_Hz) const;
    /// Within reach only.
    [[nodiscard]] wire::TwoPort at(double frequency_Hz) const;

private:
    double centre_Hz_;
    std::array<wire::TwoPort, nodes> times_frequency_; ///< f Y, f in units of the centre
};

} // namespace loopwright::loop::detail
