#pragma once
// The currents of one circular turn as Fourier series.
#include "loop/detail/currents.hpp"
#include "loop/detail/ring_modes.hpp"

namespace loopwright::loop::detail {

/// A current by the cosines of its Fourier series: of order 0, and at the orders of the modes.
struct RingWave {
    double level = 0;
    std::array<double, RingModes::capacity> of;
};

/// The currents u and v - u, (L.9) and (L.10), by (L.27) and (L.28).
struct RingWaves {
    std::array<RingWave, currents - 1> wave;
    double charge = 0; ///< own capacitance / (4 pi eps0 R)
};
[[nodiscard]] RingWaves ring_waves(const RingModes& modes) noexcept;

} // namespace loopwright::loop::detail
