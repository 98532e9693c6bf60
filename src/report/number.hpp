#pragma once
// Numbers as text, the same in every locale.
#include <string>

namespace loopwright::report {

/// For people: rounded to `digits` significant digits (1 to 15), without an exponent from 1e-6 up to 1e12
/// (with one outside), true minus. 0.09996 with 3 digits is "0.100". Throws base::ProgramError for NaN and
/// infinity.
[[nodiscard]] std::string significant(double value, int digits);

/// For people: rounded to `decimals` (0 to 15) digits after the decimal sign, true minus. Throws as above.
[[nodiscard]] std::string fixed(double value, int decimals);

/// For programs: the shortest digits that read back to the same double, ASCII. Throws as above.
[[nodiscard]] std::string exact(double value);

} // namespace loopwright::report
