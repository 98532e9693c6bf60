#pragma once
// Joints and contacts along the conductor: plain resistances in series.
#include "units/quantities.hpp"

#include <vector>

namespace loopwright::conductor {

struct JointGroup {
    int count = 0;
    units::Resistance resistance{}; ///< of each, taken the same at every frequency
};

/// Sum of count times resistance [ohm], (C21). What a soldered, clamped or screwed joint has at radio
/// frequency has no theory: it is an input, best from measurement. Throws base::InputError for a negative
/// count or resistance, more than 10000 joints or over 1000 ohm.
[[nodiscard]] units::Resistance joints_resistance(const std::vector<JointGroup>& joints);

} // namespace loopwright::conductor
