#include "loop/dipole.hpp"

namespace loopwright::loop {

OperatingPoint compared_with_dipole(OperatingPoint point) {
    if (point.model == Model::closed_form && point.resonance && !point.resonance->gain_over_dipole &&
        point.resonance->gain_low_angle) {
        point.resonance->gain_over_dipole = {point.resonance->gain_low_angle->value -
                                             half_wave_dipole_gain.value};
    }
    return point;
}

} // namespace loopwright::loop
