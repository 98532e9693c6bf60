#include "base/utf8.hpp"

#include <gtest/gtest.h>

namespace loopwright::base {

// The Unicode Standard, chapter 3, table 3-7 (well-formed UTF-8): first and last of every row, and one beside
// it.
TEST(Utf8, WellFormedSequencesOfTheStandard) {
    for (const char* good :
         {"\x01", "\x7F", "\xC2\x80", "\xDF\xBF", "\xE0\xA0\x80", "\xE0\xBF\xBF", "\xE1\x80\x80",
          "\xEC\xBF\xBF", "\xED\x80\x80", "\xED\x9F\xBF", "\xEE\x80\x80", "\xEF\xBF\xBF", "\xF0\x90\x80\x80",
          "\xF0\xBF\xBF\xBF", "\xF3\xBF\xBF\xBF", "\xF4\x80\x80\x80", "\xF4\x8F\xBF\xBF"}) {
        EXPECT_FALSE(first_bad_byte(good)) << good;
    }
    for (const char* bad : {"\x80", "\xBF", "\xC0\x80", "\xC1\xBF", "\xE0\x9F\xBF", "\xED\xA0\x80",
                            "\xED\xBF\xBF", "\xF0\x8F\xBF\xBF", "\xF4\x90\x80\x80", "\xF5\x80\x80\x80",
                            "\xFF", "\xC2", "\xE1\x80", "\xF1\x80\x80", "\xC2\x41", "\xE1\x41\x80"}) {
        EXPECT_EQ(first_bad_byte(bad), 0U) << bad;
    }
    EXPECT_EQ(first_bad_byte("abc\xFF"), 3U);
    std::size_t at = 0;
    EXPECT_EQ(next_character("\xE2\x84\xA6", at), U'\u2126');
    EXPECT_EQ(at, 3U);
}

TEST(Utf8, QuotableIsShortAndClean) {
    EXPECT_EQ(quotable("a\nb\x7F"), "a?b?");
    EXPECT_EQ(quotable("\xFF\xC3\xA9"), "?\xC3\xA9");
    EXPECT_EQ(quotable(std::string(100, 'x')), std::string(60, 'x') + "...");
    EXPECT_EQ(quotable("abcdef", 3), "abc...");
}

} // namespace loopwright::base
