// Printing of quantities: canonical() and shown().
#include "base/error.hpp"
#include "units/detail/unit_table.hpp"
#include "units/text.hpp"

#include <charconv>
#include <cmath>
#include <cstddef>

namespace loopwright::units {
namespace {

constexpr const char* thin_space = "\u2009";
constexpr const char* true_minus = "\u2212";

// digits[0].digits[1]digits[2]... * 10^exponent
struct Decimal {
    bool negative = false;
    std::string digits;
    int exponent = 0;
};

Decimal from_scientific(const char* begin, const char* end) {
    Decimal decimal;
    for (const char* c = begin; c != end; ++c) {
        if (*c == 'e') {
            const char* power = c[1] == '+' ? c + 2 : c + 1;
            std::from_chars(power, end, decimal.exponent);
            break;
        }
        if (*c == '-') {
            decimal.negative = true;
        } else if (*c != '.') {
            decimal.digits += *c;
        }
    }
    return decimal;
}

Decimal shortest(double value) {
    char buffer[64];
    return from_scientific(
        buffer, std::to_chars(buffer, buffer + sizeof buffer, value, std::chars_format::scientific).ptr);
}

Decimal rounded(double value, int digits) {
    char buffer[64];
    return from_scientific(
        buffer,
        std::to_chars(buffer, buffer + sizeof buffer, value, std::chars_format::scientific, digits - 1).ptr);
}

std::string fixed_notation(const Decimal& decimal) {
    std::string text = decimal.digits;
    if (decimal.exponent < 0) {
        text.insert(0, static_cast<std::size_t>(-decimal.exponent), '0');
        return text.insert(1, ".");
    }
    const auto whole = static_cast<std::size_t>(decimal.exponent) + 1;
    if (text.size() <= whole) {
        return text.append(whole - text.size(), '0');
    }
    return text.insert(whole, ".");
}

bool reads_well_fixed(const Decimal& decimal) {
    return decimal.exponent >= -4 && decimal.exponent <= 6;
}

// The unit that a value is printed in: the last whose threshold (power of ten of the SI value) is reached.
struct Step {
    int from_exponent;
    const char* symbol;
    int power10; ///< of the unit
};
constexpr int always = -1000;

struct Scale {
    Dimension dimension;
    std::vector<Step> steps;
    std::size_t for_zero;
};

// Lengths change at a tenth of the unit: 0.9 m, 50 mm. All others run from 1 to 1000.
const std::vector<Scale>& scales() {
    using D = Dimension;
    static const std::vector<Scale> all{
        {D::number, {{always, "", 0}}, 0},
        {D::length, {{always, "nm", -9}, {-7, "µm", -6}, {-4, "mm", -3}, {-1, "m", 0}, {4, "km", 3}}, 3},
        {D::frequency, {{always, "Hz", 0}, {3, "kHz", 3}, {6, "MHz", 6}, {9, "GHz", 9}}, 0},
        {D::time, {{always, "ns", -9}, {-6, "µs", -6}, {-3, "ms", -3}, {0, "s", 0}}, 3},
        {D::resistance,
         {{always, "nΩ", -9}, {-6, "µΩ", -6}, {-3, "mΩ", -3}, {0, "Ω", 0}, {3, "kΩ", 3}, {6, "MΩ", 6}},
         3},
        {D::capacitance, {{always, "pF", -12}, {-9, "nF", -9}, {-6, "µF", -6}, {-3, "mF", -3}}, 0},
        {D::inductance, {{always, "nH", -9}, {-6, "µH", -6}, {-3, "mH", -3}, {0, "H", 0}}, 1},
        {D::voltage, {{always, "µV", -6}, {-3, "mV", -3}, {0, "V", 0}, {3, "kV", 3}, {6, "MV", 6}}, 2},
        {D::current, {{always, "µA", -6}, {-3, "mA", -3}, {0, "A", 0}, {3, "kA", 3}}, 2},
        {D::power, {{always, "µW", -6}, {-3, "mW", -3}, {0, "W", 0}, {3, "kW", 3}, {6, "MW", 6}}, 2},
        {D::conductivity,
         {{always, "µS/m", -6}, {-3, "mS/m", -3}, {0, "S/m", 0}, {3, "kS/m", 3}, {6, "MS/m", 6}},
         2},
        {D::per_kelvin, {{always, "/K", 0}}, 0},
        {D::loss_per_length, {{always, "dB/m", 0}}, 0},
        {D::electric_field, {{always, "µV/m", -6}, {-3, "mV/m", -3}, {0, "V/m", 0}, {3, "kV/m", 3}}, 2},
        {D::magnetic_field, {{always, "µA/m", -6}, {-3, "mA/m", -3}, {0, "A/m", 0}, {3, "kA/m", 3}}, 2},
        {D::angle, {{always, "rad", 0}}, 0},
        {D::temperature, {{always, "K", 0}}, 0},
    };
    return all;
}

Step step_for(Dimension dimension, const Decimal& decimal, bool zero) {
    for (const Scale& scale : scales()) {
        if (scale.dimension != dimension) {
            continue;
        }
        if (zero) {
            return scale.steps[scale.for_zero];
        }
        Step chosen = scale.steps.front();
        for (const Step& step : scale.steps) {
            chosen = decimal.exponent >= step.from_exponent ? step : chosen;
        }
        return chosen;
    }
    throw base::ProgramError("a dimension without a scale");
}

void require_finite(double value) {
    if (!std::isfinite(value)) {
        throw base::ProgramError("a quantity that is not finite cannot be printed");
    }
}

std::string joined(const std::string& number, const std::string& blank, const std::string& symbol) {
    return symbol.empty() ? number : number + blank + symbol;
}

std::string canonical_number(const Decimal& decimal) {
    std::string text = decimal.negative ? "-" : "";
    if (reads_well_fixed(decimal)) {
        return text + fixed_notation(decimal);
    }
    return text + fixed_notation({false, decimal.digits, 0}) + "e" + std::to_string(decimal.exponent);
}

// Fewest digits in a unit that is no power of ten, such that reading gives the same double again.
std::string canonical_in(double value_in_si, const char* symbol, const detail::UnitDef& unit,
                         double in_unit) {
    for (int digits = 1; digits <= 17; ++digits) {
        char buffer[64];
        const auto end =
            std::to_chars(buffer, buffer + sizeof buffer, in_unit, std::chars_format::general, digits);
        double read = 0;
        std::from_chars(buffer, end.ptr, read);
        if (detail::to_si(unit, read) == value_in_si) {
            const char* blank = unit.dimension == Dimension::angle ? "" : " "; // 45°, but 20 °C
            return joined(canonical_number(shortest(read)), blank, symbol);
        }
    }
    return {};
}

std::string shown_number(const Decimal& decimal) {
    const std::string sign = decimal.negative ? true_minus : "";
    if (reads_well_fixed(decimal)) {
        return sign + fixed_notation(decimal);
    }
    static const char* const superscripts[] = {"\u2070", "\u00b9", "\u00b2", "\u00b3", "\u2074",
                                               "\u2075", "\u2076", "\u2077", "\u2078", "\u2079"};
    std::string power = decimal.exponent < 0 ? "\u207b" : "";
    for (const char digit : std::to_string(std::abs(decimal.exponent))) {
        power += superscripts[digit - '0'];
    }
    return sign + fixed_notation({false, decimal.digits, 0}) + "\u00d710" + power;
}

std::string shown_in(double value, const std::string& symbol, int digits, const char* blank = thin_space) {
    Decimal decimal = rounded(value, digits);
    decimal.negative = decimal.negative && value != 0;
    return joined(value == 0 ? "0" : shown_number(decimal), blank, symbol);
}

std::string shown_length_imperial(double metres, int digits) {
    const double inches = metres / 0.0254;
    if (std::abs(inches) >= 72) {
        return shown_in(inches / 12, "ft", digits);
    }
    return inches != 0 && std::abs(inches) < 1e-3 ? shown_in(inches * 1e3, "mil", digits)
                                                  : shown_in(inches, "in", digits);
}

} // namespace

std::string canonical(double value_in_si, Dimension dimension) {
    require_finite(value_in_si);
    const double value = value_in_si + 0.0;
    if (dimension == Dimension::temperature) {
        auto text = canonical_in(value, "°C", *detail::find_unit("degC", dimension), value - 273.15);
        if (!text.empty()) {
            return text;
        }
    }
    if (dimension == Dimension::angle) {
        const detail::UnitDef& degree = *detail::find_unit("deg", dimension);
        auto text = canonical_in(value, "°", degree, value / degree.multiplier);
        if (!text.empty()) {
            return text;
        }
    }
    Decimal decimal = shortest(value);
    const Step step = step_for(dimension, decimal, value == 0);
    decimal.exponent -= value == 0 ? 0 : step.power10;
    return joined(canonical_number(decimal), " ", step.symbol);
}

std::string shown(double value_in_si, Dimension dimension, int digits, UnitSystem system) {
    require_finite(value_in_si);
    if (digits < 1 || digits > 17) {
        throw base::ProgramError("shown: digits from 1 to 17");
    }
    const bool imperial = system == UnitSystem::imperial;
    if (dimension == Dimension::length && imperial) {
        return shown_length_imperial(value_in_si, digits);
    }
    if (dimension == Dimension::angle) {
        return shown_in(value_in_si / detail::find_unit("deg", dimension)->multiplier, "°", digits, "");
    }
    if (dimension == Dimension::temperature) {
        return imperial ? shown_in(value_in_si * 9 / 5 - 459.67, "°F", digits)
                        : shown_in(value_in_si - 273.15, "°C", digits);
    }
    if (dimension == Dimension::loss_per_length) {
        return imperial ? shown_in(value_in_si * 30.48, "dB/100ft", digits)
                        : shown_in(value_in_si * 100, "dB/100m", digits);
    }
    Decimal decimal = rounded(value_in_si, digits);
    const Step step = step_for(dimension, decimal, value_in_si == 0);
    if (value_in_si == 0) {
        return shown_in(0, step.symbol, digits);
    }
    decimal.exponent -= step.power10;
    return joined(shown_number(decimal), thin_space, step.symbol);
}

} // namespace loopwright::units
