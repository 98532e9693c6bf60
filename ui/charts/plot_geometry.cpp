#include "charts/plot_geometry.hpp"

#include <algorithm>
#include <cmath>
#include <limits>

namespace loopwright::charts {

namespace {

constexpr double gap = std::numeric_limits<double>::quiet_NaN();

double value_at_position(const models::Scale& scale, double position) {
    return scale.logarithmic ? std::pow(10.0, position) : position;
}

double position_at_value(const models::Scale& scale, double value) {
    return scale.logarithmic ? std::log10(value) : value;
}

/// Lowest and highest position of what is visible; low > high where nothing is.
Span visible_positions(const models::ChartContent& content, Span hertz) {
    Span span{std::numeric_limits<double>::infinity(), -std::numeric_limits<double>::infinity()};
    const auto include = [&span](double position) {
        if (std::isfinite(position)) {
            span.low = std::min(span.low, position);
            span.high = std::max(span.high, position);
        }
    };
    // A level line along the frame would not be told from it.
    const double clear = content.scale.logarithmic ? 0.005 : 0.0;
    for (const models::Curve& curve : content.curves) {
        for (const QPointF& point : curve.points) {
            if (point.x() >= hertz.low && point.x() <= hertz.high) {
                const double position = position_of(content, curve, point.y());
                include(position - clear);
                include(position + clear);
            }
        }
    }
    // Room for the hatching on the side that hurts.
    const double room = content.scale.logarithmic ? 0.08 : 0.0;
    for (const models::Limit& limit : content.limits) {
        const double position = position_on_scale(content.scale, limit.value_si);
        include(position);
        include(position + (limit.hurts == models::Side::above ? room : 0.0));
        include(position - (limit.hurts == models::Side::below ? room : 0.0));
    }
    return span;
}

} // namespace

double PlotGeometry::px_of_frequency(double hertz) const {
    return px_of_x(std::log10(hertz));
}

double PlotGeometry::frequency_at_px(double px) const {
    const double share = std::clamp((px - area.left()) / area.width(), 0.0, 1.0);
    return std::pow(10.0, x.low + share * (x.high - x.low));
}

double position_on_scale(const models::Scale& scale, double si) {
    const double value = si / scale.unit_si;
    if (!scale.logarithmic) {
        return value;
    }
    return value > 0.0 ? std::log10(value) : gap;
}

double position_of(const models::ChartContent& content, const models::Curve& curve, double si) {
    if (curve.second_scale && content.second) {
        return position_on_scale(content.scale, content.second->zero_at_si) + si / content.second->per_decade;
    }
    return position_on_scale(content.scale, si);
}

QList<QPointF> positions(const models::ChartContent& content, const models::Curve& curve) {
    QList<QPointF> list;
    list.reserve(curve.points.size());
    for (const QPointF& point : curve.points) {
        list.append({std::log10(point.x()), position_of(content, curve, point.y())});
    }
    return list;
}

Span value_span(const models::ChartContent& content, Span hertz, Span keep) {
    const models::Scale& scale = content.scale;
    if (!scale.logarithmic && scale.lowest_si && scale.highest_si) {
        return {*scale.lowest_si / scale.unit_si, *scale.highest_si / scale.unit_si};
    }
    const Span visible = visible_positions(content, hertz);
    if (visible.low > visible.high) {
        return {0.0, 1.0};
    }
    const auto value = [&](double position) { return value_at_position(scale, position); };
    const bool kept = keep.high > keep.low;
    Span span = round_span({value(visible.low), value(visible.high)}, scale.logarithmic,
                           kept ? Span{value(keep.low), value(keep.high)} : Span{0.0, 0.0});
    if (scale.lowest_si) {
        span.low = std::max(span.low, *scale.lowest_si / scale.unit_si);
    }
    if (scale.highest_si) {
        span.high = std::min(span.high, *scale.highest_si / scale.unit_si);
    }
    if (!(span.high > span.low)) {
        span.high = span.low * 10.0 + 1.0;
    }
    const Span result{position_at_value(scale, span.low), position_at_value(scale, span.high)};
    // The same to rounding is the same: a scale that is not set again costs nothing.
    const auto near = [](double a, double b) { return std::abs(a - b) < 1e-12; };
    return kept && near(result.low, keep.low) && near(result.high, keep.high) ? keep : result;
}

QList<QPolygonF> pieces_on_paper(const QList<QPointF>& positions, const PlotGeometry& geometry) {
    QList<QPolygonF> pieces;
    const auto on_paper = [&](const QPointF& position) {
        return QPointF(geometry.px_of_x(position.x()), geometry.px_of_y(position.y()));
    };
    const auto at_side = [](const QPointF& a, const QPointF& b, double x) {
        return a + (b - a) * ((x - a.x()) / (b.x() - a.x()));
    };
    bool open = false;
    for (qsizetype i = 0; i + 1 < positions.size(); ++i) {
        QPointF a = positions[i], b = positions[i + 1];
        const bool drawn =
            std::isfinite(a.y()) && std::isfinite(b.y()) && b.x() > geometry.x.low && a.x() < geometry.x.high;
        if (!drawn) {
            open = false;
            continue;
        }
        if (b.x() > geometry.x.high) {
            b = at_side(a, b, geometry.x.high);
        }
        if (a.x() < geometry.x.low) {
            a = at_side(a, b, geometry.x.low);
        }
        if (!open) {
            pieces.append(QPolygonF{on_paper(a)});
            open = true;
        }
        pieces.last().append(on_paper(b));
    }
    return pieces;
}

} // namespace loopwright::charts
