#include "models/chart_content.hpp"

#include "models/chart_text.hpp"
#include "models/headline.hpp"

#include <QCoreApplication>
#include <QRegularExpression>
#include <QStringList>

#include <algorithm>
#include <cmath>

namespace loopwright::models {

namespace {

QString text_of(double si, units::Dimension dimension) {
    return QString::fromStdString(units::shown(si, dimension));
}

QString frequency_text(double hertz) {
    return text_of(hertz, units::Dimension::frequency);
}

/// The lowest and the highest point of a curve in words.
QString span_of(const Curve& curve) {
    const QPointF* low = nullptr;
    const QPointF* high = nullptr;
    for (const QPointF& point : curve.points) {
        if (std::isfinite(point.y())) {
            low = low == nullptr || point.y() < low->y() ? &point : low;
            high = high == nullptr || point.y() > high->y() ? &point : high;
        }
    }
    if (low == nullptr) {
        return ChartText::tr("%1: not established anywhere in this range.").arg(curve.name);
    }
    return ChartText::tr("%1: from %2 at %3 to %4 at %5.")
        .arg(curve.name, measured_text(curve.measure, low->y()), frequency_text(low->x()),
             measured_text(curve.measure, high->y()), frequency_text(high->x()));
}

} // namespace

QString measured_text(Measure measure, double si) {
    switch (measure) {
    case Measure::share:
        return percent(si);
    case Measure::dbi:
        return decibels(units::Decibel{si}, QStringLiteral("dBi"));
    case Measure::number:
        return text_of(si, units::Dimension::number);
    case Measure::capacitance:
        return text_of(si, units::Dimension::capacitance);
    case Measure::voltage:
        return text_of(si, units::Dimension::voltage);
    case Measure::frequency:
        return text_of(si, units::Dimension::frequency);
    case Measure::resistance:
        return text_of(si, units::Dimension::resistance);
    }
    return {};
}

QString label_text(double si, units::Dimension dimension) {
    static const QRegularExpression zeros(QStringLiteral("(\\.\\d*?)0+(?=\\D|$)"));
    QString text = QString::fromStdString(units::shown(si, dimension, 4));
    text.replace(zeros, QStringLiteral("\\1"));
    static const QRegularExpression bare_point(QStringLiteral("\\.(?=\\D|$)"));
    return text.remove(bare_point);
}

std::optional<double> value_at(const Curve& curve, double frequency_Hz) {
    const auto& points = curve.points;
    const auto after = std::lower_bound(points.begin(), points.end(), frequency_Hz,
                                        [](const QPointF& point, double hertz) { return point.x() < hertz; });
    if (after == points.end()) {
        return std::nullopt;
    }
    const auto finite = [](double value) {
        return std::isfinite(value) ? std::optional<double>(value) : std::nullopt;
    };
    if (after->x() == frequency_Hz) {
        return finite(after->y());
    }
    if (after == points.begin()) {
        return std::nullopt;
    }
    const QPointF a = *(after - 1), b = *after;
    const double share = std::log(frequency_Hz / a.x()) / std::log(b.x() / a.x());
    if (curve.measure != Measure::dbi && a.y() > 0.0 && b.y() > 0.0) {
        return finite(a.y() * std::pow(b.y() / a.y(), share));
    }
    return finite(a.y() + share * (b.y() - a.y()));
}

QString description(const ChartContent& content) {
    QStringList sentences;
    sentences << ChartText::tr("%1, from %2 to %3.")
                     .arg(content.title, frequency_text(content.from_Hz), frequency_text(content.to_Hz));
    for (const Curve& curve : content.curves) {
        sentences << span_of(curve);
    }
    for (const Limit& limit : content.limits) {
        sentences << ChartText::tr("Limit: %1.").arg(limit.words);
    }
    for (const Zone& zone : content.zones) {
        sentences << ChartText::tr("From %1 to %2: %3.")
                         .arg(frequency_text(zone.from_Hz), frequency_text(zone.to_Hz), zone.words);
    }
    return sentences.join(QLatin1Char(' '));
}

} // namespace loopwright::models
