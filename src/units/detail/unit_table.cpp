#include "units/detail/unit_table.hpp"

#include "units/constants.hpp"

#include <algorithm>
#include <cctype>
#include <cmath>
#include <vector>

namespace loopwright::units::detail {
namespace {

struct Prefix {
    const char* word;
    int power10;
    char letter; ///< ' ' for none
};
const Prefix prefixes[] = {{"pico", -12, 'p'}, {"nano", -9, 'n'},  {"micro", -6, 'u'},
                           {"milli", -3, 'm'}, {"centi", -2, 'c'}, {"", 0, ' '},
                           {"kilo", 3, 'k'},   {"mega", 6, 'M'},   {"giga", 9, 'G'}};

// SI units with the prefixes that are in use; words also with a plural.
struct Family {
    const char* symbol;
    Dimension dimension;
    const char* prefix_letters;
    const char* word;
};
const Family families[] = {
    {"m", Dimension::length, "numc k", "meter"},
    {"m", Dimension::length, "numc k", "metre"},
    {"Hz", Dimension::frequency, "m kMG", "hertz"},
    {"s", Dimension::time, "pnum ", "second"},
    {"ohm", Dimension::resistance, "num kMG", "ohm"},
    {"F", Dimension::capacitance, "pnum ", "farad"},
    {"H", Dimension::inductance, "pnum ", "henry"},
    {"V", Dimension::voltage, "num kM", "volt"},
    {"A", Dimension::current, "num k", "ampere"},
    {"A", Dimension::current, "num k", "amp"},
    {"W", Dimension::power, "pnum kM", "watt"},
    {"S/m", Dimension::conductivity, "num kMG", nullptr},
    {"rad", Dimension::angle, "m ", "radian"},
    {"V/m", Dimension::electric_field, "num kM", nullptr},
    {"A/m", Dimension::magnetic_field, "num kM", nullptr},
};

// All others. 1 in = 25.4 mm exactly (international yard and pound agreement, 1959).
const UnitDef singles[] = {
    {"%", Dimension::number, 1, -2},
    {"in", Dimension::length, 254, -4},
    {"\"", Dimension::length, 254, -4},
    {"inch", Dimension::length, 254, -4},
    {"inches", Dimension::length, 254, -4},
    {"mil", Dimension::length, 254, -7},
    {"ft", Dimension::length, 3048, -4},
    {"'", Dimension::length, 3048, -4},
    {"foot", Dimension::length, 3048, -4},
    {"feet", Dimension::length, 3048, -4},
    {"yd", Dimension::length, 9144, -4},
    {"min", Dimension::time, 60, 0},
    {"minute", Dimension::time, 60, 0},
    {"minutes", Dimension::time, 60, 0},
    {"h", Dimension::time, 3600, 0},
    {"hour", Dimension::time, 3600, 0},
    {"hours", Dimension::time, 3600, 0},
    {"deg", Dimension::angle, constants::pi / 180, 0},
    {"degree", Dimension::angle, constants::pi / 180, 0},
    {"degrees", Dimension::angle, constants::pi / 180, 0},
    {"S/cm", Dimension::conductivity, 1, 2},
    {"mS/cm", Dimension::conductivity, 1, -1},
    {"uS/cm", Dimension::conductivity, 1, -4},
    {"S/mm", Dimension::conductivity, 1, 3},
    // International annealed copper standard, 58.0 MS/m (NBS Circular 31).
    {"%IACS", Dimension::conductivity, 58, 4},
    {"% IACS", Dimension::conductivity, 58, 4},
    {"dBm", Dimension::power, 1, 0, Law::dbm},
    {"K", Dimension::temperature, 1, 0},
    {"degC", Dimension::temperature, 1, 0, Law::celsius},
    {"C", Dimension::temperature, 1, 0, Law::celsius},
    {"degF", Dimension::temperature, 1, 0, Law::fahrenheit},
    {"F", Dimension::temperature, 1, 0, Law::fahrenheit},
    {"/K", Dimension::per_kelvin, 1, 0},
    {"/degC", Dimension::per_kelvin, 1, 0},
    {"/C", Dimension::per_kelvin, 1, 0},
    {"1/K", Dimension::per_kelvin, 1, 0},
    {"1/degC", Dimension::per_kelvin, 1, 0},
    {"%/K", Dimension::per_kelvin, 1, -2},
    {"%/degC", Dimension::per_kelvin, 1, -2},
    {"ppm/K", Dimension::per_kelvin, 1, -6},
    {"ppm/degC", Dimension::per_kelvin, 1, -6},
    // Flux density in air over the magnetic constant.
    {"T", Dimension::magnetic_field, 1 / constants::magnetic_constant_H_m, 0},
    {"mT", Dimension::magnetic_field, 1 / constants::magnetic_constant_H_m, -3},
    {"uT", Dimension::magnetic_field, 1 / constants::magnetic_constant_H_m, -6},
    {"nT", Dimension::magnetic_field, 1 / constants::magnetic_constant_H_m, -9},
    {"V/cm", Dimension::electric_field, 1, 2},
    {"dB/m", Dimension::loss_per_length, 1, 0},
    {"dB/100m", Dimension::loss_per_length, 1, -2},
    {"dB/100 m", Dimension::loss_per_length, 1, -2},
    {"dB/km", Dimension::loss_per_length, 1, -3},
    {"dB/ft", Dimension::loss_per_length, 1 / 0.3048, 0},
    {"dB/100ft", Dimension::loss_per_length, 1 / 30.48, 0},
    {"dB/100 ft", Dimension::loss_per_length, 1 / 30.48, 0},
};

void add_family(std::vector<UnitDef>& table, const Family& family) {
    for (const char* letter = family.prefix_letters; *letter != '\0'; ++letter) {
        for (const Prefix& prefix : prefixes) {
            if (prefix.letter != *letter) {
                continue;
            }
            const std::string start = prefix.letter == ' ' ? "" : std::string(1, prefix.letter);
            table.push_back({start + family.symbol, family.dimension, 1, prefix.power10});
            if (family.word != nullptr) {
                const std::string word = std::string(prefix.word) + family.word;
                table.push_back({word, family.dimension, 1, prefix.power10});
                table.push_back({word + "s", family.dimension, 1, prefix.power10});
            }
        }
    }
}

const std::vector<UnitDef>& table() {
    static const std::vector<UnitDef> all = [] {
        std::vector<UnitDef> made(std::begin(singles), std::end(singles));
        for (const Family& family : families) {
            add_family(made, family);
        }
        return made;
    }();
    return all;
}

bool same_but_for_case(std::string_view a, std::string_view b) {
    return std::equal(a.begin(), a.end(), b.begin(), b.end(), [](char x, char y) {
        return std::tolower(static_cast<unsigned char>(x)) == std::tolower(static_cast<unsigned char>(y));
    });
}

const UnitDef* exact(std::string_view spelling, const Dimension* dimension) {
    for (const UnitDef& unit : table()) {
        if (unit.spelling == spelling && (dimension == nullptr || unit.dimension == *dimension)) {
            return &unit;
        }
    }
    return nullptr;
}

// "KHZ", "pf", "5 w". Not where case decides between milli and mega, and no metre as "M".
const UnitDef* loose(std::string_view spelling, Dimension dimension) {
    const UnitDef* found = nullptr;
    for (const UnitDef& unit : table()) {
        if (unit.dimension != dimension || !same_but_for_case(unit.spelling, spelling)) {
            continue;
        }
        if (found != nullptr && found->power10 != unit.power10) {
            return dimension == Dimension::frequency ? exact("MHz", &dimension) : nullptr;
        }
        found = &unit;
    }
    return spelling == "M" ? nullptr : found;
}

struct Words {
    Dimension dimension;
    const char* name;
    const char* examples;
};
const Words words[] = {
    {Dimension::number, "number", "'1.5'"},
    {Dimension::length, "length", "'0.9 m' or '36 in'"},
    {Dimension::frequency, "frequency", "'7.074 MHz'"},
    {Dimension::time, "time", "'15 s' or '6 min'"},
    {Dimension::angle, "angle", "'45 deg'"},
    {Dimension::resistance, "resistance", "'50 ohm' or '2 mohm'"},
    {Dimension::capacitance, "capacitance", "'150 pF'"},
    {Dimension::inductance, "inductance", "'2.5 uH'"},
    {Dimension::voltage, "voltage", "'2 kV'"},
    {Dimension::current, "current", "'1.5 A'"},
    {Dimension::power, "power", "'5 W'"},
    {Dimension::conductivity, "conductivity", "'58 MS/m' or '5 mS/m'"},
    {Dimension::temperature, "temperature", "'20 degC' or '68 degF'"},
    {Dimension::per_kelvin, "temperature coefficient", "'0.00393 /K'"},
    {Dimension::loss_per_length, "loss per length", "'4.5 dB/100m'"},
    {Dimension::electric_field, "electric field strength", "'28 V/m'"},
    {Dimension::magnetic_field, "magnetic field strength", "'0.073 A/m'"},
};

const Words& words_for(Dimension dimension) {
    return *std::find_if(std::begin(words), std::end(words),
                         [&](const Words& row) { return row.dimension == dimension; });
}

} // namespace

const UnitDef* find_unit(std::string_view spelling, Dimension wanted) {
    if (const UnitDef* unit = exact(spelling, &wanted)) {
        return unit;
    }
    if (const UnitDef* unit = loose(spelling, wanted)) {
        return unit;
    }
    return exact(spelling, nullptr);
}

double scaled(double number, int power10) {
    const double power = std::pow(10.0, std::abs(power10)); // exact up to 1e22
    return power10 < 0 ? number / power : number * power;
}

double to_si(const UnitDef& unit, double number) {
    switch (unit.law) {
    case Law::celsius:
        return number + constants::celsius_zero_K;
    case Law::fahrenheit:
        return (number + 459.67) * 5 / 9;
    case Law::dbm:
        return 1e-3 * std::pow(10.0, number / 10);
    case Law::linear:
        break;
    }
    return scaled(number * unit.multiplier, unit.power10);
}

std::string name_of(Dimension dimension) {
    return words_for(dimension).name;
}

std::string examples_of(Dimension dimension) {
    return words_for(dimension).examples;
}

std::string wanted_text(Dimension dimension) {
    const char* unit = dimension == Dimension::number ? ", such as " : " with its unit, such as ";
    return with_article(dimension) + unit + examples_of(dimension);
}

} // namespace loopwright::units::detail
