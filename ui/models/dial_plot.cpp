#include "models/dial_plot.hpp"

#include "models/chart_content.hpp"
#include "models/match_plot.hpp"
#include "models/quantity_words.hpp"
#include "tuning/drive.hpp"

#include <QCoreApplication>
#include <QLocale>
#include <QStringList>

#include <algorithm>
#include <cmath>

namespace loopwright::models {

namespace {

struct Dials {
    Q_DECLARE_TR_FUNCTIONS(Dials)
};

/// Decimals that show a fifth of a step, for a hand that reads between two marks.
int decimals_for(double step) {
    if (!(step > 0)) {
        return 1;
    }
    return std::clamp(static_cast<int>(std::ceil(-std::log10(step / 5.0) - 1e-9)), 0, 4);
}

/// Straight in the logarithm between two points, that of the end beyond.
double vswr_on(const QList<QPointF>& curve, double offset_Hz) {
    const auto after =
        std::lower_bound(curve.begin(), curve.end(), offset_Hz,
                         [](const QPointF& point, double offset) { return point.x() < offset; });
    if (after == curve.begin() || after == curve.end()) {
        return after == curve.end() ? curve.back().y() : curve.front().y();
    }
    const QPointF& low = *(after - 1);
    const double share = (offset_Hz - low.x()) / (after->x() - low.x());
    return std::exp(std::lerp(std::log(low.y()), std::log(after->y()), share));
}

QString mark_words(const QString& name, const DialMark& mark, const DialPlot& plot) {
    const auto text = [&](double reading) { return reading_text(reading, plot.scale, plot.step); };
    return Dials::tr("%1 %2, between %3 and %4.")
        .arg(name, text(mark.reading), text(std::min(mark.low, mark.high)),
             text(std::max(mark.low, mark.high)));
}

} // namespace

QString reading_text(double reading, design::DialScale scale, double step) {
    QString number = QString::number(reading, 'f', decimals_for(step));
    if (number.toDouble() == 0.0) {
        number.remove(QLatin1Char('-'));
    }
    number.replace(QLatin1Char('-'), QChar(0x2212));
    switch (scale) {
    case design::DialScale::degrees:
        return number + QChar(0xB0);
    case design::DialScale::turns:
        return Dials::tr("%1 turns").arg(number);
    case design::DialScale::divisions:
        return Dials::tr("%1 div").arg(number);
    }
    return number;
}

QString scale_name(design::DialScale scale) {
    switch (scale) {
    case design::DialScale::degrees:
        return Dials::tr("degrees");
    case design::DialScale::turns:
        return Dials::tr("turns");
    case design::DialScale::divisions:
        return Dials::tr("divisions");
    }
    return {};
}

QString dial_words(const DialPlot& plot) {
    if (!plot.mark()) {
        return plot.reason;
    }
    QStringList parts;
    if (plot.calibrated) {
        parts << mark_words(Dials::tr("Calibrated:"), *plot.calibrated, plot);
    }
    if (plot.predicted) {
        parts << mark_words(Dials::tr("Predicted:"), *plot.predicted, plot);
    }
    if (plot.span_low && plot.span_high) {
        parts << Dials::tr("VSWR %1 or less over %2 of dial.")
                     .arg(plain_number(plot.vswr_limit, 3),
                          reading_text(std::abs(*plot.span_high - *plot.span_low), plot.scale,
                                       std::min(plot.step, std::abs(*plot.span_high - *plot.span_low))));
    }
    if (plot.present) {
        parts << Dials::tr("Dial now at %1.").arg(reading_text(*plot.present, plot.scale, plot.step));
    }
    return parts.join(QLatin1Char(' '));
}

double vswr_at(const ResonancePlot& plot, double frequency_Hz) {
    if (!plot.curve.isEmpty()) {
        return vswr_on(plot.curve, frequency_Hz - plot.resonance_Hz);
    }
    return tuning::vswr_within_span(2.0 * std::abs(frequency_Hz - plot.resonance_Hz) / plot.span_Hz,
                                    plot.vswr_limit);
}

QString resonance_words(const ResonancePlot& plot) {
    if (!plot.established()) {
        return plot.reason;
    }
    const double off_Hz = plot.resonance_Hz - plot.wanted_Hz;
    const double vswr = vswr_at(plot, plot.wanted_Hz);
    const QString at = exact_frequency(std::round(plot.wanted_Hz));
    const QString number = vswr < 100 ? plain_number(vswr, 3) : Dials::tr("above 100");
    const QString off = measured_text(Measure::frequency, std::abs(off_Hz));
    QString words;
    if (std::abs(off_Hz) < 0.005 * plot.span_Hz) {
        words = plot.curve.isEmpty() ? Dials::tr("The loop is set to %1.").arg(at)
                                     : Dials::tr("The loop is set to %1: VSWR %2.").arg(at, number);
    } else if (off_Hz > 0) {
        words = Dials::tr("Set %1 too high: VSWR %2 at %3.").arg(off, number, at);
    } else {
        words = Dials::tr("Set %1 too low: VSWR %2 at %3.").arg(off, number, at);
    }
    return plot.basis.isEmpty() ? words : words + QLatin1Char(' ') + plot.basis;
}

} // namespace loopwright::models
