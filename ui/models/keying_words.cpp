#include "models/keying_words.hpp"

#include "band/emission.hpp"
#include "design/limit_ids.hpp"
#include "exposure/station.hpp"
#include "models/chart_content.hpp"
#include "models/model_words.hpp"

#include <QCoreApplication>

#include <algorithm>
#include <cmath>
#include <numbers>

namespace loopwright::models {

namespace {

struct KeyingWords {
    Q_DECLARE_TR_FUNCTIONS(KeyingWords)
};
using survey::KeyingBand;
using survey::KeyingDistance;
using survey::KeyingVerdict;

constexpr double metres_per_foot = 0.3048, degrees = 180.0 / std::numbers::pi, nearly = 1e-6;

QString habit_words(const exposure::Use& use) {
    switch (use.habit) {
    case exposure::Habit::alternate_slots:
        return KeyingWords::tr("every second slot");
    case exposure::Habit::every_slot:
        return KeyingWords::tr("every slot");
    case exposure::Habit::share_of_slots:
        return KeyingWords::tr("%1 % of the slots")
            .arg(label_text(100.0 * use.share, units::Dimension::number));
    case exposure::Habit::continuous:
        return KeyingWords::tr("key down without a pause");
    case exposure::Habit::listening_turns:
        return KeyingWords::tr("in turns of %1").arg(label_text(use.over.value(), units::Dimension::time));
    }
    return {};
}

/// An open triangle: to be heeded, decides nothing.
QString caution_mark() {
    return QStringLiteral("\u25B3 ");
}

} // namespace

QString keying_word(KeyingVerdict verdict, bool settled) {
    switch (verdict) {
    case KeyingVerdict::within:
        return settled ? KeyingWords::tr("within, as computed") : KeyingWords::tr("worst case computing");
    case KeyingVerdict::out_of_reach:
        return KeyingWords::tr("out of reach");
    case KeyingVerdict::not_established:
        return KeyingWords::tr("not established");
    case KeyingVerdict::exceeded:
        return KeyingWords::tr("exceeded, do not key");
    }
    return {};
}

QString keying_symbol(KeyingVerdict verdict, bool settled) {
    switch (verdict) {
    case KeyingVerdict::within:
        return settled ? QStringLiteral("\u2713") : QStringLiteral("\u2026");
    case KeyingVerdict::out_of_reach:
        return QStringLiteral("\u2715");
    case KeyingVerdict::not_established:
        return QStringLiteral("\u25C7");
    case KeyingVerdict::exceeded:
        return QStringLiteral("\u25B2");
    }
    return {};
}

QString verdict_of(const KeyingBand& band, bool settled) {
    if (settled && band.on_condition) {
        return caution_mark() + KeyingWords::tr("if people keep away");
    }
    return keying_symbol(band.verdict, settled) + QLatin1Char(' ') + keying_word(band.verdict, settled);
}

bool forbids(KeyingVerdict verdict) {
    return verdict == KeyingVerdict::exceeded || verdict == KeyingVerdict::not_established;
}

QString distance_up(units::Length distance, units::UnitSystem system, bool with_unit) {
    const bool imperial = system == units::UnitSystem::imperial;
    const double unit_m = imperial ? metres_per_foot : 1.0, steps = imperial ? 10.0 : 100.0;
    const double up = std::ceil(distance.value() / unit_m * steps - nearly) / steps;
    const QString number = QString::number(up, 'f', imperial ? 1 : 2);
    return with_unit
               ? number + QStringLiteral("\u2009") + (imperial ? QStringLiteral("ft") : QStringLiteral("m"))
               : number;
}

double power_down_W(units::Power power) {
    const double watts = power.value();
    if (!(watts > 0.0) || !std::isfinite(watts)) {
        return 0.0;
    }
    const double step = std::pow(10.0, std::floor(std::log10(watts)) - 1.0);
    return std::floor(watts / step * (1.0 + 1e-9)) * step;
}

QString power_down(units::Power power) {
    return label_text(power_down_W(power), units::Dimension::power);
}

QString tier_word(exposure::Tier tier) {
    return tier == exposure::Tier::general_public ? KeyingWords::tr("general public")
                                                  : KeyingWords::tr("occupational");
}

QString cause_word(exposure::Cause cause) {
    return cause == exposure::Cause::electric ? KeyingWords::tr("electric") : KeyingWords::tr("magnetic");
}

QString direction_words(units::Angle azimuth, bool vertical) {
    const double degrees_off = azimuth.value() * degrees;
    const double angle = degrees_off <= -179.5 ? degrees_off + 360.0 : degrees_off; // 180, not -180
    QString number =
        QString::number(std::round(angle), 'f', 0).replace(QLatin1Char('-'), QStringLiteral("\u2212")) +
        QStringLiteral("\u00b0");
    if (!vertical) {
        return number;
    }
    constexpr double close_deg = 10.0;
    const double off = std::abs(std::remainder(angle, 180.0)); // from the plane
    if (off < close_deg) {
        return KeyingWords::tr("in the loop's plane (%1)").arg(number);
    }
    return off > 90.0 - close_deg ? KeyingWords::tr("along the axis (%1)").arg(number) : number;
}

QString band_name(const KeyingBand& band) {
    return band.band.empty() ? label_text(band.point.frequency.value(), units::Dimension::frequency)
                             : QString::fromStdString(band.band);
}

QString limit_words(const KeyingDistance& distance) {
    const QString words =
        QString::fromStdString(distance.standard) + QStringLiteral(", ") + tier_word(distance.tier);
    return distance.from_memory ? words + KeyingWords::tr(" (figures from memory)") : words;
}

QStringList reason_lines(const KeyingBand& band) {
    QStringList lines;
    for (const survey::KeyingReason& reason : band.reasons) {
        QString line =
            (band.on_condition ? caution_mark() : keying_symbol(reason.verdict, true) + QLatin1Char(' ')) +
            QString::fromStdString(reason.text) + QLatin1Char('.');
        if (!reason.fix.empty()) {
            line += QLatin1Char(' ') +
                    KeyingWords::tr("What would help: %1.").arg(QString::fromStdString(reason.fix));
        }
        lines << line;
    }
    for (const std::string& remark : band.remarks) {
        lines << caution_mark() + QString::fromStdString(remark) + QLatin1Char('.');
    }
    return lines;
}

QString keying_conditions(const design::Design& design) {
    QStringList parts;
    const design::Station& station = design.station;
    parts << model_and_ground(loop::Model::full_wave, design.site.ground);
    parts << KeyingWords::tr("%1 accepted, peak envelope power")
                 .arg(label_text(station.power.value.value(), units::Dimension::power));
    if (const auto emission = band::find_emission(station.emission)) {
        parts << QString::fromStdString(emission->name) + QStringLiteral(", ") +
                     habit_words(exposure::use_of(station));
    }
    parts << KeyingWords::tr("limits checked: %1")
                 .arg(design::chosen_limits(station).size() + station.own_limits.size());
    return parts.join(QStringLiteral(" \u00b7 "));
}

QStringList tuning_lines(const KeyingBand* band, const design::Design& design) {
    QStringList lines = {
        KeyingWords::tr("1. Find resonance by ear: most received noise, transmitter off."),
        KeyingWords::tr("2. Then the lowest power that shows a reading, keyed for seconds only."),
        KeyingWords::tr("3. Take the hand away and step back beyond the distance before full power."),
        KeyingWords::tr("This order is common practice, no source.")};
    QString power;
    if (!design.station.reach) {
        power =
            KeyingWords::tr("Greatest tune-up power: not established. Enter the reach of the tuning hand.");
    } else if (const auto least = band == nullptr ? std::nullopt : survey::least_power_for_tuning(*band)) {
        power =
            KeyingWords::tr("Greatest tune-up power on %1 with the body %2 from the capacitor: %3, by the "
                            "strictest public limit chosen, a carrier without credit for averaging.")
                .arg(band_name(*band),
                     label_text(design.station.reach->value.value(), units::Dimension::length),
                     least->value() > 0.0 ? power_down(*least) : KeyingWords::tr("none"));
        if (!(least->value() > 0.0)) {
            lines[1] = KeyingWords::tr(
                "2. At this reach no power for tuning: lengthen the drive, or step back first.");
        }
    } else {
        power = KeyingWords::tr("Greatest tune-up power: not established here. Treat the loop as hazardous.");
    }
    lines.prepend(power);
    return lines;
}

QString not_covered() {
    return KeyingWords::tr(
        "Not covered: metal nearby, reflections, contact with the loop, implants and other "
        "medical devices.");
}

} // namespace loopwright::models
