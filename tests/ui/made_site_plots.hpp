#pragma once
// Patterns and heights made by hand from round formulas, so that a test knows every number without the model.
#include "models/height_plot.hpp"
#include "models/pattern_plot.hpp"

namespace loopwright::test {

/// Loop: over ground 2 - 12 cos^2(elevation) dBi in every azimuth (best straight up); a dipole with a
/// sine of the elevation, 7 dBi straight up, less by |sin(azimuth)|. Free space: an eight.
[[nodiscard]] models::PatternPlot made_pattern(bool free_space = false, bool dipole = true);

/// Sky share h/(h + 3 m) of what the loop itself does not take (conductor 10 %, joints 0.5 %, capacitor 5 %),
/// the rest into the ground; not established below 0.15 m.
[[nodiscard]] models::HeightPlot made_heights(double present_m = 1.0);

} // namespace loopwright::test
