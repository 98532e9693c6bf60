#include "loop/detail/asked_point.hpp"

#include "base/error.hpp"
#include "units/constants.hpp"
#include "units/text.hpp"

namespace loopwright::loop::detail {

OperatingPoint asked(units::Frequency frequency, units::Power power, double vswr_limit,
                     double conductor_length_m) {
    if (!(frequency.value() >= 1e4 && frequency.value() <= 1e9)) {
        throw base::InputError("frequency", units::shown(frequency), "a frequency from 10 kHz to 1 GHz");
    }
    if (!(power.value() > 0 && power.value() <= 1e6)) {
        throw base::InputError("power", units::shown(power), "a power above 0, up to 1 MW");
    }
    if (!(vswr_limit > 1 && vswr_limit <= 100)) {
        throw base::InputError("vswr", std::to_string(vswr_limit),
                               "a standing wave ratio above 1, up to 100");
    }
    OperatingPoint point;
    point.frequency = frequency;
    point.power = power;
    point.vswr_limit = vswr_limit;
    point.perimeter_in_wavelengths =
        conductor_length_m * frequency.value() / units::constants::speed_of_light_m_s;
    return point;
}

} // namespace loopwright::loop::detail
