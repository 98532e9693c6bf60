#pragma once
// Quantities that a person gave, as text: with the digits they have, not with a fixed number of them. No
// widget.
#include "units/text.hpp"
#include "units/typed.hpp"

#include <QString>

#include <optional>

namespace loopwright::models {

/// The unit a text ends in ("36 in" -> "in"), as units::units_of spells it, or nothing.
[[nodiscard]] std::optional<units::Unit> unit_in(const QString& text, units::Dimension dimension);

/// True for lengths and temperatures in units of the inch and Fahrenheit family.
[[nodiscard]] bool is_imperial(const QString& unit_symbol);

/// The unit that a value is printed with of its own accord in a system.
[[nodiscard]] units::Unit handy_unit(double si, units::Dimension dimension, units::UnitSystem system);

/// At most `digits` significant digits, no trailing zeros, no exponent, true minus.
[[nodiscard]] QString plain_number(double value, int digits);

/// The value in a unit with `digits` significant digits at most, no trailing zeros: "35.4 in".
[[nodiscard]] QString in_unit(double si, const units::Unit& unit, int digits);

/// A given value: handy unit of the system, digits that read back to it within 1e-9 ("22 mm"); at most five
/// digits in inches ("35.433 in").
[[nodiscard]] QString given_text(double si, units::Dimension dimension,
                                 units::UnitSystem system = units::UnitSystem::metric);

/// A given value for labels and drawings: at most four digits, no trailing zeros, thin space.
[[nodiscard]] QString short_text(double si, units::Dimension dimension,
                                 units::UnitSystem system = units::UnitSystem::metric);

template <class Quantity>
[[nodiscard]] QString short_text(const units::Typed<Quantity>& typed,
                                 units::UnitSystem system = units::UnitSystem::metric) {
    return short_text(typed.value.value(), units::DimensionOf<Quantity>::value, system);
}

/// A computed value with its unit, `digits` significant digits.
template <class Quantity>
[[nodiscard]] QString shown(const Quantity& quantity, int digits = 3) {
    return QString::fromStdString(units::shown(quantity, digits));
}

/// A computed number without a unit.
[[nodiscard]] inline QString number(double value, int digits = 3) {
    return QString::fromStdString(units::shown(value, units::Dimension::number, digits));
}

/// False where a model gave no interval.
template <class Value>
[[nodiscard]] bool known(const units::Interval<Value>& range) {
    return !(range == units::Interval<Value>{});
}

} // namespace loopwright::models
