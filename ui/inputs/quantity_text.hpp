#pragma once
// What a field makes of a text: the value, and the text as the design keeps it. No widget here.
#include "models/quantity_words.hpp"
#include "units/text.hpp"

#include <QString>

#include <optional>

namespace loopwright::inputs {

/// What a field stands for.
struct Kind {
    units::Dimension dimension = units::Dimension::number;
    bool whole = false; ///< a whole number
};

struct Reading {
    double si = 0;
    QString text; ///< trimmed; a bare number has got the unit of the field: "0.9" -> "0.9 m"
};

/// Reads a text. `unit` is what a bare number is taken in. Throws base::InputError with `where`.
[[nodiscard]] Reading read(const QString& text, const Kind& kind, const QString& unit,
                           const std::string& where);

/// What the typed text comes to, in words for beside the field ("= 35.4 in"): where it holds arithmetic, or a
/// unit of the other system. Empty where the text says it already.
[[nodiscard]] QString equivalent(const QString& text, double si, const Kind& kind, units::UnitSystem system);

/// One step of the Up or Down key: the second significant digit of the value in the unit it was typed in, so
/// that 0.90 m becomes 0.91 m, 22 mm 23 mm and 150 pF 160 pF; steps > 0 up. Whole numbers: by one.
[[nodiscard]] QString stepped(const QString& text, double si, const Kind& kind, int steps);

} // namespace loopwright::inputs
