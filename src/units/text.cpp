#include "units/text.hpp"

#include "base/error.hpp"
#include "base/utf8.hpp"
#include "units/detail/expression.hpp"
#include "units/detail/plain_text.hpp"
#include "units/detail/unit_table.hpp"
#include "units/wire_gauge.hpp"

#include <map>

namespace loopwright::units {
namespace {

constexpr std::size_t longest_text = 200;

double gauge_or_refuse(const std::string& text) {
    if (const auto gauge = read_wire_gauge(text)) {
        return wire_gauge_diameter(*gauge).value();
    }
    throw detail::Problem{"wire gauges run from 4/0 AWG to 56 AWG and stand alone, such as '14 AWG'"};
}

double checked_value(const std::string& text, Dimension dimension) {
    const detail::Value value = detail::evaluate(text, dimension);
    if (dimension == Dimension::number) {
        if (value.dimension) {
            throw detail::Problem{"a unit of " + detail::name_of(*value.dimension) + " is given"};
        }
        return value.number;
    }
    if (!value.dimension) {
        throw detail::Problem{"the unit is missing"};
    }
    if (*value.dimension != dimension) {
        throw detail::Problem{with_article(*value.dimension) + " is given"};
    }
    return value.number;
}

double read_value(std::string_view text, Dimension dimension) {
    if (text.size() > longest_text) {
        throw detail::Problem{"the text is too long"};
    }
    const auto plain = detail::to_ascii(text);
    if (!plain) {
        throw detail::Problem{"it holds a character that no quantity has"};
    }
    if (dimension == Dimension::length && mentions_wire_gauge(*plain)) {
        return gauge_or_refuse(*plain);
    }
    return checked_value(*plain, dimension);
}

std::vector<Unit> described(std::initializer_list<const char*> symbols, Dimension dimension) {
    std::vector<Unit> units;
    for (const char* symbol : symbols) {
        const detail::UnitDef* unit = detail::find_unit(*detail::to_ascii(symbol), dimension);
        const double zero = detail::to_si(*unit, 0);
        const double factor = unit->law == detail::Law::linear       ? detail::to_si(*unit, 1)
                              : unit->law == detail::Law::fahrenheit ? 5.0 / 9.0
                                                                     : 1.0;
        units.push_back({symbol, factor, zero});
    }
    return units;
}

} // namespace

double parse_si(std::string_view text, Dimension dimension, const std::string& where) {
    try {
        return read_value(text, dimension) + 0.0; // no negative zero
    } catch (const detail::Problem& problem) {
        throw base::InputError(where, base::quotable(text),
                               detail::wanted_text(dimension) + " (" + problem.reason + ")");
    }
}

std::string with_article(Dimension dimension) {
    const std::string name = detail::name_of(dimension);
    return (std::string_view("aeio").find(name.front()) == std::string_view::npos ? "a " : "an ") + name;
}

std::string example(Dimension dimension) {
    return detail::examples_of(dimension);
}

std::string trimmed(std::string_view text) {
    const auto first = text.find_first_not_of(" \t\r\n");
    if (first == std::string_view::npos) {
        return {};
    }
    return std::string(text.substr(first, text.find_last_not_of(" \t\r\n") - first + 1));
}

const std::vector<Unit>& units_of(Dimension dimension) {
    using D = Dimension;
    static const std::map<D, std::vector<Unit>> offered{
        {D::number, {Unit{"", 1, 0}, Unit{"%", 0.01, 0}}},
        {D::length, described({"m", "cm", "mm", "in", "ft", "µm", "mil"}, D::length)},
        {D::frequency, described({"MHz", "kHz", "Hz", "GHz"}, D::frequency)},
        {D::time, described({"s", "min", "ms", "µs", "h"}, D::time)},
        {D::angle, described({"°", "rad"}, D::angle)},
        {D::resistance, described({"Ω", "mΩ", "µΩ", "kΩ", "MΩ"}, D::resistance)},
        {D::capacitance, described({"pF", "nF", "µF"}, D::capacitance)},
        {D::inductance, described({"µH", "nH", "mH"}, D::inductance)},
        {D::voltage, described({"V", "kV", "mV", "µV"}, D::voltage)},
        {D::current, described({"A", "mA", "µA"}, D::current)},
        {D::power, described({"W", "mW", "kW"}, D::power)},
        {D::conductivity, described({"MS/m", "mS/m", "S/m"}, D::conductivity)},
        {D::temperature, described({"°C", "°F", "K"}, D::temperature)},
        {D::per_kelvin, described({"/K", "ppm/K", "%/K"}, D::per_kelvin)},
        {D::loss_per_length, described({"dB/100m", "dB/m", "dB/100ft"}, D::loss_per_length)},
        {D::electric_field, described({"V/m", "mV/m", "kV/m"}, D::electric_field)},
        {D::magnetic_field, described({"A/m", "mA/m", "µT"}, D::magnetic_field)},
    };
    return offered.at(dimension);
}

} // namespace loopwright::units
