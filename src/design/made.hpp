#pragma once
// The range of a hand-made variable capacitor from its dimensions.
#include "capacitor/made.hpp"
#include "design/design.hpp"

namespace loopwright::design {

/// At an overlap along the travel. Throws base::InputError for dimensions that cannot be.
[[nodiscard]] capacitor::MadeCapacitance made_capacitance(const MadeCapacitor& made, units::Length overlap);

/// Capacitance at the least and the most overlap. Throws as made_capacitance().
[[nodiscard]] units::Interval<units::Capacitance> made_range(const MadeCapacitor& made);

/// Sets minimum and maximum to what the dimensions give, without a text; does nothing where nothing is made
/// by hand or its dimensions cannot be.
void follow_made(Capacitor& capacitor, bool minimum = true, bool maximum = true);

/// Whether a bound of a made capacitor is the one its dimensions give, typed by nobody: such a bound is left
/// out of a file.
[[nodiscard]] bool minimum_follows(const Capacitor& capacitor);
[[nodiscard]] bool maximum_follows(const Capacitor& capacitor); ///< see minimum_follows()

} // namespace loopwright::design
