#include "loop/detail/ring_waves.hpp"

#include "units/constants.hpp"

namespace loopwright::loop::detail {
namespace {

using units::constants::pi;

// Mean 0 over the gap and 1 opposite it. Returns the mean over the gap that had to be taken off.
double normalize(RingWave& wave, const RingModes& modes) noexcept {
    double over_gap = 0;
    double opposite = 0;
    for (std::size_t i = 0; i < modes.size; ++i) {
        over_gap -= modes.weight[i] * wave.of[i] * modes.spread[i];
    }
    for (std::size_t i = 0; i < RingModes::singly; ++i) {
        opposite += modes.alternating[i] * wave.of[i];
    }
    const double scale = 1 / (over_gap + opposite);
    wave.level = over_gap * scale;
    for (std::size_t i = 0; i < modes.size; ++i) {
        wave.of[i] *= scale;
    }
    return over_gap;
}

} // namespace

// The potential of (L.7) has the sines spread/(pi n); each charge is that over K_n, each current the charge
// over n. The flux of u takes off its share.
RingWaves ring_waves(const RingModes& modes) noexcept {
    RingWaves waves;
    RingWave& u = waves.wave[0];
    for (std::size_t i = 0; i < modes.size; ++i) {
        u.of[i] = -modes.spread[i] / pi * modes.yield[i];
    }
    waves.charge = normalize(u, modes);
    RingWave& v = waves.wave[1];
    const double share = 0.5 / (modes.vector_0 * u.level);
    for (std::size_t i = 0; i < modes.size; ++i) {
        v.of[i] = (share * modes.vector[i] * u.of[i] - modes.spread[i]) / pi * modes.yield[i];
    }
    normalize(v, modes);
    v.level -= u.level;
    for (std::size_t i = 0; i < modes.size; ++i) {
        v.of[i] -= u.of[i];
    }
    return waves;
}

} // namespace loopwright::loop::detail
