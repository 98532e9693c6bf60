#pragma once
#include "loop/operating_point.hpp"

namespace loopwright::loop::detail {

/// A point with what was asked filled in, nothing yet established; the closed form's until changed. Throws
/// base::InputError for a frequency outside 10 kHz to 1 GHz, a power not above 0 or over 1 MW, a limit not
/// above 1 or over 100.
[[nodiscard]] OperatingPoint asked(units::Frequency frequency, units::Power power, double vswr_limit,
                                   double conductor_length_m);

} // namespace loopwright::loop::detail
