#include "models/headline.hpp"

#include "band/emission.hpp"
#include "loop/fitted_capacitor.hpp"
#include "models/model_words.hpp"
#include "models/quantity_words.hpp"
#include "survey/verdict.hpp"

#include <QCoreApplication>

#include <algorithm>
#include <cmath>

namespace loopwright::models {

namespace {

using loop::OperatingPoint;
using loop::Resonance;

struct Headlines {
    Q_DECLARE_TR_FUNCTIONS(Headlines)
};

const QString thin_space = QStringLiteral("\u2009");

/// An interval that the model left at zero is not known.
QString joined(const QStringList& parts) {
    QStringList some = parts;
    some.removeAll(QString());
    return some.join(QStringLiteral("; "));
}

template <class Quantity>
QString range_text(const units::Interval<Quantity>& range) {
    return known(range) ? Headlines::tr("%1 to %2").arg(shown(range.low), shown(range.high)) : QString();
}

Headline efficiency_line(const Resonance& r) {
    Headline line{
        QStringLiteral("efficiency"), Headlines::tr("Efficiency"), percent(r.efficiency), {}, {}, true, {}};
    const QString range =
        known(r.efficiency_range)
            ? Headlines::tr("%1 to %2").arg(percent(r.efficiency_range.low), percent(r.efficiency_range.high))
            : QString();
    QString ground;
    if (r.resistance.ground && r.resistance.total().value() > 0.0) {
        ground = Headlines::tr("%1 heats the ground; a bandwidth measurement would suggest %2")
                     .arg(percent(r.resistance.ground->value() / r.resistance.total().value(), 2),
                          percent(r.efficiency_from_bandwidth, 2));
    }
    line.remark = joined({range, Headlines::tr("of the accepted power goes to the sky"), ground});
    return line;
}

Headline gain(const Resonance& r, const OperatingPoint& point, const design::Design& design) {
    Headline line{
        QStringLiteral("gain_max_dBi"), Headlines::tr("Gain, best direction"), {}, {}, {}, true, {}};
    if (!r.gain_max) {
        line.value = Headlines::tr("not established");
        line.established = false;
        line.reason = Headlines::tr("The model gives no gain for this loop here.");
        return line;
    }
    line.value = decibels(*r.gain_max, QStringLiteral("dBi"));
    const bool free =
        point.model == loop::Model::closed_form || design.site.ground.kind == design::GroundKind::free_space;
    line.remark = free ? Headlines::tr("over isotropic, in free space")
                       : Headlines::tr("over isotropic, above the horizon");
    return line;
}

/// Where the low angle counts: above real ground the best direction is often straight up.
Headline low_gain(const Resonance& r) {
    return {QStringLiteral("gain_low_angle_dBi"),
            Headlines::tr("Gain at 15° elevation"),
            r.gain_low_angle ? decibels(*r.gain_low_angle, QStringLiteral("dBi"))
                             : Headlines::tr("not established"),
            r.gain_low_angle ? Headlines::tr("best azimuth") : QString(),
            {},
            r.gain_low_angle.has_value(),
            r.gain_low_angle ? QString() : Headlines::tr("The model gives no gain for this loop here.")};
}

Headline voltage_line(const Resonance& r, const OperatingPoint& point, const design::Design& design) {
    Headline line{QStringLiteral("capacitor_voltage_peak_V"),
                  Headlines::tr("Capacitor voltage, peak"),
                  shown(r.capacitor_voltage_peak),
                  {},
                  Standing::doubtful,
                  true,
                  {}};
    const QString at = Headlines::tr("at %1").arg(short_text(point.power.value(), units::Dimension::power));
    const auto held = survey::voltage_limit(point, design);
    if (!held) {
        line.remark = joined({at, Headlines::tr("no rating given, so no verdict")});
        return line;
    }
    const units::Voltage rating = held->limit;
    const QString rated =
        held->as_rated ? short_text(*design.capacitor.rating.peak_voltage) : shown(held->limit);
    const bool has_range = known(r.capacitor_voltage_peak_range);
    const units::Voltage high = has_range
                                    ? std::max(r.capacitor_voltage_peak_range.high, r.capacitor_voltage_peak)
                                    : r.capacitor_voltage_peak;
    if (high <= rating) {
        line.standing = Standing::good;
        line.remark = joined({at, Headlines::tr("within the rating of %1").arg(rated)});
    } else if (r.capacitor_voltage_peak <= rating) {
        line.standing = Standing::bad;
        line.remark =
            joined({at, Headlines::tr("perhaps %1, over the rating of %2").arg(shown(high), rated)});
    } else {
        line.standing = Standing::bad;
        line.remark = joined({at, Headlines::tr("over the rating of %1").arg(rated)});
    }
    return line;
}

Headline tuning(const Resonance& r, const OperatingPoint& point, const design::Design& design) {
    Headline line{QStringLiteral("tuning_capacitance_F"),
                  Headlines::tr("Tuning capacitance"),
                  shown(r.tuning_capacitance),
                  {},
                  r.in_capacitor_range ? Standing::good : Standing::bad,
                  true,
                  {}};
    const auto reached = loop::capacitor_range_at(design, point.frequency);
    const QString low = short_text(units::Typed<units::Capacitance>(reached.low));
    const QString high = short_text(units::Typed<units::Capacitance>(reached.high));
    const QString which = !loop::fitted(design, point.frequency).added.empty()
                              ? Headlines::tr("capacitor with what is added: %1 to %2").arg(low, high)
                          : design.capacitor.stray.value.value() > 0.0
                              ? Headlines::tr("capacitor with stray: %1 to %2").arg(low, high)
                              : Headlines::tr("capacitor: %1 to %2").arg(low, high);
    const auto& range = r.tuning_capacitance_range;
    const bool edge =
        r.in_capacitor_range && known(range) && (range.low < reached.low || range.high > reached.high);
    if (edge) {
        line.standing = Standing::doubtful;
    }
    line.remark = joined({!r.in_capacitor_range ? Headlines::tr("out of reach")
                          : edge                ? Headlines::tr("at the edge of reach")
                                                : Headlines::tr("in reach"),
                          which});
    return line;
}

Headline bandwidth_line(const Resonance& r, const OperatingPoint& point, const design::Design& design) {
    Headline line{QStringLiteral("bandwidth_vswr_Hz"),
                  Headlines::tr("Bandwidth, VSWR up to %1").arg(plain_number(point.vswr_limit, 3)),
                  shown(r.bandwidth_vswr),
                  {},
                  {},
                  true,
                  {}};
    QString need;
    if (const auto emission = band::find_emission(design.station.emission)) {
        const units::Frequency low =
            known(r.bandwidth_vswr_range) ? r.bandwidth_vswr_range.low : r.bandwidth_vswr;
        line.standing = low < emission->working_width ? Standing::doubtful : Standing::good;
        need = Headlines::tr("%1 works in %2")
                   .arg(QString::fromStdString(emission->name),
                        short_text(emission->working_width.value(), units::Dimension::frequency));
    }
    line.remark = joined({Headlines::tr("matched at resonance"), need});
    return line;
}

Headline quality_line(const Resonance& r) {
    return {QStringLiteral("q_unloaded"),
            Headlines::tr("Q, unloaded"),
            number(r.q_unloaded),
            Headlines::tr("loaded and matched: %1").arg(number(r.q_loaded())),
            {},
            true,
            {},
            {}};
}

Headline current(const Resonance& r, const OperatingPoint& point) {
    return {QStringLiteral("loop_current_rms_A"),
            Headlines::tr("Loop current, rms"),
            shown(r.loop_current_rms),
            Headlines::tr("at %1, opposite the capacitor")
                .arg(short_text(point.power.value(), units::Dimension::power)),
            {},
            true,
            {},
            {}};
}

std::vector<Headline> nothing(const OperatingPoint& point) {
    const QString reason = reason_not_established(point);
    const QStringList ids = {
        QStringLiteral("efficiency"),           QStringLiteral("gain_low_angle_dBi"),
        QStringLiteral("gain_max_dBi"),         QStringLiteral("capacitor_voltage_peak_V"),
        QStringLiteral("tuning_capacitance_F"), QStringLiteral("bandwidth_vswr_Hz"),
        QStringLiteral("q_unloaded"),           QStringLiteral("loop_current_rms_A")};
    const QStringList labels = {
        Headlines::tr("Efficiency"),
        Headlines::tr("Gain at 15° elevation"),
        Headlines::tr("Gain, best direction"),
        Headlines::tr("Capacitor voltage, peak"),
        Headlines::tr("Tuning capacitance"),
        Headlines::tr("Bandwidth, VSWR up to %1").arg(plain_number(point.vswr_limit, 3)),
        Headlines::tr("Q, unloaded"),
        Headlines::tr("Loop current, rms")};
    std::vector<Headline> lines;
    lines.reserve(static_cast<std::size_t>(ids.size()));
    for (int i = 0; i < ids.size(); ++i) {
        lines.push_back(
            {ids[i], labels[i], Headlines::tr("not established"), {}, Standing::plain, false, reason});
    }
    return lines;
}

} // namespace

QString percent(double share, int digits) {
    const survey::EfficiencyFigure printed = survey::efficiency_to_print(share, digits);
    return number(100.0 * printed.share, printed.digits) + thin_space + QLatin1Char('%');
}

QString decibels(units::Decibel value, const QString& unit) {
    // Rounding can make a negative zero; adding zero takes the sign away.
    const double rounded = std::round(value.value * 10.0) / 10.0 + 0.0;
    QString text = QString::number(rounded, 'f', 1);
    text.replace(QLatin1Char('-'), QStringLiteral("\u2212"));
    return text + thin_space + unit;
}

QString reason_not_established(const OperatingPoint& point) {
    if (point.resonance) {
        return {};
    }
    for (const base::Notice& notice : point.notices.worst_first()) {
        if (notice.severity == base::Severity::not_established) {
            return QString::fromStdString(notice.text);
        }
    }
    return Headlines::tr("The model does not stand behind a number here.");
}

std::vector<Headline> headlines(const OperatingPoint& point, const design::Design& design) {
    std::vector<Headline> lines;
    if (!point.resonance) {
        lines = nothing(point);
    } else {
        const Resonance& r = *point.resonance;
        lines = {efficiency_line(r),       low_gain(r),
                 gain(r, point, design),   voltage_line(r, point, design),
                 tuning(r, point, design), bandwidth_line(r, point, design),
                 quality_line(r),          current(r, point)};
    }
    for (Headline& line : lines) {
        line.model = model_name(point.model);
    }
    return lines;
}

} // namespace loopwright::models
