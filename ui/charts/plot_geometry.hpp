#pragma once
// Where frequencies and values of one chart lie on paper. Scales are positions: log10 of the frequency in
// hertz; the value in units of the left-hand scale, its log10 where that is logarithmic.
#include "charts/scales.hpp"
#include "models/chart_content.hpp"

#include <QPointF>
#include <QPolygonF>
#include <QRectF>

namespace loopwright::charts {

struct PlotGeometry {
    QRectF area;
    Span x, y;

    [[nodiscard]] double px_of_x(double position) const {
        return area.left() + (position - x.low) / (x.high - x.low) * area.width();
    }
    [[nodiscard]] double px_of_y(double position) const {
        return area.bottom() - (position - y.low) / (y.high - y.low) * area.height();
    }
    [[nodiscard]] double px_of_frequency(double hertz) const;
    [[nodiscard]] double frequency_at_px(double px) const;
    bool operator==(const PlotGeometry&) const = default;
};

/// NaN for what cannot be drawn (a gap, a value not above zero on a logarithmic scale).
[[nodiscard]] double position_of(const models::ChartContent& content, const models::Curve& curve, double si);
[[nodiscard]] double position_on_scale(const models::Scale& scale, double si);

/// Positions of the points of a curve, gaps as NaN.
[[nodiscard]] QList<QPointF> positions(const models::ChartContent& content, const models::Curve& curve);

/// The range of the left-hand scale, in positions, that holds what is visible between two frequencies, limits
/// included.
[[nodiscard]] Span value_span(const models::ChartContent& content, Span hertz, Span keep);

/// The pieces of a curve between gaps, on paper, only what lies between the sides of the area.
[[nodiscard]] QList<QPolygonF> pieces_on_paper(const QList<QPointF>& positions, const PlotGeometry& geometry);

} // namespace loopwright::charts
