#include "base/utf8.hpp"

namespace loopwright::base {

std::optional<char32_t> next_character(std::string_view text, std::size_t& at) {
    const auto lead = static_cast<unsigned char>(text[at]);
    if (lead < 0x80) {
        ++at;
        return lead;
    }
    const std::size_t more = lead >= 0xF0 ? 3 : lead >= 0xE0 ? 2 : 1;
    if (lead < 0xC2 || lead > 0xF4 || at + more >= text.size()) {
        return std::nullopt;
    }
    char32_t c = lead & (0x3FU >> more);
    for (std::size_t i = 1; i <= more; ++i) {
        const auto next = static_cast<unsigned char>(text[at + i]);
        if ((next & 0xC0U) != 0x80U) {
            return std::nullopt;
        }
        c = (c << 6U) | (next & 0x3FU);
    }
    const bool overlong = (more == 2 && c < 0x800) || (more == 3 && c < 0x10000);
    if (overlong || (c >= 0xD800 && c <= 0xDFFF) || c > 0x10FFFF) {
        return std::nullopt;
    }
    at += more + 1;
    return c;
}

std::optional<std::size_t> first_bad_byte(std::string_view text) {
    for (std::size_t at = 0; at < text.size();) {
        if (!next_character(text, at)) {
            return at;
        }
    }
    return std::nullopt;
}

std::string quotable(std::string_view text, std::size_t longest) {
    std::string shown;
    std::size_t characters = 0;
    for (std::size_t at = 0; at < text.size(); ++characters) {
        if (characters == longest) {
            return shown + "...";
        }
        const std::size_t begin = at;
        const auto c = next_character(text, at);
        if (!c) {
            at = begin + 1;
        }
        if (!c || *c < 0x20 || (*c >= 0x7F && *c < 0xA0)) {
            shown += '?';
        } else {
            shown += text.substr(begin, at - begin);
        }
    }
    return shown;
}

} // namespace loopwright::base
