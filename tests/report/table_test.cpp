#include "report/table.hpp"

#include <gtest/gtest.h>

namespace loopwright::report {
namespace {

Table sample() {
    return {{{"band", "Band", ""}, {"voltage_V", "Capacitor peak", "kV", 1e-3}, {"note", "Note", ""}},
            {{std::string("40m"), 1234.5, std::string("plain")},
             {std::string("160m"), -98.7, std::string("two, \"quoted\"\nlines")},
             {std::string("6m"), Cell(), true}}};
}

// RFC 4180, section 2: CR LF at the end of each record, header first, fields with comma, quote or line break
// in double quotes, a quote doubled.
TEST(Csv, FollowsRfc4180) {
    EXPECT_EQ(to_csv(sample()), "band,voltage_V,note\r\n"
                                "40m,1234.5,plain\r\n"
                                "160m,-98.7,\"two, \"\"quoted\"\"\nlines\"\r\n"
                                "6m,,true\r\n");
}

TEST(Csv, QuotesALoneCarriageReturn) {
    EXPECT_EQ(to_csv({{{"a", "", ""}}, {{std::string("x\ry")}}}), "a\r\n\"x\ry\"\r\n");
}

TEST(Text, AlignsAtTheDecimalSign) {
    Table table = sample();
    table.rows[1][2] = std::string("short");
    EXPECT_EQ(to_text(table), "Band  Capacitor  Note\n"
                              "           peak\n"
                              "             kV\n"
                              "40m      1.23    plain\n"
                              "160m    \xE2\x88\x92"
                              "0.0987  short\n"
                              "6m               yes\n");
}

TEST(Text, WithoutUnitsHasNoUnitLine) {
    EXPECT_EQ(to_text({{{"a", "A", ""}}, {{1.0}}}), "   A\n1.00\n");
}

TEST(Wrapped, BreaksAtBlanksAndKeepsLongWords) {
    EXPECT_EQ(wrapped("one two three", 7), (std::vector<std::string>{"one two", "three"}));
    EXPECT_EQ(wrapped("incomprehensible a", 5), (std::vector<std::string>{"incomprehensible", "a"}));
    EXPECT_EQ(wrapped("a  b", 3), (std::vector<std::string>{"a b"}));
    EXPECT_TRUE(wrapped("", 3).empty());
}

TEST(Characters, CountsCodePoints) {
    EXPECT_EQ(characters("m\xCE\xA9 \xE2\x88\x92"
                         "5"),
              5U);
}

} // namespace
} // namespace loopwright::report
