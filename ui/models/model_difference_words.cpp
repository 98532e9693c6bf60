// Why the two models part, in words.
#include "loop/model_difference.hpp"
#include "models/chart_text.hpp"
#include "models/headline.hpp"
#include "models/match_plot.hpp"
#include "models/model_charts.hpp"
#include "models/quantity_words.hpp"

#include <QCoreApplication>
#include <QStringList>

#include <algorithm>
#include <cmath>

namespace loopwright::models {

namespace {

QString sign_of(double difference) {
    return difference < 0.0 ? QStringLiteral("\u2212") : QStringLiteral("+");
}

/// A difference as a whole number of the least that means something: two digits at most, none below it.
double meant(double difference, double least) {
    const double size = std::abs(difference);
    const double two_digits = std::pow(10.0, std::floor(std::log10(size)) - 1.0);
    const double step = std::max(two_digits, least);
    return step * std::round(size / step);
}

/// "+12 %", of a ratio; a thousandth is less than either mesh or formula can say.
QString resistance_apart(double ratio) {
    constexpr double least = 1e-3;
    const double difference = ratio - 1.0;
    if (std::abs(difference) < least) {
        return ChartText::tr("resistance the same within 0.1\u2009%");
    }
    const double percents = 100.0 * meant(difference, least);
    return ChartText::tr("resistance %1%2\u2009%").arg(sign_of(difference), plain_number(percents, 3));
}

/// "+2.8 pF"; a hundredth of a picofarad is less than the gap's own uncertainty by far.
QString capacitance_apart(double difference_F) {
    constexpr double least_F = 0.01e-12, pico = 1e12;
    if (std::abs(difference_F) < least_F) {
        return ChartText::tr("capacitance the same within 0.01\u2009pF");
    }
    return ChartText::tr("capacitance %1%2\u2009pF")
        .arg(sign_of(difference_F), plain_number(pico * meant(difference_F, least_F), 4));
}

/// What stands against what.
QString summary(const ModelPoints& points, const loop::ModelDifference& difference) {
    QStringList parts;
    if (difference.efficiency_ratio) {
        parts << ChartText::tr("efficiency %1 against %2")
                     .arg(percent(points.full_wave->resonance->efficiency, 2),
                          percent(points.closed_form->resonance->efficiency, 2));
    }
    if (difference.resistance_ratio) {
        parts << resistance_apart(*difference.resistance_ratio);
    }
    if (difference.capacitance) {
        parts << capacitance_apart(difference.capacitance->value());
    }
    return parts.join(QStringLiteral(", "));
}

} // namespace

QStringList model_difference_words(const ModelPoints& points, const design::Ground& ground) {
    if (points.closed_form == nullptr || points.full_wave == nullptr) {
        return {ChartText::tr("No point to compare the models at.")};
    }
    const loop::ModelDifference difference = loop::difference(*points.closed_form, *points.full_wave, ground);
    const QString at = exact_frequency(points.full_wave->frequency.value());
    const QString words = summary(points, difference);
    QStringList lines;
    lines << (words.isEmpty() ? ChartText::tr("At %1 one of the models gives no number.").arg(at)
                              : ChartText::tr("At %1, full wave against closed form: %2.").arg(at, words));
    for (const loop::DifferenceReason& reason : difference.reasons) {
        lines << QString::fromStdString(reason.text);
    }
    if (difference.reasons.empty() && !words.isEmpty()) {
        lines << ChartText::tr("The models agree here within what either can say.");
    }
    return lines;
}

} // namespace loopwright::models
