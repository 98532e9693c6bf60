#include "models/keying_warning.hpp"

#include "models/keying_words.hpp"
#include "models/model_words.hpp"
#include "models/quantity_words.hpp"
#include "units/text.hpp"

#include <QCoreApplication>

namespace loopwright::models {

namespace {

struct Warnings {
    Q_DECLARE_TR_FUNCTIONS(Warnings)
};
using survey::KeyingBand;
using survey::KeyingVerdict;

template <class Quantity>
QString shown(Quantity quantity) {
    return QString::fromStdString(units::shown(quantity));
}

bool reached(const KeyingBand& band) {
    return band.point.resonance && band.verdict != KeyingVerdict::out_of_reach;
}

QString advice() {
    return Warnings::tr(
        "Kilovolts stand across the capacitor and on the loop near it at a few watts. Touching it while "
        "transmitting burns. Switch the transmitter off before going near.");
}

/// The band where volts come nearest to what the capacitor stands, or are most where nothing is rated.
const KeyingBand* worst_volts(const survey::Keying& keying) {
    const KeyingBand* worst = nullptr;
    const auto weight = [](const KeyingBand& band) {
        return band.usable_voltage ? band.voltage_peak.high.value() / band.usable_voltage->value() : 0.0;
    };
    for (const KeyingBand& band : keying.bands) {
        if (!reached(band)) {
            continue;
        }
        if (worst == nullptr || weight(band) > weight(*worst) ||
            (weight(band) == weight(*worst) && band.voltage_peak.high > worst->voltage_peak.high)) {
            worst = &band;
        }
    }
    return worst;
}

QString left_out(const survey::Keying& keying) {
    QStringList names;
    for (const KeyingBand& band : keying.bands) {
        if (!band.point.resonance) {
            names << band_name(band);
        }
    }
    return names.isEmpty() ? QString()
                           : QStringLiteral("; ") +
                                 Warnings::tr("not established: %1").arg(names.join(QStringLiteral(", ")));
}

QString distance_advice() {
    return Warnings::tr(
               "Horizontal, from the loop's vertical axis, for people standing; the unfavourable end "
               "of what was computed, rounded up.") +
           QLatin1Char(' ') + not_covered() + QLatin1Char(' ') +
           Warnings::tr("The exposure rules where you are come first.");
}

} // namespace

VoltageWarning keying_voltage(const survey::Keying& keying) {
    const KeyingBand* worst = worst_volts(keying);
    if (worst == nullptr) {
        return {VoltageState::unknown,
                Warnings::tr(
                    "Capacitor voltage: not established on any planned band, treat the loop as hazardous"),
                Warnings::tr(
                    "The capacitor reaches none of the planned bands, or the model does not stand behind a "
                    "number there.") +
                    QLatin1Char(' ') + advice()};
    }
    const QString where = Warnings::tr("%1 peak on %2 at %3 (%4)")
                              .arg(shown(worst->voltage_peak.high), band_name(*worst),
                                   short_text(worst->point.power.value(), units::Dimension::power),
                                   model_name(worst->point.model));
    const QString rest = left_out(keying);
    if (!worst->usable_voltage) {
        return {VoltageState::no_rating,
                Warnings::tr("Capacitor voltage up to %1, no rating given").arg(where) + rest, advice()};
    }
    const QString usable = shown(*worst->usable_voltage);
    if (worst->voltage_peak.high > *worst->usable_voltage) {
        return {
            VoltageState::exceeded,
            Warnings::tr("Capacitor over its rating, do not key: up to %1, usable %2").arg(where, usable) +
                rest,
            Warnings::tr("The capacitor may arc over. Less power, a wider gap or another capacitor.") +
                QLatin1Char(' ') + advice()};
    }
    if (worst->load && worst->load->unrated_members) {
        return {
            VoltageState::no_rating,
            Warnings::tr("Capacitor voltage up to %1, a member of the capacitor has no rating").arg(where) +
                rest,
            advice()};
    }
    return {VoltageState::within,
            Warnings::tr("Capacitor within its rating: up to %1, usable %2").arg(where, usable) + rest,
            advice()};
}

DistanceWarning no_distance() {
    return {
        false, false, Warnings::tr("Distance: not established, treat the loop as hazardous"),
        Warnings::tr("Keep everybody well away while transmitting, and follow the exposure rules where you "
                     "are.")};
}

DistanceWarning keying_distance(const survey::Keying& keying, units::UnitSystem system) {
    const survey::LargestDistance largest = survey::largest_distance(keying);
    DistanceWarning warning = no_distance();
    if (largest.distance == nullptr) {
        return warning;
    }
    const QString what = Warnings::tr("%1 on %2, %3")
                             .arg(distance_up(largest.distance->range.high, system), band_name(*largest.band),
                                  limit_words(*largest.distance));
    if (!largest.complete) {
        warning.text = Warnings::tr("Distance: not established on every band, treat the loop as hazardous "
                                    "(elsewhere %1)")
                           .arg(what);
        return warning;
    }
    warning.established = true;
    const auto& people = keying.request.design.site.people_distance;
    warning.exceeded = people && largest.distance->range.high > people->value;
    warning.text = warning.exceeded
                       ? Warnings::tr("People too near, do not key: keep %1 (entered: %2)")
                             .arg(what, short_text(people->value.value(), units::Dimension::length, system))
                       : Warnings::tr("People keep away %1").arg(what);
    warning.detail = distance_advice();
    return warning;
}

} // namespace loopwright::models
