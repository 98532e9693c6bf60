#pragma once
// Figures that are advised: rounded to the side that holds.
#include "units/text.hpp"

#include <cmath>
#include <string>

namespace loopwright::survey::detail {

/// To two digits, never rounded up: the power advised must pass. Above 0.
inline std::string power_down(units::Power power) {
    const double step = std::pow(10.0, std::floor(std::log10(power.value())) - 1);
    return units::shown(units::watts(std::floor(power.value() / step + 1e-9) * step), 2);
}

} // namespace loopwright::survey::detail
