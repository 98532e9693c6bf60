#pragma once
// The words of an expression: numbers, fractions, units, signs. Knows no arithmetic.
#include "units/detail/unit_table.hpp"

#include <cstddef>
#include <optional>
#include <string>
#include <string_view>

namespace loopwright::units::detail {

/// Why a text is not understood; becomes a base::InputError where field and text are known.
struct Problem {
    std::string reason;
};

[[nodiscard]] bool starts_number(char c);

/// "-1.5e3" with a further power of ten, rounded once. Throws Problem for what no double can hold.
[[nodiscard]] double decimal(const std::string& literal, int power10);

class Scanner {
public:
    /// The text must outlive the scanner. Units of the wanted dimension go before others of the same
    /// spelling.
    Scanner(std::string_view text, Dimension wanted) : text_(text), wanted_(wanted) {}

    [[nodiscard]] bool at_begin() const { return at_ == 0; }
    [[nodiscard]] bool at_end() const { return at_ >= text_.size(); }
    /// The character that stands here; '\0' at the end.
    [[nodiscard]] char here() const { return at_end() ? '\0' : text_[at_]; }
    /// Up to 20 characters from here on, for messages.
    [[nodiscard]] std::string rest() const { return std::string(text_.substr(at_, 20)); }
    /// The letters from here on, in lower case; does not move.
    [[nodiscard]] std::string word() const;

    void skip_blanks();
    /// Skips blanks and the character, if it stands here.
    bool take(char c);
    /// The letter x as a sign of multiplication: "2 x 0.45 m".
    bool take_times();
    /// Digits with at most one decimal sign and an exponent, with a point: "7.074e6".
    std::string take_literal();
    /// "5/8" of whole numbers, less than 1.
    std::optional<double> take_fraction();
    /// The longest unit that stands here; nullptr where none does. Throws Problem for an unknown word.
    const UnitDef* take_unit();

private:
    std::optional<double> take_whole();
    void take_exponent(std::string& literal);
    [[nodiscard]] bool is_times() const;
    [[noreturn]] void refuse_unit() const;

    std::string_view text_;
    std::size_t at_ = 0;
    Dimension wanted_;
};

} // namespace loopwright::units::detail
