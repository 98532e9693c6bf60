#include "inputs/quantity_text.hpp"

#include "base/error.hpp"

#include <QRegularExpression>

#include <algorithm>
#include <cmath>
#include <cstdlib>

namespace loopwright::inputs {

namespace {

using models::handy_unit;
using models::in_unit;
using models::is_imperial;
using models::plain_number;
using models::unit_in;
using units::Dimension;
using units::Unit;

/// A text that is one number, with or without a unit: no arithmetic. The slash of a unit is none.
bool is_single_number(const QString& whole, Dimension dimension) {
    const auto unit = unit_in(whole, dimension);
    const QString text = unit ? whole.trimmed().chopped(QString::fromStdString(unit->symbol).size()) : whole;
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

} // namespace

Reading read(const QString& text, const Kind& kind, const QString& unit, const std::string& where) {
    const QString trimmed = text.trimmed();
    Reading reading{0, trimmed};
    const bool has_units = kind.dimension != Dimension::number && !unit.isEmpty();
    if (has_units && as_bare_number(trimmed)) {
        reading.text = (is_single_number(trimmed, Dimension::number) ? QStringLiteral("%1 %2")
                                                                     : QStringLiteral("(%1) %2"))
                           .arg(trimmed, unit);
    }
    reading.si = units::parse_si(reading.text.toStdString(), kind.dimension, where);
    if (kind.whole && reading.si != std::round(reading.si)) {
        throw base::InputError(where, trimmed.toStdString(), "a whole number");
    }
    return reading;
}

QString equivalent(const QString& text, double si, const Kind& kind, units::UnitSystem system) {
    const bool single = is_single_number(text, kind.dimension);
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
    const Unit unit = other_system || !typed ? handy_unit(si, kind.dimension, system) : *typed;
    return QStringLiteral("= %1").arg(in_unit(si, unit, 4));
}

QString stepped(const QString& text, double si, const Kind& kind, int steps) {
    if (kind.whole) {
        return plain_number(si + steps, 10);
    }
    const auto typed = unit_in(text, kind.dimension);
    const Unit fallback = kind.dimension == Dimension::number
                              ? Unit{}
                              : handy_unit(si, kind.dimension, units::UnitSystem::metric);
    const Unit unit = typed ? *typed : fallback;
    double value = (si - unit.offset) / unit.factor;
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
