#pragma once
// Every unit that is understood, by its ASCII spelling.
#include "units/text.hpp"

#include <optional>
#include <string>
#include <string_view>

namespace loopwright::units::detail {

/// How a number in a unit becomes SI.
enum class Law {
    linear,     ///< number * multiplier * 10^power10
    celsius,    ///< kelvin
    fahrenheit, ///< kelvin
    dbm,        ///< level over a milliwatt; watt
};

/// The power of ten stands apart, so that "22 mm" is the double nearest to 0.022 and not 22 times a rounded
/// 1e-3.
struct UnitDef {
    std::string spelling;
    Dimension dimension = Dimension::number;
    double multiplier = 1;
    int power10 = 0;
    Law law = Law::linear;
};

/// The unit of a spelling: first as it stands and of the wanted dimension, then with upper and lower case
/// exchanged where that can mean one unit only, then of any other dimension. nullptr: no such unit.
[[nodiscard]] const UnitDef* find_unit(std::string_view spelling, Dimension wanted);

/// SI value of a number in a unit. May overflow: the caller looks.
[[nodiscard]] double to_si(const UnitDef& unit, double number);

/// number * 10^power, rounded once for the powers that units have.
[[nodiscard]] double scaled(double number, int power10);

/// "length"
[[nodiscard]] std::string name_of(Dimension dimension);
[[nodiscard]] std::string examples_of(Dimension dimension);
/// What is accepted, with examples: "a length with its unit, such as '0.9 m' or '36 in'".
[[nodiscard]] std::string wanted_text(Dimension dimension);

} // namespace loopwright::units::detail
