#pragma once
// The distance people must keep over the power, both tiers of one limit.
#include "charts/figure.hpp"
#include "models/surroundings_plot.hpp"

namespace loopwright::charts {

class DistancePowerFigure : public Figure {
public:
    explicit DistancePowerFigure(models::SurroundingsPlot plot) : plot_(std::move(plot)) {}

    [[nodiscard]] QString id() const override { return QStringLiteral("distance-power"); }
    [[nodiscard]] QString title() const override;
    [[nodiscard]] QString description() const override;
    [[nodiscard]] double shape() const override { return 1.2; }
    QList<FigureWord> paint(QPainter& painter, const QRectF& room, const Appearance& look) const override;
    /// On the curve for the general public.
    [[nodiscard]] QList<QPointF> points(const QRectF& room, const Appearance& look) const override;
    [[nodiscard]] QString point_text(qsizetype point) const override;

private:
    [[nodiscard]] QString footer() const;
    /// Without the frequency, where there is no room for it.
    [[nodiscard]] static QString short_title();
    models::SurroundingsPlot plot_;
};

} // namespace loopwright::charts
