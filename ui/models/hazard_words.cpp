#include "models/hazard_words.hpp"

#include "models/model_words.hpp"
#include "models/quantity_words.hpp"
#include "units/text.hpp"

#include <QCoreApplication>

namespace loopwright::models {

namespace {

struct HazardText {
    Q_DECLARE_TR_FUNCTIONS(Warnings)
};

QString advice() {
    return HazardText::tr(
        "Kilovolts stand across the capacitor and on the loop near it at a few watts. Touching it while "
        "transmitting burns. Switch the transmitter off before going near.");
}

QString left_out(const VoltageFigures& figures) {
    const QString semicolon = QStringLiteral("; ");
    QString rest;
    if (!figures.highest.isEmpty()) {
        rest += semicolon + HazardText::tr("highest: %1").arg(figures.highest);
    }
    if (!figures.unknown.isEmpty()) {
        rest +=
            semicolon + HazardText::tr("not established: %1").arg(figures.unknown.join(QStringLiteral(", ")));
    }
    return rest;
}

VoltageWarning without_rating(const VoltageFigures& figures, const QString& where, const QString& rest) {
    const QString bands = figures.unrated.join(QStringLiteral(", "));
    const QString detail =
        HazardText::tr("Enter the rating of every capacitor.") + QLatin1Char(' ') + advice();
    if (figures.held_against.isEmpty()) {
        return {VoltageState::no_rating,
                HazardText::tr("Capacitor voltage up to %1, no rating given").arg(where) + rest, detail};
    }
    if (figures.unrated_member) {
        return {
            VoltageState::no_rating,
            HazardText::tr("Capacitor voltage up to %1, a member of the capacitor has no rating").arg(where) +
                rest,
            detail};
    }
    return {
        VoltageState::no_rating,
        HazardText::tr("Capacitor not established on %1: a member there has no rating; elsewhere nearest to "
                       "its rating: %2, %3")
                .arg(bands, where, figures.held_against) +
            rest,
        detail};
}

} // namespace

VoltageWarning voltage_warning(const VoltageFigures* figures) {
    if (figures == nullptr) {
        return {VoltageState::unknown,
                HazardText::tr(
                    "Capacitor voltage: not established on any planned band, treat the loop as hazardous"),
                HazardText::tr(
                    "The capacitor reaches none of the planned bands, or the model does not stand behind a "
                    "number there.") +
                    QLatin1Char(' ') + advice()};
    }
    const QString where =
        HazardText::tr("%1 peak on %2 at %3 (%4)")
            .arg(QString::fromStdString(units::shown(figures->peak)), figures->band,
                 short_text(figures->power.value(), units::Dimension::power), model_name(figures->model));
    const QString rest = left_out(*figures);
    if (figures->over) {
        return {VoltageState::exceeded,
                HazardText::tr("Capacitor over its rating, do not key: %1, %2")
                        .arg(where, figures->held_against) +
                    rest,
                HazardText::tr("The capacitor may arc over. Less power, a wider gap or another capacitor.") +
                    QLatin1Char(' ') + advice()};
    }
    if (figures->held_against.isEmpty() || figures->unrated_member || !figures->unrated.isEmpty()) {
        return without_rating(*figures, where, rest);
    }
    if (!figures->unknown.isEmpty()) {
        return {VoltageState::unknown,
                HazardText::tr("Capacitor voltage not established on every band; elsewhere nearest to its "
                               "rating: %1, %2")
                        .arg(where, figures->held_against) +
                    rest,
                advice()};
    }
    return {VoltageState::within,
            HazardText::tr("Capacitor within its rating, nearest to it: %1, %2")
                    .arg(where, figures->held_against) +
                rest,
            advice()};
}

} // namespace loopwright::models
