#pragma once
// Arithmetic with units: numbers, + - * /, brackets, units behind a number or a bracket, "3 ft 2 in",
// "1 5/8 in". A unit behind a product of plain numbers belongs to all of it: "5/8 in" is five eighths of an
// inch.
#include "units/detail/scanner.hpp"

namespace loopwright::units::detail {

struct Value {
    double number = 0;                  ///< SI where there is a dimension
    std::optional<Dimension> dimension; ///< none: a plain number
    bool fixed = false;                 ///< in degC, degF or dBm: no arithmetic with it
    std::string literal;                ///< digits of a lone number, for exact scaling; else empty
};

/// The value of an ASCII text. Throws Problem. The number is finite.
[[nodiscard]] Value evaluate(std::string_view ascii, Dimension wanted);

} // namespace loopwright::units::detail
