#include "loop/resonator.hpp"

#include "base/error.hpp"

#include <cmath>

namespace loopwright::loop {

units::Interval<units::Frequency> resonator_edges(units::Frequency resonance, double q_unloaded,
                                                  double vswr) {
    if (!(q_unloaded > 0 && vswr > 1)) {
        throw base::ProgramError("resonator: Q above 0 and a standing wave ratio above 1");
    }
    const double d = (vswr - 1) / (2 * std::sqrt(vswr) * q_unloaded);
    const double middle = std::sqrt(1 + d * d);
    return {resonance * (middle - d), resonance * (middle + d)};
}

units::Frequency resonator_bandwidth(units::Frequency resonance, double q_unloaded, double vswr) {
    const auto edges = resonator_edges(resonance, q_unloaded, vswr);
    return edges.high - edges.low;
}

} // namespace loopwright::loop
