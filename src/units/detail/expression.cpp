#include "units/detail/expression.hpp"

#include <algorithm>
#include <cmath>

namespace loopwright::units::detail {
namespace {

Value finite(Value value) {
    if (!std::isfinite(value.number)) {
        throw Problem{"the result is too large"};
    }
    return value;
}

void require_arithmetic(const Value& value) {
    if (value.fixed) {
        throw Problem{"no arithmetic with a temperature scale or a level in dBm; put the arithmetic in "
                      "brackets before the unit"};
    }
}

Value sum_of(const Value& a, const Value& b, double sign) {
    require_arithmetic(a);
    require_arithmetic(b);
    if (a.dimension.has_value() != b.dimension.has_value()) {
        throw Problem{"a plain number cannot be added to a quantity; give each part a unit, or put brackets "
                      "before the unit: (0.4+0.5) m"};
    }
    if (a.dimension != b.dimension) {
        throw Problem{with_article(*a.dimension) + " and " + with_article(*b.dimension) + " cannot be added"};
    }
    return finite({a.number + sign * b.number, a.dimension, false, {}});
}

Value product_of(const Value& a, const Value& b) {
    require_arithmetic(a);
    require_arithmetic(b);
    if (a.dimension && b.dimension) {
        throw Problem{with_article(*a.dimension) + " times " + with_article(*b.dimension) +
                      " is neither of the two"};
    }
    return finite({a.number * b.number, a.dimension ? a.dimension : b.dimension, false, {}});
}

Value quotient_of(const Value& a, const Value& b) {
    require_arithmetic(a);
    require_arithmetic(b);
    if (b.dimension && a.dimension != b.dimension) {
        throw Problem{"only like quantities can be divided by each other"};
    }
    if (b.number == 0) {
        throw Problem{"division by zero"};
    }
    return finite({a.number / b.number, b.dimension ? std::nullopt : a.dimension, false, {}});
}

Value negated(Value value) {
    require_arithmetic(value);
    value.number = -value.number;
    if (!value.literal.empty()) {
        value.literal.insert(0, "-");
    }
    return value;
}

class Parser {
public:
    Parser(std::string_view text, Dimension wanted) : scan_(text, wanted) {}

    Value whole() {
        Value value = sum();
        if (!scan_.at_end()) {
            throw Problem{scan_.here() == ')' ? "a bracket is closed that was not opened"
                                              : "'" + scan_.rest() + "' at the end is not understood"};
        }
        return value;
    }

private:
    Value sum() {
        Value value = term();
        for (;;) {
            if (scan_.take('+')) {
                value = sum_of(value, term(), 1);
            } else if (scan_.take('-')) {
                value = sum_of(value, term(), -1);
            } else {
                return value;
            }
        }
    }

    Value term() {
        Value value = factor();
        for (;;) {
            if (const UnitDef* unit = scan_.take_unit()) {
                value = in_unit(value, *unit);
            } else if (scan_.take('*') || scan_.take_times()) {
                value = product_of(value, operand(value));
            } else if (scan_.take('/')) {
                value = quotient_of(value, operand(value));
            } else if (starts_number(scan_.here()) || scan_.here() == '(') {
                throw Problem{"an operator is missing before '" + scan_.rest() + "'"};
            } else {
                return value;
            }
        }
    }

    // Right side of * or /. Its unit is its own where the left side has one; otherwise that of the whole.
    Value operand(const Value& left) {
        Value value = factor();
        if (left.dimension) {
            if (const UnitDef* unit = scan_.take_unit()) {
                value = in_unit(value, *unit);
            }
        }
        return value;
    }

    Value factor() {
        const bool minus = scan_.take('-');
        if (minus || scan_.take('+')) {
            scan_.skip_blanks();
            if (scan_.here() == '+' || scan_.here() == '-') {
                throw Problem{"two signs in a row"};
            }
            return minus ? negated(factor()) : factor();
        }
        if (scan_.take('(')) {
            Value value = sum();
            if (!scan_.take(')')) {
                throw Problem{"a bracket is not closed"};
            }
            value.literal.clear();
            return value;
        }
        if (starts_number(scan_.here())) {
            return number();
        }
        refuse_factor();
    }

    [[noreturn]] void refuse_factor() {
        if (scan_.at_end()) {
            throw Problem{scan_.at_begin() ? "nothing is given" : "the end is missing"};
        }
        const std::string word = scan_.word();
        if (word.rfind("nan", 0) == 0 || word == "inf" || word == "infinity") {
            throw Problem{"a finite number is needed"};
        }
        if (const UnitDef* unit = scan_.take_unit()) {
            throw Problem{"a number is missing before '" + unit->spelling + "'"};
        }
        throw Problem{"'" + scan_.rest() + "' is not understood"};
    }

    // "0.9", "1 5/8"
    Value number() {
        const std::string literal = scan_.take_literal();
        const double value = decimal(literal, 0);
        const bool whole = literal.find_first_not_of("0123456789") == std::string::npos;
        if (whole && scan_.here() == ' ') {
            if (const auto fraction = scan_.take_fraction()) {
                return {value + *fraction, std::nullopt, false, {}};
            }
        }
        return {value, std::nullopt, false, literal};
    }

    Value in_unit(const Value& value, const UnitDef& unit) {
        if (value.dimension) {
            throw Problem{"two units in a row"};
        }
        if (unit.dimension == Dimension::number) { // per cent
            return {scaled(value.number, unit.power10), std::nullopt, false, {}};
        }
        const bool exact = !value.literal.empty() && unit.law == Law::linear && unit.multiplier == 1;
        const double si = exact ? decimal(value.literal, unit.power10) : to_si(unit, value.number);
        Value quantity = finite({si, unit.dimension, unit.law != Law::linear, {}});
        scan_.skip_blanks();
        if (starts_number(scan_.here()) && !value.literal.empty() && !quantity.fixed) {
            quantity.number += smaller_units(unit) * (std::signbit(quantity.number) ? -1 : 1);
        }
        return finite(quantity);
    }

    // The rest of "3 ft 2 in" or "1 m 20 cm": each further part in a smaller unit.
    double smaller_units(const UnitDef& first) {
        const UnitDef* last = &first;
        double sum = 0;
        while (scan_.skip_blanks(), starts_number(scan_.here())) {
            const auto fraction = scan_.take_fraction();
            const double part = fraction ? *fraction : number().number;
            const UnitDef* unit = scan_.take_unit();
            if (unit == nullptr) {
                throw Problem{"the last number has no unit"};
            }
            if (unit->dimension != first.dimension || unit->law != Law::linear ||
                to_si(*unit, 1) >= to_si(*last, 1)) {
                throw Problem{"an operator is missing between two quantities"};
            }
            sum += to_si(*unit, part);
            last = unit;
        }
        return sum;
    }

    Scanner scan_;
};

} // namespace

Value evaluate(std::string_view ascii, Dimension wanted) {
    return Parser(ascii, wanted).whole();
}

} // namespace loopwright::units::detail
