#pragma once
// VSWR over frequency with the dial where it stands: where the loop resonates, and where the radio is.
#include "charts/figure.hpp"
#include "models/dial_plot.hpp"

namespace loopwright::charts {

class ResonanceFigure : public Figure {
public:
    explicit ResonanceFigure(models::ResonancePlot plot) : plot_(std::move(plot)) {}
    [[nodiscard]] const models::ResonancePlot& plot() const { return plot_; }

    [[nodiscard]] QString id() const override;
    [[nodiscard]] QString title() const override;
    [[nodiscard]] QString description() const override;
    QList<FigureWord> paint(QPainter& painter, const QRectF& room, const Appearance& look) const override;
    [[nodiscard]] QList<QPointF> points(const QRectF& room, const Appearance& look) const override;
    [[nodiscard]] QString point_text(qsizetype point) const override;

private:
    models::ResonancePlot plot_;
};

} // namespace loopwright::charts
