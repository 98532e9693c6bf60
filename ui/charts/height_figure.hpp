#pragma once
// What height does: shares of the accepted power stacked over the height of the lowest point, the low-angle
// gain above them.
#include "charts/figure.hpp"
#include "models/height_plot.hpp"

namespace loopwright::charts {

class HeightFigure : public Figure {
public:
    explicit HeightFigure(models::HeightPlot plot) : plot_(std::move(plot)) {}
    [[nodiscard]] const models::HeightPlot& plot() const { return plot_; }

    [[nodiscard]] QString id() const override;
    [[nodiscard]] QString title() const override;
    [[nodiscard]] QString description() const override;
    [[nodiscard]] double shape() const override { return 1.5; }
    QList<FigureWord> paint(QPainter& painter, const QRectF& room, const Appearance& look) const override;
    /// On the line of the sky's share.
    [[nodiscard]] QList<QPointF> points(const QRectF& room, const Appearance& look) const override;
    [[nodiscard]] QString point_text(qsizetype point) const override;

private:
    models::HeightPlot plot_;
};

} // namespace loopwright::charts
