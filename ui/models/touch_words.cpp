#include "models/touch_words.hpp"

#include "models/keying_words.hpp"
#include "models/quantity_words.hpp"

#include <QCoreApplication>

#include <algorithm>

namespace loopwright::models {

namespace {

struct Touch {
    Q_DECLARE_TR_FUNCTIONS(Touch)
};
using survey::KeyingBand;

constexpr std::size_t table_steps = 8; ///< from the capacitor to the middle

/// What is less than a tenth of a volt is the arithmetic's rest, not a voltage.
QString volts(units::Voltage voltage, int digits = 3) {
    return shown(voltage.value() < 0.1 ? units::volts(0) : voltage, digits);
}

QString kelvin(double rise_K) {
    return QString::fromStdString(units::shown(rise_K, units::Dimension::number, 2)) +
           QStringLiteral("\u2009K");
}

QString heat_words(const QString& part, const loop::Heating& heating) {
    return heating.rise_K ? Touch::tr("%1 %2 (%3 to %4)")
                                .arg(part, kelvin(*heating.rise_K), kelvin(heating.rise_range_K.low),
                                     kelvin(heating.rise_range_K.high))
                          : Touch::tr("%1 not established, perhaps more than 150 K").arg(part);
}

QString touch_line(const KeyingBand& band, const design::Design& design) {
    if (!band.touch) {
        return Touch::tr("Touch: volts along the conductor are not established here; expect kilovolts.");
    }
    const bool free = design.site.ground.kind == design::GroundKind::free_space;
    const QString reach = band.touch_in_reach_rms
                              ? Touch::tr("up to %1 rms where a hand reaches%2")
                                    .arg(volts(*band.touch_in_reach_rms),
                                         free ? QString() : Touch::tr(" (2.5 m above where people stand)"))
                              : Touch::tr("nothing of the conductor within 2.5 m above where people stand");
    return Touch::tr("Touch: %1 rms beside the capacitor, %2, %3 opposite it. Burns come from tens of volts.")
        .arg(volts(band.touch->highest_rms), reach, volts(band.touch->at_middle_rms, 2));
}

const QString rule = QStringLiteral("47 CFR 1.1307(b)(3)(i)(C)");

bool asked_for_fcc(const KeyingBand& band) {
    return band.point.resonance && band.verdict != survey::KeyingVerdict::out_of_reach &&
           std::any_of(band.distances.begin(), band.distances.end(),
                       [](const auto& d) { return d.limit == "fcc_1_1310"; });
}

QString why_not(const design::Design& design) {
    return design.site.people_distance ? Touch::tr("people are nearer than a wavelength over 2\u03c0")
                                       : Touch::tr("no distance of people was entered");
}

QString exemption_line(const KeyingBand& band, const design::Design& design) {
    if (!band.fcc_exempt_erp) {
        return Touch::tr("FCC exemption by ERP (%1): does not apply, %2. ERP %3.")
            .arg(rule, why_not(design), shown(band.erp, 2));
    }
    return Touch::tr("FCC exemption by ERP (%1): ERP %2, no evaluation asked for below %3 at the people's "
                     "distance. An extra line, it replaces no field limit.")
        .arg(rule, shown(band.erp, 2), shown(*band.fcc_exempt_erp, 2));
}

} // namespace

QStringList touch_lines(const KeyingBand& band, const design::Design& design) {
    if (!band.point.resonance || band.verdict == survey::KeyingVerdict::out_of_reach) {
        return {};
    }
    QStringList lines{touch_line(band, design)};
    if (band.heating) {
        lines << Touch::tr("Warmer than still air in long use: %1; %2.")
                     .arg(heat_words(Touch::tr("conductor"), band.heating->conductor),
                          heat_words(Touch::tr("capacitor"), band.heating->capacitor));
        lines << Touch::tr(
                     "From %1 lost in conductor and joints and %2 in the capacitor, on average over the "
                     "worst half hour. How large the capacitor is, is not known: a body of 50 mm by 60 mm "
                     "is assumed (30 by 30 to 80 by 120).")
                     .arg(shown(band.heating->conductor_average, 2),
                          shown(band.heating->capacitor_average, 2));
    }
    if (asked_for_fcc(band)) {
        lines << exemption_line(band, design);
    }
    return lines;
}

QString exemption_summary(const survey::Keying& keying) {
    QStringList parts, without;
    for (const KeyingBand& band : keying.bands) {
        if (!asked_for_fcc(band)) {
            continue;
        }
        if (band.fcc_exempt_erp) {
            parts << Touch::tr("%1 ERP %2, asks for no evaluation below %3")
                         .arg(band_name(band), shown(band.erp, 2), shown(*band.fcc_exempt_erp, 2));
        } else {
            without << band_name(band);
        }
    }
    if (!without.isEmpty()) {
        parts << Touch::tr("does not apply on %1: %2")
                     .arg(without.join(QStringLiteral(", ")), why_not(keying.request.design));
    }
    return parts.isEmpty()
               ? QString()
               : Touch::tr("FCC exemption by ERP (%1), an extra line that replaces no field limit: %2.")
                     .arg(rule, parts.join(QStringLiteral("; ")));
}

TextTable touch_table(const KeyingBand& band, const design::Design& design, units::UnitSystem system) {
    TextTable table;
    table.headings = {Touch::tr("Along the conductor\nfrom the capacitor"), Touch::tr("Height"),
                      Touch::tr("Volts, rms"), Touch::tr("Volts, peak"), Touch::tr("A hand")};
    table.tips = {Touch::tr("From the nearer edge of its gap; of both sides the one with more volts"),
                  Touch::tr("Above the ground; in free space above the loop's centre"),
                  Touch::tr("Against the ground, untouched, at peak envelope power"),
                  Touch::tr("Against the ground, untouched, at peak envelope power"),
                  Touch::tr("Whether it is within 2.5 m above where people stand")};
    table.figures = {0, 1, 2, 3};
    if (!band.touch || band.verdict == survey::KeyingVerdict::out_of_reach) {
        return table;
    }
    const auto& points = band.touch->points;
    const bool free = design.site.ground.kind == design::GroundKind::free_space;
    const double top_m = design.site.standing_level.value.value() + survey::hand_reach_m;
    const std::size_t middle = points.size() / 2;
    const std::size_t step = std::max<std::size_t>(1, middle / table_steps);
    for (std::size_t i = 0; i <= middle; i += step) {
        const loop::TouchPoint& there = points[i];
        const loop::TouchPoint& across = points[points.size() - 1 - i];
        const loop::TouchPoint& at = across.rms > there.rms ? across : there;
        const auto length = [system](units::Length value) {
            return QString::fromStdString(units::shown(value, 3, system));
        };
        table.rows << QStringList{
            length(at.from_capacitor), length(units::metres(at.position_m[2])), volts(at.rms), volts(at.peak),
            free || at.position_m[2] <= top_m ? Touch::tr("reaches it") : Touch::tr("does not reach it")};
    }
    return table;
}

} // namespace loopwright::models
