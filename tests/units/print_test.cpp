#include "base/error.hpp"
#include "units/text.hpp"

#include <cmath>
#include <gtest/gtest.h>
#include <limits>
#include <random>
#include <string>
#include <utility>
#include <vector>

namespace loopwright::units {
namespace {

using D = Dimension;

const std::vector<D>& all_dimensions() {
    static const std::vector<D> all{D::number,        D::length,     D::frequency,       D::time,
                                    D::angle,         D::resistance, D::capacitance,     D::inductance,
                                    D::voltage,       D::current,    D::power,           D::conductivity,
                                    D::temperature,   D::per_kelvin, D::loss_per_length, D::electric_field,
                                    D::magnetic_field};
    return all;
}

// Random in sign, digits and decade; now and then a "round" value as people type them.
double random_value(std::mt19937& engine, D dimension) {
    std::uniform_real_distribution<double> decade(-15, 12);
    std::uniform_int_distribution<int> kind(0, 3);
    if (dimension == D::temperature) {
        return std::uniform_real_distribution<double>(150, 500)(engine);
    }
    double value = std::pow(10.0, decade(engine));
    if (kind(engine) == 0) {
        value = std::round(value * 1e3) / 1e3;
    }
    return kind(engine) == 1 ? -value : value;
}

} // namespace

TEST(Canonical, IsShortAndInTheTradesUnits) {
    EXPECT_EQ(canonical(metres(0.9)), "0.9 m");
    EXPECT_EQ(canonical(millimetres(22)), "22 mm");
    EXPECT_EQ(canonical(millimetres(0.5)), "0.5 mm");
    EXPECT_EQ(canonical(metres(17.7e-6)), "17.7 µm");
    EXPECT_EQ(canonical(metres(100)), "100 m");
    EXPECT_EQ(canonical(metres(0)), "0 m");
    EXPECT_EQ(canonical(picofarads(150)), "150 pF");
    EXPECT_EQ(canonical(picofarads(0)), "0 pF");
    EXPECT_EQ(canonical(megahertz(7.074)), "7.074 MHz");
    EXPECT_EQ(canonical(degrees_celsius(20)), "20 °C");
    EXPECT_EQ(canonical(degrees_celsius(-5.3)), "-5.3 °C");
    EXPECT_EQ(canonical(degrees(45)), "45°");
    EXPECT_EQ(canonical(ohms(0.001)), "1 mΩ");
    EXPECT_EQ(canonical(siemens_per_metre(58e6)), "58 MS/m");
    EXPECT_EQ(canonical(siemens_per_metre(0.005)), "5 mS/m");
    EXPECT_EQ(canonical(per_kelvin(0.00393)), "0.00393 /K");
    EXPECT_EQ(canonical(volts(2000)), "2 kV");
    EXPECT_EQ(canonical(watts(5)), "5 W");
    EXPECT_EQ(canonical(ElectricField::from_value(28)), "28 V/m");
    EXPECT_EQ(canonical(MagneticField::from_value(0.073)), "73 mA/m");
    EXPECT_EQ(canonical(1e12, D::number), "1e12");
    EXPECT_EQ(canonical(-0.0, D::length), "0 m");
    EXPECT_THROW((void)canonical(std::nan(""), D::length), base::ProgramError);
    EXPECT_THROW((void)canonical(std::numeric_limits<double>::infinity(), D::number), base::ProgramError);
}

TEST(Canonical, ReadsBackToTheSameDoubleInEveryDimension) {
    std::mt19937 engine(20240501); // fixed: a failure can be repeated
    for (const D dimension : all_dimensions()) {
        for (int i = 0; i < 4000; ++i) {
            const double value = random_value(engine, dimension);
            const std::string text = canonical(value, dimension);
            ASSERT_EQ(parse_si(text, dimension, "x"), value) << text;
            ASSERT_EQ(canonical(parse_si(text, dimension, "x"), dimension), text);
        }
    }
}

TEST(Canonical, TypedNumbersComeBackAsTyped) {
    std::mt19937 engine(7);
    std::uniform_int_distribution<int> digits(1, 99999);
    for (int i = 0; i < 4000; ++i) {
        const double typed = digits(engine) / 100.0;
        const std::string number = canonical(typed, D::number);
        const double value = parse_si(number + " mm", D::length, "x");
        EXPECT_DOUBLE_EQ(value, typed / 1e3);
        const double back = parse_si(canonical(value, D::length), D::length, "x");
        ASSERT_EQ(back, value);
    }
}

TEST(UnitsOf, EveryOfferedUnitIsReadAndMeansItsFactor) {
    for (const D dimension : all_dimensions()) {
        ASSERT_FALSE(units_of(dimension).empty());
        for (const Unit& unit : units_of(dimension)) {
            const double read = parse_si("3.7" + unit.symbol, dimension, "x");
            EXPECT_NEAR(read, unit.factor * 3.7 + unit.offset, 1e-12 * std::abs(read)) << unit.symbol;
            EXPECT_EQ(parse_si("3,7 " + unit.symbol, dimension, "x"), read);
        }
    }
}

TEST(Shown, ThreeDigitsPrefixThinSpaceTrueMinus) {
    EXPECT_EQ(shown(metres(0.9)), "0.900\u2009m");
    EXPECT_EQ(shown(millimetres(22)), "22.0\u2009mm");
    EXPECT_EQ(shown(metres(17.7e-6)), "17.7\u2009µm");
    EXPECT_EQ(shown(metres(-1.5)), "\u22121.50\u2009m");
    EXPECT_EQ(shown(picofarads(200.2)), "200\u2009pF");
    EXPECT_EQ(shown(hertz(999.6)), "1.00\u2009kHz"); // rounding changes the prefix
    EXPECT_EQ(shown(megahertz(14.0746), 5), "14.075\u2009MHz");
    EXPECT_EQ(shown(ohms(0.1421)), "142\u2009mΩ");
    EXPECT_EQ(shown(volts(1286)), "1.29\u2009kV");
    EXPECT_EQ(shown(volts(0)), "0\u2009V");
    EXPECT_EQ(shown(degrees_celsius(20)), "20.0\u2009°C");
    EXPECT_EQ(shown(degrees(45)), "45.0°");
    EXPECT_EQ(shown(634.2, D::number), "634");
    EXPECT_EQ(shown(12345.0, D::number), "12300");
    EXPECT_EQ(shown(1e12, D::number), "1.00\u00d710\u00b9\u00b2");
    EXPECT_EQ(shown(0.00042, D::number, 2), "0.00042");
    EXPECT_EQ(shown(1.5e-7, D::number, 2), "1.5\u00d710\u207b\u2077");
    EXPECT_EQ(shown(0.045, D::loss_per_length, 2), "4.5\u2009dB/100m");
    EXPECT_THROW((void)shown(std::nan(""), D::length), base::ProgramError);
    EXPECT_THROW((void)shown(1.0, D::length, 0), base::ProgramError);
}

TEST(Shown, ImperialLengthsAndTemperatures) {
    const auto imperial = UnitSystem::imperial;
    EXPECT_EQ(shown(metres(0.9144), 3, imperial), "36.0\u2009in");
    EXPECT_EQ(shown(metres(3.048), 3, imperial), "10.0\u2009ft");
    EXPECT_EQ(shown(metres(17.7e-6), 3, imperial), "0.697\u2009mil"); // 17.7 / 25.4
    EXPECT_EQ(shown(metres(0), 3, imperial), "0\u2009in");
    EXPECT_EQ(shown(degrees_celsius(20), 3, imperial), "68.0\u2009°F");
    EXPECT_EQ(shown(megahertz(7.1), 3, imperial), "7.10\u2009MHz");
}

TEST(Shown, ReadsBackWithinItsDigits) {
    std::mt19937 engine(99);
    for (const D dimension : all_dimensions()) {
        for (int i = 0; i < 500; ++i) {
            const double value = random_value(engine, dimension);
            for (const UnitSystem system : {UnitSystem::metric, UnitSystem::imperial}) {
                const std::string text = shown(value, dimension, 6, system);
                if (text.find("\u00d710") != std::string::npos) {
                    continue; // powers in superscript are for the eye
                }
                const double read = parse_si(text, dimension, "x");
                ASSERT_NEAR(read, value, 6e-6 * (std::abs(value) + (dimension == D::temperature ? 500 : 0)))
                    << text;
            }
        }
    }
}

// Whatever becomes of a text: a finite number or an InputError with the field's name, nothing else.
TEST(ReadProperties, DamagedTextsNeverFailInAnotherWay) {
    std::mt19937 engine(4711);
    const std::vector<std::pair<std::string, D>> sound{
        {"2*0.45 m", D::length},     {"3 ft 2 1/2 in", D::length}, {"(0,4+0,5) m", D::length},
        {"7,074 MHz", D::frequency}, {"1.5e-3 m", D::length},      {"14 AWG", D::length},
        {"20 °C", D::temperature},   {"150 pF", D::capacitance},   {"5 mΩ", D::resistance},
        {"58 MS/m", D::conductivity}};
    const std::vector<std::string> pieces{"0", "9", ".", ",",  "+",    "-",    "*",    "/",   "(", ")",
                                          " ", "m", "e", "\"", "\xce", "\xb5", "\x01", "1e9", "x", "%"};
    const auto any = [&](std::size_t count) {
        return std::uniform_int_distribution<std::size_t>(0, count - 1)(engine);
    };
    int accepted = 0;
    for (int i = 0; i < 30000; ++i) {
        auto [text, dimension] = sound[any(sound.size())];
        for (std::size_t n = any(4); n > 0; --n) {
            text.replace(any(text.size() + 1), any(3), pieces[any(pieces.size())]);
        }
        try {
            ASSERT_TRUE(std::isfinite(parse_si(text, dimension, "x"))) << text;
            ++accepted;
        } catch (const base::InputError& error) {
            ASSERT_EQ(error.where(), "x");
        }
    }
    EXPECT_GT(accepted, 1000); // the texts are not all nonsense
}

} // namespace loopwright::units
