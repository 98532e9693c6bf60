#include "models/quantity_words.hpp"

#include <QStringList>

#include <algorithm>
#include <cmath>

namespace loopwright::models {

namespace {

using units::Dimension;
using units::Unit;

QString minus_sign() {
    return QStringLiteral("\u2212");
}

double in(const Unit& unit, double si) {
    return (si - unit.offset) / unit.factor;
}

/// The inch from 0.05 up, the foot from six feet up, the mil below: as units::shown does.
QString imperial_length_unit(double metres) {
    constexpr double inch_m = 0.0254, six_feet_m = 1.8288;
    const double size = std::abs(metres);
    return size >= six_feet_m                 ? QStringLiteral("ft")
           : size < 0.05 * inch_m && size > 0 ? QStringLiteral("mil")
                                              : QStringLiteral("in");
}

} // namespace

QString plain_number(double value, int digits) {
    QString text = QString::number(value, 'g', digits);
    if (text.contains(QLatin1Char('e'))) {
        const int magnitude = value == 0.0 ? 0 : static_cast<int>(std::floor(std::log10(std::abs(value))));
        text = QString::number(value, 'f', std::clamp(digits - 1 - magnitude, 0, 12));
    }
    return text.replace(QLatin1Char('-'), minus_sign());
}

std::optional<Unit> unit_in(const QString& text, Dimension dimension) {
    const Unit* longest = nullptr;
    const QString trimmed = text.trimmed();
    for (const Unit& unit : units::units_of(dimension)) {
        const QString symbol = QString::fromStdString(unit.symbol);
        if (symbol.isEmpty() || !trimmed.endsWith(symbol)) {
            continue;
        }
        const auto before = trimmed.size() - symbol.size();
        if (before > 0 && trimmed.at(before - 1).isLetter()) {
            continue; // "mm" does not end in the unit "m"
        }
        if (longest == nullptr || unit.symbol.size() > longest->symbol.size()) {
            longest = &unit;
        }
    }
    return longest == nullptr ? std::nullopt : std::optional<Unit>(*longest);
}

bool is_imperial(const QString& unit_symbol) {
    static const QStringList imperial = {
        QStringLiteral("in"), QStringLiteral("ft"), QStringLiteral("mil"),     QStringLiteral("yd"),
        QStringLiteral("\""), QStringLiteral("'"),  QStringLiteral("\u00b0F"), QStringLiteral("degF")};
    return imperial.contains(unit_symbol);
}

QString in_unit(double si, const Unit& unit, int digits) {
    const QString number = plain_number(in(unit, si), digits);
    const QString symbol = QString::fromStdString(unit.symbol);
    if (symbol.isEmpty() || symbol == QLatin1String("%")) {
        return number + symbol;
    }
    return symbol == QStringLiteral("\u00b0") ? number + symbol : number + QLatin1Char(' ') + symbol;
}

/// The unit that a value of its own accord is printed with.
Unit handy_unit(double si, units::Dimension dimension, units::UnitSystem system) {
    const auto& all = units::units_of(dimension);
    if (system == units::UnitSystem::imperial) {
        const QString wanted = dimension == Dimension::length        ? imperial_length_unit(si)
                               : dimension == Dimension::temperature ? QStringLiteral("\u00b0F")
                                                                     : QString();
        for (const Unit& unit : all) {
            if (QString::fromStdString(unit.symbol) == wanted) {
                return unit;
            }
        }
    }
    return unit_in(QString::fromStdString(units::canonical(si, dimension)), dimension).value_or(all.front());
}

QString given_text(double si, units::Dimension dimension, units::UnitSystem system) {
    if (dimension == Dimension::number) {
        return plain_number(si, 10);
    }
    const Unit unit = handy_unit(si, dimension, system);
    // What was not typed in inches never comes out even in them: five digits are enough to look at.
    const int most = is_imperial(QString::fromStdString(unit.symbol)) ? 5 : 10;
    for (int digits = 2; digits < most; ++digits) {
        const double rounded = QString::number(in(unit, si), 'g', digits).toDouble();
        if (std::abs(rounded * unit.factor + unit.offset - si) <= 1e-9 * std::abs(si)) {
            return in_unit(si, unit, digits);
        }
    }
    return in_unit(si, unit, most);
}

QString short_text(double si, units::Dimension dimension, units::UnitSystem system) {
    if (dimension == Dimension::number) {
        return plain_number(si, 4);
    }
    return in_unit(si, handy_unit(si, dimension, system), 4)
        .replace(QLatin1Char(' '), QStringLiteral("\u2009"));
}

} // namespace loopwright::models
