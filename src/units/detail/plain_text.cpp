#include "units/detail/plain_text.hpp"

#include "base/utf8.hpp"

#include <cstddef>

namespace loopwright::units::detail {
namespace {

struct Spelling {
    char32_t symbol;
    const char* ascii;
};

const Spelling spellings[] = {
    {0x03A9, "ohm"},  {0x2126, "ohm"},  {0x00B5, "u"},    {0x03BC, "u"},    {0x00B0, "deg"},
    {0x00BA, "deg"},  {0x2103, "degC"}, {0x2109, "degF"}, {0x212A, "K"},    {0x2212, "-"},
    {0x2013, "-"},    {0xFF0D, "-"},    {0xFE63, "-"},    {0x00D7, "*"},    {0x00B7, "*"},
    {0x22C5, "*"},    {0x00F7, "/"},    {0x2215, "/"},    {0x2044, "/"},    {0x2032, "'"},
    {0x2019, "'"},    {0x2033, "\""},   {0x201D, "\""},   {0x00BC, " 1/4"}, {0x00BD, " 1/2"},
    {0x00BE, " 3/4"}, {0x215B, " 1/8"}, {0x215C, " 3/8"}, {0x215D, " 5/8"}, {0x215E, " 7/8"},
};

bool is_blank(char32_t c) {
    return c == ' ' || c == '\t' || c == 0x00A0 || (c >= 0x2000 && c <= 0x200A) || c == 0x202F ||
           c == 0x205F || c == 0x3000;
}

// Joiners and marks that copying from a page leaves behind and nobody sees.
bool is_invisible(char32_t c) {
    return c == 0x200B || c == 0x2060 || c == 0xFEFF;
}

const char* ascii_of(char32_t symbol) {
    for (const Spelling& spelling : spellings) {
        if (spelling.symbol == symbol) {
            return spelling.ascii;
        }
    }
    return nullptr;
}

} // namespace

std::optional<std::string> to_ascii(std::string_view text) {
    std::string plain;
    for (std::size_t at = 0; at < text.size();) {
        const auto c = base::next_character(text, at);
        if (!c) {
            return std::nullopt;
        }
        if (is_blank(*c)) {
            plain += ' ';
        } else if (const char* ascii = ascii_of(*c)) {
            plain += ascii;
        } else if (*c > 0x20 && *c < 0x7F) {
            plain += static_cast<char>(*c);
        } else if (!is_invisible(*c)) {
            return std::nullopt;
        }
    }
    const auto first = plain.find_first_not_of(' ');
    if (first == std::string::npos) {
        return std::string();
    }
    return plain.substr(first, plain.find_last_not_of(' ') - first + 1);
}

} // namespace loopwright::units::detail
