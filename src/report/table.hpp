#pragma once
// A table as data: the window shows it, the command line prints it, a file keeps it.
#include <string>
#include <string_view>
#include <variant>
#include <vector>

namespace loopwright::report {

/// Nothing (not applicable or not established), yes or no, a number in SI units (or dimensionless), a text.
using Cell = std::variant<std::monostate, bool, double, std::string>;

struct Column {
    std::string key;   ///< for programs: snake_case, SI unit at the end ("tuning_capacitance_F")
    std::string title; ///< for people; says peak or rms, loaded or unloaded
    std::string unit;  ///< for people ("pF"); empty: none
    double scale = 1;  ///< shown number = SI value x scale
    int digits = 3;    ///< significant digits shown
    int decimals = -1; ///< from 0: so many digits after the decimal sign instead (frequencies)
    std::string (*print)(double value) = nullptr; ///< the shown number by a rule of its own, of the SI value
};

struct Table {
    std::vector<Column> columns;
    std::vector<std::vector<Cell>> rows; ///< each as long as columns
};

/// RFC 4180: first line the keys, numbers in SI with the shortest exact digits, lines end in CR LF, fields
/// with comma, quote or line break are quoted; nothing is an empty field.
[[nodiscard]] std::string to_csv(const Table& table);

/// Plain text, UTF-8: titles, units, then rows; numbers aligned at the decimal sign, texts to the left, two
/// blanks between columns. Long titles break over several lines at blanks. Every line ends in a line feed.
[[nodiscard]] std::string to_text(const Table& table);

/// The number or word of one cell as to_text shows it, without its unit.
[[nodiscard]] std::string cell_text(const Cell& cell, const Column& column);

/// Characters (code points) of a UTF-8 text, which is what it takes in a terminal here.
[[nodiscard]] std::size_t characters(std::string_view text);

/// Breaks at blanks so that no line but one with a longer word exceeds `width` characters.
[[nodiscard]] std::vector<std::string> wrapped(std::string_view text, std::size_t width);

} // namespace loopwright::report
