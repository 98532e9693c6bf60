// Why the two models part, in words.
#include "loop/model_difference.hpp"
#include "models/headline.hpp"
#include "models/match_plot.hpp"
#include "models/model_charts.hpp"

#include <QCoreApplication>
#include <QStringList>

#include <cmath>

namespace loopwright::models {

namespace {

struct Charts {
    Q_DECLARE_TR_FUNCTIONS(Charts)
};

/// "+12 %", of a ratio.
QString apart(double ratio) {
    const QString text = percent(std::abs(ratio - 1.0), 2);
    return (ratio < 1.0 ? QStringLiteral("\u2212") : QStringLiteral("+")) + text;
}

/// What stands against what.
QString summary(const ModelPoints& points, const loop::ModelDifference& difference) {
    QStringList parts;
    if (difference.efficiency_ratio) {
        parts << Charts::tr("efficiency %1 against %2")
                     .arg(percent(points.full_wave->resonance->efficiency),
                          percent(points.closed_form->resonance->efficiency));
    }
    if (difference.resistance_ratio) {
        parts << Charts::tr("resistance %1").arg(apart(*difference.resistance_ratio));
    }
    if (difference.capacitance) {
        const double more_F = difference.capacitance->value();
        parts << Charts::tr("capacitance %1%2")
                     .arg(more_F < 0 ? QString() : QStringLiteral("+"),
                          measured_text(Measure::capacitance, more_F));
    }
    return parts.join(QStringLiteral(", "));
}

} // namespace

QStringList model_difference_words(const ModelPoints& points, const design::Ground& ground) {
    if (points.closed_form == nullptr || points.full_wave == nullptr) {
        return {Charts::tr("No point to compare the models at.")};
    }
    const loop::ModelDifference difference = loop::difference(*points.closed_form, *points.full_wave, ground);
    const QString at = exact_frequency(points.full_wave->frequency.value());
    const QString words = summary(points, difference);
    QStringList lines;
    lines << (words.isEmpty() ? Charts::tr("At %1 one of the models gives no number.").arg(at)
                              : Charts::tr("At %1, full wave against closed form: %2.").arg(at, words));
    for (const loop::DifferenceReason& reason : difference.reasons) {
        lines << QString::fromStdString(reason.text);
    }
    if (difference.reasons.empty() && !words.isEmpty()) {
        lines << Charts::tr("The models agree here within what either can say.");
    }
    return lines;
}

} // namespace loopwright::models
