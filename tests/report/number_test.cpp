#include "report/number.hpp"

#include "base/error.hpp"

#include <gtest/gtest.h>

#include <clocale>
#include <cmath>
#include <cstdlib>

namespace loopwright::report {
namespace {

// What a person would write by hand, rounding half away; no outside table is needed.
TEST(Significant, RoundsToTheDigitsAskedFor) {
    EXPECT_EQ(significant(1234.5, 3), "1230");
    EXPECT_EQ(significant(12.345, 3), "12.3");
    EXPECT_EQ(significant(0.0123456, 3), "0.0123");
    EXPECT_EQ(significant(9.996, 3), "10.0");
    EXPECT_EQ(significant(0.09996, 3), "0.100");
    EXPECT_EQ(significant(999.6, 3), "1000");
    EXPECT_EQ(significant(5, 1), "5");
    EXPECT_EQ(significant(0, 3), "0");
    EXPECT_EQ(significant(-0.0, 3), "0");
    EXPECT_EQ(significant(1e11, 3), "100000000000");
}

TEST(Significant, HasATrueMinusAndAnExponentFarOut) {
    EXPECT_EQ(significant(-7.354, 3), "\xE2\x88\x92"
                                      "7.35");
    EXPECT_EQ(significant(1.5e13, 3), "1.50e+13");
    EXPECT_EQ(significant(1.5e-9, 2), "1.5e-09");
}

TEST(Fixed, HasItsDecimals) {
    EXPECT_EQ(fixed(7.07550001, 4), "7.0755");
    EXPECT_EQ(fixed(28, 4), "28.0000");
    EXPECT_EQ(fixed(-0.001, 1), "0.0") << "no minus before a zero";
    EXPECT_EQ(fixed(-0.06, 1), "\xE2\x88\x92"
                               "0.1");
}

TEST(Exact, ReadsBackToTheSameDouble) {
    for (const double value : {0.1, 1.0 / 3, 7.0755e6, 5e-324, 1.7976931348623157e308, -2.5e-12}) {
        EXPECT_EQ(std::strtod(exact(value).c_str(), nullptr), value);
    }
    EXPECT_EQ(exact(0.1), "0.1");
}

TEST(Numbers, RefuseWhatIsNotFinite) {
    for (const double value : {std::nan(""), HUGE_VAL, -HUGE_VAL}) {
        EXPECT_THROW(static_cast<void>(significant(value, 3)), base::ProgramError);
        EXPECT_THROW(static_cast<void>(fixed(value, 3)), base::ProgramError);
        EXPECT_THROW(static_cast<void>(exact(value)), base::ProgramError);
    }
}

} // namespace
} // namespace loopwright::report
