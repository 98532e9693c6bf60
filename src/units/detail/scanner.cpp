#include "units/detail/scanner.hpp"

#include <algorithm>
#include <charconv>
#include <system_error>

namespace loopwright::units::detail {
namespace {

constexpr std::size_t longest_unit = 14; // "millimetres" and the like

bool is_digit(char c) {
    return c >= '0' && c <= '9';
}
bool is_letter(char c) {
    return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z');
}

} // namespace

bool starts_number(char c) {
    return is_digit(c) || c == '.' || c == ',';
}

double decimal(const std::string& literal, int power10) {
    const auto mark = literal.find('e');
    std::string mantissa = literal.substr(0, mark);
    long power = power10;
    if (mark != std::string::npos) {
        int own = 0;
        const char* from = literal.data() + mark + 1;
        if (std::from_chars(from, literal.data() + literal.size(), own).ec != std::errc()) {
            throw Problem{"the exponent is out of range"};
        }
        power += own;
    }
    mantissa += "e" + std::to_string(power);
    double number = 0;
    const auto read = std::from_chars(mantissa.data(), mantissa.data() + mantissa.size(), number);
    if (read.ec != std::errc()) {
        throw Problem{"the number is too large or too small"};
    }
    return number;
}

std::string Scanner::word() const {
    std::string letters;
    for (std::size_t i = at_; i < text_.size() && is_letter(text_[i]); ++i) {
        letters += static_cast<char>(text_[i] | 0x20);
    }
    return letters;
}

void Scanner::skip_blanks() {
    while (here() == ' ') {
        ++at_;
    }
}

bool Scanner::take(char c) {
    skip_blanks();
    if (here() != c) {
        return false;
    }
    ++at_;
    return true;
}

bool Scanner::is_times() const {
    const auto next = text_.find_first_not_of(' ', at_ + 1);
    return (here() == 'x' || here() == 'X') && next != std::string_view::npos &&
           (starts_number(text_[next]) || text_[next] == '(');
}

bool Scanner::take_times() {
    skip_blanks();
    if (!is_times()) {
        return false;
    }
    ++at_;
    return true;
}

std::string Scanner::take_literal() {
    std::string literal;
    std::size_t marks = 0;
    const std::size_t begin = at_;
    for (; starts_number(here()); ++at_) {
        marks += is_digit(here()) ? 0U : 1U;
        literal += is_digit(here()) ? here() : '.';
    }
    if (marks == literal.size()) {
        throw Problem{"a decimal sign stands without digits"};
    }
    if (marks > 1) {
        throw Problem{"'" + std::string(text_.substr(begin, std::min<std::size_t>(at_ - begin, 20))) +
                      "' can be read in two ways: write one decimal point or comma and nothing between "
                      "thousands"};
    }
    take_exponent(literal);
    return literal;
}

void Scanner::take_exponent(std::string& literal) {
    if (here() != 'e' && here() != 'E') {
        return;
    }
    std::size_t i = at_ + 1;
    std::string exponent = "e";
    if (i < text_.size() && (text_[i] == '-' || text_[i] == '+')) {
        exponent += text_[i] == '-' ? "-" : "";
        ++i;
    }
    const std::size_t first_digit = i;
    while (i < text_.size() && is_digit(text_[i])) {
        exponent += text_[i++];
    }
    if (i > first_digit) {
        literal += exponent;
        at_ = i;
    }
}

// Up to five digits that end there.
std::optional<double> Scanner::take_whole() {
    std::size_t i = at_;
    double value = 0;
    while (i < text_.size() && is_digit(text_[i]) && i - at_ < 5) {
        value = 10 * value + (text_[i++] - '0');
    }
    if (i == at_ || (i < text_.size() && (starts_number(text_[i]) || text_[i] == 'e'))) {
        return std::nullopt;
    }
    at_ = i;
    return value;
}

std::optional<double> Scanner::take_fraction() {
    const std::size_t begin = at_;
    skip_blanks();
    const auto over = take_whole();
    if (over && take('/')) {
        skip_blanks();
        const auto under = take_whole();
        if (under && *under > *over) {
            return *over / *under;
        }
    }
    at_ = begin;
    return std::nullopt;
}

const UnitDef* Scanner::take_unit() {
    skip_blanks();
    const char first = here();
    const bool may_start = is_letter(first) || first == '%' || first == '"' || first == '\'' ||
                           first == '/' || first == '1'; // "1/K"
    if (!may_start) {
        return nullptr;
    }
    for (std::size_t length = std::min(longest_unit, text_.size() - at_); length > 0; --length) {
        const std::size_t end = at_ + length;
        if (end < text_.size() && is_letter(text_[end - 1]) && is_letter(text_[end])) {
            continue; // in the middle of a word
        }
        if (const UnitDef* unit = find_unit(text_.substr(at_, length), wanted_)) {
            at_ = end;
            return unit;
        }
    }
    if (is_letter(first) && !is_times()) {
        refuse_unit();
    }
    return nullptr;
}

void Scanner::refuse_unit() const {
    std::size_t end = at_;
    while (end < text_.size() && (is_letter(text_[end]) || text_[end] == '/')) {
        ++end;
    }
    const auto length = std::min<std::size_t>(end - at_, 20);
    throw Problem{"'" + std::string(text_.substr(at_, length)) +
                  "' is not a known unit; upper and lower case count"};
}

} // namespace loopwright::units::detail
