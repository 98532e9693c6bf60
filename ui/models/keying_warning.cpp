#include "models/keying_warning.hpp"

#include "models/keying_words.hpp"
#include "models/quantity_words.hpp"
#include "units/text.hpp"

#include <QCoreApplication>

namespace loopwright::models {

namespace {

struct KeyingText {
    Q_DECLARE_TR_FUNCTIONS(Warnings)
};

QStringList names(const std::vector<std::string>& words) {
    QStringList all;
    for (const std::string& word : words) {
        all << QString::fromStdString(word);
    }
    return all;
}

QString distance_advice() {
    return KeyingText::tr(
               "Horizontal, from the loop's vertical axis, for people standing; the unfavourable end "
               "of what was computed, rounded up.") +
           QLatin1Char(' ') + not_covered() + QLatin1Char(' ') +
           KeyingText::tr("The exposure rules where you are come first.");
}

} // namespace

VoltageWarning standing_warning(const survey::VoltageStanding& standing) {
    if (!standing.nearest) {
        return voltage_warning(nullptr);
    }
    const survey::CarriedVoltage& at = *standing.nearest;
    VoltageFigures figures;
    figures.peak = at.peak;
    figures.band = QString::fromStdString(at.where);
    figures.power = at.power;
    figures.model = at.model;
    if (at.usable) {
        figures.held_against =
            KeyingText::tr("usable %1").arg(QString::fromStdString(units::shown(*at.usable)));
    }
    figures.over = at.over();
    figures.unrated_member = at.unrated_members;
    if (standing.any_rating) {
        figures.unrated = names(standing.unrated);
    }
    figures.unknown = names(standing.unknown);
    if (standing.highest->where != at.where) {
        figures.highest = KeyingText::tr("%1 peak on %2")
                              .arg(QString::fromStdString(units::shown(standing.highest->peak)),
                                   QString::fromStdString(standing.highest->where));
    }
    return voltage_warning(&figures);
}

DistanceWarning no_distance() {
    return {
        false, false, KeyingText::tr("Distance: not established, treat the loop as hazardous"),
        KeyingText::tr("Keep everybody well away while transmitting, and follow the exposure rules where you "
                       "are.")};
}

DistanceWarning keying_distance(const survey::Keying& keying, units::UnitSystem system) {
    const survey::LargestDistance largest = survey::largest_distance(keying);
    DistanceWarning warning = no_distance();
    if (largest.distance == nullptr) {
        return warning;
    }
    const QString what = KeyingText::tr("%1 on %2, %3")
                             .arg(distance_up(largest.distance->range.high, system), band_name(*largest.band),
                                  limit_words(*largest.distance));
    if (!largest.complete) {
        warning.text = KeyingText::tr("Distance: not established on every band, treat the loop as hazardous "
                                      "(elsewhere %1)")
                           .arg(what);
        return warning;
    }
    warning.established = true;
    const auto& people = keying.request.design.site.people_distance;
    warning.exceeded = people && largest.distance->range.high > people->value;
    warning.text = warning.exceeded
                       ? KeyingText::tr("People too near, do not key: keep %1 (entered: %2)")
                             .arg(what, short_text(people->value.value(), units::Dimension::length, system))
                       : KeyingText::tr("People keep away %1").arg(what);
    warning.detail = distance_advice();
    return warning;
}

} // namespace loopwright::models
