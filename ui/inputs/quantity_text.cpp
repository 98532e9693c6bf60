#include "inputs/quantity_text.hpp"

#include "base/error.hpp"

#include <QRegularExpression>

#include <algorithm>
#include <cmath>
#include <cstdlib>

namespace loopwright::inputs {

namespace {

using units::Dimension;
using units::Unit;

QString minus_sign() {
    return QStringLiteral("\u2212");
}

/// A text that is one number, with or without a unit: no arithmetic.
bool is_single_number(const QString& text) {
    static const QRegularExpression single(
        QStringLiteral("^\\s*[-+\u2212]?[0-9.,]+([eE][-+]?[0-9]+)?\\s*[^0-9*/()+]*[0-9]*$"));
    return single.match(text).hasMatch();
}

std::optional<double> as_bare_number(const QString& text) {
    try {
        return units::parse_si(text.toStdString(), Dimension::number, {});
    } catch (const base::InputError&) {
        return std::nullopt;
    }
}

double in(const Unit& unit, double si) {
    return (si - unit.offset) / unit.factor;
}

QString plain_number(double value, int digits) {
    QString text = QString::number(value, 'g', digits);
    if (text.contains(QLatin1Char('e'))) {
        const int magnitude = value == 0.0 ? 0 : static_cast<int>(std::floor(std::log10(std::abs(value))));
        text = QString::number(value, 'f', std::clamp(digits - 1 - magnitude, 0, 12));
    }
    return text.replace(QLatin1Char('-'), minus_sign());
}

/// The unit of `choices` that gives a number from 1 up to 1000, else the nearest.
const Unit& handy_unit(double si, Dimension dimension, units::UnitSystem system) {
    const auto& all = units::units_of(dimension);
    const bool wants_imperial = system == units::UnitSystem::imperial &&
                                (dimension == Dimension::length || dimension == Dimension::temperature);
    const Unit* best = nullptr;
    double best_distance = 0;
    for (const Unit& unit : all) {
        if (is_imperial(QString::fromStdString(unit.symbol)) != wants_imperial) {
            continue;
        }
        const double magnitude = si == 0.0 ? 1.0 : std::log10(std::abs(in(unit, si)) + 1e-300);
        const double distance = magnitude < 0.0 ? 3.0 - magnitude : std::max(0.0, magnitude - 3.0);
        if (best == nullptr || distance < best_distance) {
            best = &unit;
            best_distance = distance;
        }
    }
    return best == nullptr ? all.front() : *best;
}

} // namespace

Reading read(const QString& text, const Kind& kind, const QString& unit, const std::string& where) {
    const QString trimmed = text.trimmed();
    Reading reading{0, trimmed};
    const bool has_units = kind.dimension != Dimension::number && !unit.isEmpty();
    if (has_units && as_bare_number(trimmed)) {
        reading.text = (is_single_number(trimmed) ? QStringLiteral("%1 %2") : QStringLiteral("(%1) %2"))
                           .arg(trimmed, unit);
    }
    reading.si = units::parse_si(reading.text.toStdString(), kind.dimension, where);
    if (kind.whole && reading.si != std::round(reading.si)) {
        throw base::InputError(where, trimmed.toStdString(), "a whole number");
    }
    return reading;
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

QString default_text(double si, const Kind& kind, units::UnitSystem system) {
    if (kind.dimension == Dimension::number) {
        return plain_number(si, 10);
    }
    const Unit& unit = handy_unit(si, kind.dimension, system);
    for (int digits = 2; digits < 10; ++digits) {
        const double rounded = QString::number(in(unit, si), 'g', digits).toDouble();
        if (std::abs(rounded * unit.factor + unit.offset - si) <= 1e-9 * std::abs(si)) {
            return in_unit(si, unit, digits);
        }
    }
    return in_unit(si, unit, 10);
}

QString equivalent(const QString& text, double si, const Kind& kind, units::UnitSystem system) {
    const bool single = is_single_number(text);
    if (kind.dimension == Dimension::number) {
        return single ? QString() : QStringLiteral("= %1").arg(plain_number(si, 4));
    }
    const auto typed = unit_in(text, kind.dimension);
    const bool has_systems = kind.dimension == Dimension::length || kind.dimension == Dimension::temperature;
    const bool other_system = has_systems && (!typed || is_imperial(QString::fromStdString(typed->symbol)) !=
                                                            (system == units::UnitSystem::imperial));
    if (single && !other_system) {
        return {};
    }
    const Unit& unit = other_system || !typed ? handy_unit(si, kind.dimension, system) : *typed;
    return QStringLiteral("= %1").arg(in_unit(si, unit, 4));
}

QString stepped(const QString& text, double si, const Kind& kind, int steps) {
    if (kind.whole) {
        return plain_number(si + steps, 10);
    }
    const auto typed = unit_in(text, kind.dimension);
    const Unit& fallback = kind.dimension == Dimension::number
                               ? Unit{}
                               : handy_unit(si, kind.dimension, units::UnitSystem::metric);
    const Unit unit = typed ? *typed : fallback;
    double value = in(unit, si);
    for (int left = std::abs(steps); left > 0; --left) {
        double decade = value == 0.0 ? 1.0 : std::floor(std::log10(std::abs(value)) + 1e-9);
        const bool downward_from_power = steps < 0 && std::abs(value - std::pow(10.0, decade)) < 1e-9 * value;
        if (downward_from_power) {
            decade -= 1.0; // 1.0 m goes down to 0.99 m, not to 0.9 m
        }
        const double step = std::pow(10.0, decade - 1.0);
        value = (std::round(value / step) + (steps > 0 ? 1.0 : -1.0)) * step;
    }
    QString result = in_unit(value * unit.factor + unit.offset, unit, 6);
    if (text.contains(QLatin1Char(',')) && !text.contains(QLatin1Char('.'))) {
        result.replace(QLatin1Char('.'), QLatin1Char(','));
    }
    return result;
}

} // namespace loopwright::inputs
