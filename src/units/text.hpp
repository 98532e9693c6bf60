#pragma once
// Reading what people type ("0.9 m", "36 in", "2*0.45 m", "7,074 MHz", "1.5e-3 m") and printing quantities
// with engineering prefixes. Internals in SI.
#include "units/quantities.hpp"
#include "units/typed.hpp"

#include <string>
#include <string_view>
#include <vector>

namespace loopwright::units {

/// What kind of quantity a text stands for; decides which units are accepted.
enum class Dimension {
    number, ///< dimensionless, no unit (also "%")
    length,
    frequency,
    time,
    angle,
    resistance,
    capacitance,
    inductance,
    voltage,
    current,
    power,
    conductivity,
    temperature, ///< absolute; degC, degF and K accepted, kelvin inside
    per_kelvin,
    loss_per_length, ///< dB/m, dB/100m, dB/100ft; dB per metre inside
    electric_field,  ///< V/m, rms
    magnetic_field,  ///< A/m, rms; µT read as flux density in air
};

/// "a length", "an angle": for messages.
[[nodiscard]] std::string with_article(Dimension dimension);
/// An example in quotes, "'0.9 m' or '36 in'": for messages.
[[nodiscard]] std::string example(Dimension dimension);

enum class UnitSystem { metric, imperial };

/// The SI value of a text (for temperature: kelvin). Accepts arithmetic (+ - * / and brackets), units with or
/// without a blank, decimal point or comma, exponents, ASCII and Unicode spellings.
/// Throws base::InputError naming `where`, the text and what is accepted. Never returns NaN or infinity.
/// A unit behind a product of plain numbers belongs to all of it ("5/8 in"); "3 ft 2 in" and "1 5/8 in" are
/// sums. A length may be an American wire gauge ("14 AWG"). At most 200 bytes.
[[nodiscard]] double parse_si(std::string_view text, Dimension dimension, const std::string& where);

/// Without blanks and line ends around it.
[[nodiscard]] std::string trimmed(std::string_view text);

/// A unit a person may choose for a field: its symbol as shown, and what one of it is in SI.
struct Unit {
    std::string symbol;
    double factor = 1;
    double offset = 0; ///< SI = factor * value + offset (temperatures)
};
/// The units offered for a dimension, the usual ones of the system first.
[[nodiscard]] const std::vector<Unit>& units_of(Dimension dimension);

/// Canonical text of an SI value: shortest digits that read back to the same double, with an engineering unit
/// ("0.9 m", "22 mm", "150 pF"); what a file is written with when nothing was typed. base::ProgramError where
/// the value is not finite.
[[nodiscard]] std::string canonical(double value_in_si, Dimension dimension);

/// Text for people: `digits` significant digits (1 to 17), engineering prefix, thin space, true minus.
/// Imperial: lengths in mil, in, ft (from 6 ft), temperatures in degF, losses per 100 ft.
[[nodiscard]] std::string shown(double value_in_si, Dimension dimension, int digits = 3,
                                UnitSystem system = UnitSystem::metric);

template <class Quantity>
struct DimensionOf;
template <>
struct DimensionOf<Length> {
    static constexpr Dimension value = Dimension::length;
};
template <>
struct DimensionOf<Frequency> {
    static constexpr Dimension value = Dimension::frequency;
};
template <>
struct DimensionOf<Time> {
    static constexpr Dimension value = Dimension::time;
};
template <>
struct DimensionOf<Angle> {
    static constexpr Dimension value = Dimension::angle;
};
template <>
struct DimensionOf<Resistance> {
    static constexpr Dimension value = Dimension::resistance;
};
template <>
struct DimensionOf<Capacitance> {
    static constexpr Dimension value = Dimension::capacitance;
};
template <>
struct DimensionOf<Inductance> {
    static constexpr Dimension value = Dimension::inductance;
};
template <>
struct DimensionOf<Voltage> {
    static constexpr Dimension value = Dimension::voltage;
};
template <>
struct DimensionOf<Current> {
    static constexpr Dimension value = Dimension::current;
};
template <>
struct DimensionOf<Power> {
    static constexpr Dimension value = Dimension::power;
};
template <>
struct DimensionOf<Conductivity> {
    static constexpr Dimension value = Dimension::conductivity;
};
template <>
struct DimensionOf<Temperature> {
    static constexpr Dimension value = Dimension::temperature;
};
template <>
struct DimensionOf<PerKelvin> {
    static constexpr Dimension value = Dimension::per_kelvin;
};
template <>
struct DimensionOf<DecibelPerMetre> {
    static constexpr Dimension value = Dimension::loss_per_length;
};

template <>
struct DimensionOf<ElectricField> {
    static constexpr Dimension value = Dimension::electric_field;
};
template <>
struct DimensionOf<MagneticField> {
    static constexpr Dimension value = Dimension::magnetic_field;
};

template <class Quantity>
[[nodiscard]] Quantity parse(std::string_view text, const std::string& where) {
    return Quantity::from_value(parse_si(text, DimensionOf<Quantity>::value, where));
}
/// The quantity with its text, as a field or a file holds it.
template <class Quantity>
[[nodiscard]] Typed<Quantity> parse_typed(std::string_view text, const std::string& where) {
    return {parse<Quantity>(text, where), trimmed(text)};
}
template <class Quantity>
[[nodiscard]] std::string canonical(Quantity quantity) {
    return canonical(quantity.value(), DimensionOf<Quantity>::value);
}
template <class Quantity>
[[nodiscard]] std::string shown(Quantity quantity, int digits = 3, UnitSystem system = UnitSystem::metric) {
    return shown(quantity.value(), DimensionOf<Quantity>::value, digits, system);
}

} // namespace loopwright::units
