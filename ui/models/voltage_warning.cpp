#include "models/voltage_warning.hpp"

#include "models/model_words.hpp"
#include "models/quantity_words.hpp"
#include "survey/verdict.hpp"
#include "units/text.hpp"

#include <QCoreApplication>

#include <algorithm>

namespace loopwright::models {

namespace {

struct Warnings {
    Q_DECLARE_TR_FUNCTIONS(Warnings)
};

template <class Quantity>
QString shown(Quantity quantity, int digits = 3) {
    return QString::fromStdString(units::shown(quantity, digits));
}

/// The planned bands that the sentence cannot speak for.
QString left_out(const survey::Survey& survey) {
    QStringList names;
    for (const survey::BandRow& row : survey.bands) {
        if (!row.point.resonance) {
            names << QString::fromStdString(row.band.name);
        }
    }
    return names.isEmpty() ? QString()
                           : QStringLiteral("; ") +
                                 Warnings::tr("not established: %1").arg(names.join(QStringLiteral(", ")));
}

QString advice() {
    return Warnings::tr(
        "Kilovolts stand across the capacitor and on the loop near it at a few watts. Touching it while "
        "transmitting burns. Switch the transmitter off before going near.");
}

} // namespace

VoltageWarning voltage_warning(const survey::Survey& survey) {
    const survey::BandRow* worst = survey::highest_voltage(survey);
    if (worst == nullptr || !worst->point.resonance) {
        return {VoltageState::unknown,
                Warnings::tr(
                    "Capacitor voltage: not established on any planned band, treat the loop as hazardous"),
                Warnings::tr(
                    "The capacitor reaches none of the planned bands, or the model does not stand behind a "
                    "number there.") +
                    QLatin1Char(' ') + advice()};
    }
    const loop::Resonance& r = *worst->point.resonance;
    const units::Voltage high = std::max(r.capacitor_voltage_peak, r.capacitor_voltage_peak_range.high);
    const QString where = Warnings::tr("%1 peak on %2 at %3 (%4)")
                              .arg(shown(high), QString::fromStdString(worst->band.name),
                                   short_text(worst->point.power.value(), units::Dimension::power),
                                   model_name(worst->point.model));
    const auto held = survey::voltage_limit(worst->point, survey.request.design);
    if (!held) {
        return {VoltageState::no_rating,
                Warnings::tr("Capacitor voltage up to %1, no rating given").arg(where) + left_out(survey),
                advice()};
    }
    const QString rated = held->as_rated ? short_text(*survey.request.design.capacitor.rating.peak_voltage)
                                         : shown(held->limit);
    if (high > held->limit) {
        return {VoltageState::exceeded,
                Warnings::tr("Capacitor over its rating, do not key: up to %1, rated %2").arg(where, rated) +
                    left_out(survey),
                Warnings::tr("The capacitor may arc over. Less power, a wider gap or another capacitor.") +
                    QLatin1Char(' ') + advice()};
    }
    return {VoltageState::within,
            Warnings::tr("Capacitor within its rating: up to %1, rated %2").arg(where, rated) +
                left_out(survey),
            advice()};
}

} // namespace loopwright::models
