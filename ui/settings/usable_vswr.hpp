#pragma once
// Up to which VSWR a loop counts as usable without retuning. What a radio puts up with is the operator's
// affair and not the design's: it is kept with the program, for all designs; the command line has --vswr.
#include "settings/settings.hpp"

namespace loopwright::settings {

inline constexpr double least_usable_vswr = 1.05, greatest_usable_vswr = 10.0, usual_usable_vswr = 2.0;

[[nodiscard]] bool is_usable_vswr(double vswr);

/// The one chosen last; the usual one where none was, or where what is kept cannot be.
[[nodiscard]] double usable_vswr(const Settings& settings);
/// Does nothing for one that cannot be.
void set_usable_vswr(Settings& settings, double vswr);

} // namespace loopwright::settings
