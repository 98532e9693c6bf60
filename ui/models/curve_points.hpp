#pragma once
// A figure of a survey's curve over frequency, as points of a chart.
#include "survey/survey.hpp"

#include <QList>
#include <QPointF>

#include <limits>

namespace loopwright::models {

/// What charts leave a gap for.
inline constexpr double gap = std::numeric_limits<double>::quiet_NaN();

/// The figure of each point of the curve at its frequency in Hz; a gap where there is no resonance.
template <class Figure>
[[nodiscard]] QList<QPointF> points_of(const survey::Survey& survey, const Figure& figure) {
    QList<QPointF> points;
    points.reserve(static_cast<qsizetype>(survey.curve.size()));
    for (const loop::OperatingPoint& point : survey.curve) {
        points.append({point.frequency.value(), point.resonance ? figure(*point.resonance) : gap});
    }
    return points;
}

} // namespace loopwright::models
