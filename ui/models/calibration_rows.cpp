#include "models/calibration_rows.hpp"

#include "models/dial_plot.hpp"
#include "models/match_plot.hpp"
#include "models/quantity_words.hpp"

#include <QCoreApplication>

#include <algorithm>
#include <cmath>

namespace loopwright::models {

namespace {

struct Calibrations {
    Q_DECLARE_TR_FUNCTIONS(Calibrations)
};

bool same_points(const std::vector<design::CalibrationPoint>& points,
                 const std::vector<tuning::JudgedPoint>& judged) {
    return points.size() == judged.size() &&
           std::equal(points.begin(), points.end(), judged.begin(),
                      [](const design::CalibrationPoint& point, const tuning::JudgedPoint& one) {
                          return point == one.point;
                      });
}

QString as_entered(double value) {
    return plain_number(value, 6);
}

/// Of a fitted property, in the unit that people know it in.
QString part_text(const tuning::FittedPart& part, double value) {
    switch (part.kind) {
    case tuning::PartKind::stray:
        return short_text(value, units::Dimension::capacitance);
    case tuning::PartKind::inductance:
    case tuning::PartKind::capacitor:
    case tuning::PartKind::fixed:
        return QStringLiteral("\u00d7\u2009") + plain_number(value, 3);
    case tuning::PartKind::offset:
    case tuning::PartKind::reading_error:
    case tuning::PartKind::law:
        return plain_number(value, 2);
    }
    return {};
}

} // namespace

QList<PairRow> calibration_rows(const std::vector<design::CalibrationPoint>& points,
                                const std::vector<tuning::JudgedPoint>& judged) {
    const bool known = same_points(points, judged);
    QList<PairRow> rows;
    for (std::size_t i = 0; i < points.size(); ++i) {
        PairRow row;
        row.first = as_entered(points[i].reading);
        row.second = points[i].frequency.text.empty() ? exact_frequency(points[i].frequency.value.value())
                                                      : QString::fromStdString(points[i].frequency.text);
        if (known) {
            const tuning::JudgedPoint& one = judged[i];
            row.doubtful = !one.used || one.doubtful();
            row.tip = QString::fromStdString(one.reason);
            row.remarks << (one.outside_model ? QString() : offset_text(one.off.value()))
                        << (one.doubtful() ? Calibrations::tr("doubtful")
                            : one.used     ? Calibrations::tr("counts")
                                           : Calibrations::tr("left out"));
        }
        rows.append(row);
    }
    return rows;
}

QString next_point_words(const std::vector<tuning::NextPoint>& plan, const design::Dial& dial) {
    if (plan.empty()) {
        return {};
    }
    const auto text = [&](double reading) {
        return reading_text(reading, dial.scale,
                            std::min(dial.hand_step / dial.reduction, std::abs(reading) / 5.0));
    };
    const auto megahertz = [](const tuning::NextPoint& point) {
        return exact_frequency(std::round(point.frequency.value() / 1e3) * 1e3);
    };
    const tuning::NextPoint& next = plan.front();
    QString words =
        Calibrations::tr("Measure next at %1, near %2: it would narrow the card from ±%3 to ±%4")
            .arg(megahertz(next), reading_text(next.reading, dial.scale, dial.hand_step / dial.reduction),
                 text(next.width_now / 2.0), text(next.width_after / 2.0));
    for (std::size_t i = 1; i < plan.size(); ++i) {
        words += (i == 1 ? Calibrations::tr(", then %1 to ±%2") : Calibrations::tr(", %1 to ±%2"))
                     .arg(megahertz(plan[i]), text(plan[i].width_after / 2.0));
    }
    return words + QLatin1Char('.');
}

QStringList fitted_words(const std::vector<tuning::FittedPart>& parts) {
    QStringList lines;
    for (const tuning::FittedPart& part : parts) {
        if (part.told) {
            lines << Calibrations::tr("%1: %2 (%3 to %4); the file says %5")
                         .arg(QString::fromStdString(part.name), part_text(part, part.value),
                              part_text(part, part.range.low), part_text(part, part.range.high),
                              part_text(part, part.assumed));
        }
    }
    return lines;
}

QString wide_interval_words() {
    return Calibrations::tr("The interval of a predicted reading is wide because the true stray capacitance, "
                            "law and pointer of your capacitor are not known; calibration points narrow it.");
}

QString calibration_summary(const std::vector<tuning::JudgedPoint>& judged) {
    const auto used =
        std::count_if(judged.begin(), judged.end(), [](const tuning::JudgedPoint& one) { return one.used; });
    const auto all = static_cast<qsizetype>(judged.size());
    if (all == 0) {
        return Calibrations::tr(
            "No point yet: the dial is predicted from the file alone. Two points already help.");
    }
    return used == all
               ? Calibrations::tr("All %1 points count.").arg(all)
               : Calibrations::tr("%1 of %2 points count; the others contradict them.").arg(used).arg(all);
}

} // namespace loopwright::models
