#pragma once
// The loop of the coupling's tests: the default loop with a capacitor for all bands and a coupling loop.
#include "design/design.hpp"

namespace loopwright::coupling {

inline design::Design copper_loop() {
    design::Design d;
    d.capacitor.loss.q = 1000.0;
    d.capacitor.maximum = units::picofarads(1000);
    d.coupling = design::Coupling{};
    return d;
}

} // namespace loopwright::coupling
