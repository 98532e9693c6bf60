#pragma once
#include "units/quantities.hpp"

namespace loopwright::band {

inline double kHz(units::Frequency f) {
    return f.value() / 1e3;
}

} // namespace loopwright::band
