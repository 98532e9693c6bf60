#include "base/error.hpp"
#include "units/text.hpp"
#include "units/wire_gauge.hpp"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

namespace loopwright::units {
namespace {

using testing::HasSubstr;
using D = Dimension;

double length(const std::string& text) {
    return parse_si(text, D::length, "loop.size");
}

std::string refusal(const std::string& text, D dimension) {
    try {
        const double value = parse_si(text, dimension, "a.field");
        return "accepted as " + std::to_string(value);
    } catch (const base::InputError& error) {
        EXPECT_EQ(error.where(), "a.field");
        return error.what();
    }
}

} // namespace

// 1 in = 25.4 mm and 1 ft = 304.8 mm exactly: international yard and pound agreement, 1959 (NBS, Federal
// Register 24 FR 5445).
TEST(ReadLength, InEveryUnitAndSpelling) {
    EXPECT_EQ(length("0.9 m"), 0.9);
    EXPECT_EQ(length("0,9m"), 0.9);
    EXPECT_EQ(length(" 90 cm "), 0.9);
    EXPECT_EQ(length("22 mm"), 0.022);
    EXPECT_EQ(length("22 millimetres"), 0.022);
    EXPECT_EQ(length("17.7 µm"), 17.7e-6);
    EXPECT_EQ(length("17.7 \u03bcm"), 17.7e-6);
    EXPECT_EQ(length("17.7um"), 17.7e-6);
    EXPECT_EQ(length("36 in"), 0.9144);
    EXPECT_EQ(length("36\""), 0.9144);
    EXPECT_EQ(length("36\u2033"), 0.9144);
    EXPECT_EQ(length("3 ft"), 0.9144);
    EXPECT_EQ(length("3'"), 0.9144);
    EXPECT_EQ(length("1.5e-3 m"), 0.0015);
    EXPECT_EQ(length("1.5E-3m"), 0.0015);
    EXPECT_EQ(length("15e2mm"), 1.5);
    EXPECT_EQ(length("20 mil"), 20 * 25.4e-6);
    EXPECT_EQ(length("\u22120.9 m"), -0.9);
    EXPECT_EQ(length("-0.9 m"), -0.9);
    EXPECT_EQ(length("0.9\u202fm"), 0.9);
    EXPECT_EQ(length("0.9\u00a0m"), 0.9);
    EXPECT_EQ(length("0.9\u2009m"), 0.9);
    EXPECT_EQ(length("90 CM"), 0.9);
    EXPECT_EQ(length(".9 m"), 0.9);
    EXPECT_EQ(length("1. m"), 1.0);
}

TEST(ReadLength, ArithmeticAndMixedUnits) {
    EXPECT_EQ(length("2*0.45 m"), 0.9);
    EXPECT_EQ(length("2 x 0.45 m"), 0.9);
    EXPECT_EQ(length("2\u00d70.45 m"), 0.9);
    EXPECT_EQ(length("0.45 m * 2"), 0.9);
    EXPECT_EQ(length("(0.4+0.5) m"), 0.9);
    EXPECT_EQ(length("(0,4 + 0,5) m"), 0.9);
    EXPECT_DOUBLE_EQ(length("36 in + 1 cm"), 0.9244);
    EXPECT_DOUBLE_EQ(length("36in+1cm"), 0.9244);
    EXPECT_DOUBLE_EQ(length("1 m - 22 mm"), 0.978);
    EXPECT_DOUBLE_EQ(length("3 ft 2 in"), 38 * 0.0254);
    EXPECT_DOUBLE_EQ(length("3' 2\""), 38 * 0.0254);
    EXPECT_DOUBLE_EQ(length("3ft 2 1/2in"), 38.5 * 0.0254);
    EXPECT_DOUBLE_EQ(length("3 ft 1/2 in"), 36.5 * 0.0254);
    EXPECT_DOUBLE_EQ(length("-3 ft 2 in"), -38 * 0.0254);
    EXPECT_DOUBLE_EQ(length("2 m - 3 ft 2 in"), 2 - 38 * 0.0254);
    EXPECT_DOUBLE_EQ(length("1 m 20 cm"), 1.2);
    EXPECT_DOUBLE_EQ(length("5/8 in"), 0.625 * 0.0254);
    EXPECT_DOUBLE_EQ(length("1 1/8 in"), 1.125 * 0.0254);
    EXPECT_DOUBLE_EQ(length("1\u00bd in"), 1.5 * 0.0254);
    EXPECT_DOUBLE_EQ(length("3 m / 4"), 0.75);
    EXPECT_DOUBLE_EQ(length("1 m * (30 cm / 1 m)"), 0.3);
    EXPECT_DOUBLE_EQ(length("2*(0.4 m + 5 cm)"), 0.9);
    EXPECT_DOUBLE_EQ(length("1 m / 3 * 2"), 2.0 / 3);
    EXPECT_DOUBLE_EQ(length("50 % * 1.8 m"), 0.9);
}

TEST(ReadOthers, DecimalCommaOfAFrequency) {
    EXPECT_EQ(parse_si("7,074 MHz", D::frequency, ""), 7.074e6);
    EXPECT_EQ(parse_si("7.074MHz", D::frequency, ""), 7.074e6);
    EXPECT_EQ(parse_si("28500000Hz", D::frequency, ""), 28.5e6);
    EXPECT_EQ(parse_si("10136 khz", D::frequency, ""), 10.136e6);
    EXPECT_EQ(parse_si("14.1 MHZ", D::frequency, ""), 14.1e6);
    EXPECT_EQ(parse_si("14.1 mhz", D::frequency, ""), 14.1e6);
    EXPECT_EQ(parse_si("14.1 mHz", D::frequency, ""), 0.0141); // what it says; ranges refuse it
}

TEST(ReadOthers, SpellingsOfTheDesignFile) {
    EXPECT_EQ(parse_si("50 ohm", D::resistance, ""), 50);
    EXPECT_EQ(parse_si("50 \u2126", D::resistance, ""), 50);
    EXPECT_EQ(parse_si("50\u03a9", D::resistance, ""), 50);
    EXPECT_EQ(parse_si("1 mohm", D::resistance, ""), 1e-3);
    EXPECT_EQ(parse_si("1 mΩ", D::resistance, ""), 1e-3);
    EXPECT_EQ(parse_si("1 MΩ", D::resistance, ""), 1e6);
    EXPECT_EQ(parse_si("2.5uH", D::inductance, ""), 2.5e-6);
    EXPECT_EQ(parse_si("0.1 uF", D::capacitance, ""), 1e-7);
    EXPECT_EQ(parse_si("150pf", D::capacitance, ""), 150e-12);
    EXPECT_EQ(parse_si("20 degC", D::temperature, ""), 293.15);
    EXPECT_EQ(parse_si("20 °C", D::temperature, ""), 293.15);
    EXPECT_EQ(parse_si("-5 °C", D::temperature, ""), 268.15);
    EXPECT_EQ(parse_si("(15+5) °C", D::temperature, ""), 293.15);
    EXPECT_NEAR(parse_si("68 degF", D::temperature, ""), 293.15, 1e-12);
    EXPECT_NEAR(parse_si("-40 F", D::temperature, ""), 233.15, 1e-12);
    EXPECT_EQ(parse_si("293.15 K", D::temperature, ""), 293.15);
    EXPECT_EQ(parse_si("58 MS/m", D::conductivity, ""), 58e6);
    EXPECT_EQ(parse_si("5 mS/m", D::conductivity, ""), 5e-3);
    EXPECT_EQ(parse_si("0.005S/m", D::conductivity, ""), 5e-3);
    EXPECT_EQ(parse_si("100 % IACS", D::conductivity, ""), 58e6);
    EXPECT_EQ(parse_si("85%IACS", D::conductivity, ""), 49.3e6);
    EXPECT_EQ(parse_si("0.00393 /K", D::per_kelvin, ""), 0.00393);
    EXPECT_EQ(parse_si("0.00393/K", D::per_kelvin, ""), 0.00393);
    EXPECT_EQ(parse_si("0.00393 1/K", D::per_kelvin, ""), 0.00393);
    EXPECT_EQ(parse_si("3930 ppm/K", D::per_kelvin, ""), 0.00393);
    EXPECT_DOUBLE_EQ(parse_si("45 deg", D::angle, ""), 0.78539816339744831); // pi/4
    EXPECT_DOUBLE_EQ(parse_si("45°", D::angle, ""), 0.78539816339744831);
    EXPECT_EQ(parse_si("2 kV", D::voltage, ""), 2000);
    EXPECT_EQ(parse_si("2KV", D::voltage, ""), 2000);
    EXPECT_EQ(parse_si("5 w", D::power, ""), 5);
    EXPECT_DOUBLE_EQ(parse_si("37 dBm", D::power, ""), 5.0118723362727224); // 10^0.7
    EXPECT_EQ(parse_si("6 min", D::time, ""), 360);
    EXPECT_EQ(parse_si("4.5 dB/100m", D::loss_per_length, ""), 0.045);
    EXPECT_NEAR(parse_si("1.3716 dB/100 ft", D::loss_per_length, ""), 0.045, 1e-15); // 1.3716 / 30.48
    EXPECT_EQ(parse_si("85 %", D::number, ""), 0.85);
    EXPECT_EQ(parse_si("1,5", D::number, ""), 1.5);
    EXPECT_EQ(parse_si("1e12", D::number, ""), 1e12);
    EXPECT_EQ(parse_si("3 m / 1.5 m", D::number, ""), 2);
}

TEST(ReadRefusals, SayWhatIsAcceptedAndWhy) {
    EXPECT_EQ(refusal("5 kHz", D::length), "a.field: '5 kHz' is not accepted; a length with its unit, such "
                                           "as '0.9 m' or '36 in' (a frequency is given)");
    EXPECT_THAT(refusal("0.9", D::length), HasSubstr("the unit is missing"));
    EXPECT_THAT(refusal("1,234.5 m", D::length), HasSubstr("can be read in two ways"));
    EXPECT_THAT(refusal("1.234,5 m", D::length), HasSubstr("can be read in two ways"));
    EXPECT_THAT(refusal("28,500,000 Hz", D::frequency), HasSubstr("can be read in two ways"));
    EXPECT_THAT(refusal("", D::length), HasSubstr("nothing is given"));
    EXPECT_THAT(refusal("  ", D::length), HasSubstr("nothing is given"));
    EXPECT_THAT(refusal("m", D::length), HasSubstr("a number is missing"));
    EXPECT_THAT(refusal("nan m", D::length), HasSubstr("finite number"));
    EXPECT_THAT(refusal("NaN", D::number), HasSubstr("finite number"));
    EXPECT_THAT(refusal("-inf m", D::length), HasSubstr("finite number"));
    EXPECT_THAT(refusal("1e400 m", D::length), HasSubstr("too large"));
    EXPECT_THAT(refusal("1e99999999999 m", D::length), HasSubstr("exponent is out of range"));
    EXPECT_THAT(refusal("1e300 * 1e300 m", D::length), HasSubstr("too large"));
    EXPECT_THAT(refusal("1 m / 0", D::length), HasSubstr("division by zero"));
    EXPECT_THAT(refusal("1 m !", D::length), HasSubstr("at the end is not understood"));
    EXPECT_THAT(refusal("1 m)", D::length), HasSubstr("closed that was not opened"));
    EXPECT_THAT(refusal("(1 m", D::length), HasSubstr("not closed"));
    EXPECT_THAT(refusal("1 m +", D::length), HasSubstr("the end is missing"));
    EXPECT_THAT(refusal("1 m m", D::length), HasSubstr("two units in a row"));
    EXPECT_THAT(refusal("2 ft 1 m", D::length), HasSubstr("an operator is missing"));
    EXPECT_THAT(refusal("1 2 m", D::length), HasSubstr("an operator is missing"));
    EXPECT_THAT(refusal("0.4 + 0.5 m", D::length), HasSubstr("brackets before the unit"));
    EXPECT_THAT(refusal("1 m + 1 s", D::length), HasSubstr("cannot be added"));
    EXPECT_THAT(refusal("1 m * 1 m", D::length), HasSubstr("neither of the two"));
    EXPECT_THAT(refusal("2 / 1 m * 1 s", D::length), HasSubstr("neither of the two"));
    EXPECT_THAT(refusal("3 cubits", D::length), HasSubstr("'cubits' is not a known unit"));
    EXPECT_THAT(refusal("5 mw", D::power), HasSubstr("upper and lower case count"));
    EXPECT_THAT(refusal("1 MOHM", D::resistance), HasSubstr("upper and lower case count"));
    EXPECT_THAT(refusal("1 M", D::length), HasSubstr("not a known unit"));
    EXPECT_THAT(refusal("5 °C + 3 K", D::temperature), HasSubstr("no arithmetic with a temperature"));
    EXPECT_THAT(refusal("2*(5 °C)", D::temperature), HasSubstr("no arithmetic with a temperature"));
    EXPECT_THAT(refusal("3 m", D::number), HasSubstr("a unit of length is given"));
    EXPECT_THAT(refusal("--3 m", D::length), HasSubstr("two signs"));
    EXPECT_THAT(refusal(".", D::number), HasSubstr("without digits"));
    EXPECT_THAT(refusal("3 \xff m", D::length), HasSubstr("'3 ? m'"));
    EXPECT_THAT(refusal("3 \u00e9", D::length), HasSubstr("a character that no quantity has"));
    EXPECT_THAT(refusal(std::string(5000, '('), D::length), HasSubstr("too long"));
    EXPECT_LT(refusal(std::string(5000, '('), D::length).size(), 300U);
    EXPECT_THAT(refusal(std::string(190, '('), D::length), HasSubstr("the end is missing"));
}

// ASTM B258: 4/0 is 0.4600 in and gauge 36 is 0.0050 in by definition. The other rows are the diameters in
// inches as its table prints them, to 0.0001 in (from memory, checked against the formula that the standard
// gives).
TEST(WireGauge, AgreesWithTheStandardsTable) {
    EXPECT_NEAR(wire_gauge_diameter(-3).value(), 0.4600 * 0.0254, 1e-15);
    EXPECT_NEAR(wire_gauge_diameter(36).value(), 0.0050 * 0.0254, 1e-18);
    const struct {
        const char* text;
        double diameter_in;
    } rows[] = {{"4/0 AWG", .4600}, {"2/0 AWG", .3648}, {"AWG 00", .3648},  {"1/0 AWG", .3249},
                {"AWG 0", .3249},   {"2 AWG", .2576},   {"4 AWG", .2043},   {"6 AWG", .1620},
                {"8 AWG", .1285},   {"AWG 10", .1019},  {"12 awg", .0808},  {"#14 AWG", .0641},
                {"14AWG", .0641},   {"AWG16", .0508},   {"AWG 18", .0403},  {"20 AWG", .0320},
                {"22 AWG", .0253},  {"36 AWG", .0050},  {"0000 AWG", .4600}};
    for (const auto& row : rows) {
        EXPECT_NEAR(length(row.text) / 0.0254, row.diameter_in, 0.5e-4) << row.text;
    }
}

TEST(WireGauge, RefusesWhatIsNoGauge) {
    for (const char* text :
         {"57 AWG", "5/0 AWG", "AWG", "-2 AWG", "14.5 AWG", "2*14 AWG", "AWG 00000", "14 AWG 3"}) {
        EXPECT_THAT(refusal(text, D::length), HasSubstr("wire gauges run from 4/0 AWG to 56 AWG")) << text;
    }
    EXPECT_THAT(refusal("14 AWG", D::frequency), HasSubstr("not a known unit"));
    EXPECT_THROW((void)wire_gauge_diameter(57), base::ProgramError);
    EXPECT_THROW((void)wire_gauge_diameter(-4), base::ProgramError);
}

} // namespace loopwright::units
