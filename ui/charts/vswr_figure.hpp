#pragma once
// VSWR over the frequency around the match, the capacitor left where it is: limit and bandwidth marked.
#include "charts/figure.hpp"
#include "models/match_plot.hpp"

namespace loopwright::charts {

class VswrFigure : public Figure {
public:
    explicit VswrFigure(models::MatchPlot plot) : plot_(std::move(plot)) {}
    [[nodiscard]] const models::MatchPlot& plot() const { return plot_; }

    [[nodiscard]] QString id() const override;
    [[nodiscard]] QString title() const override;
    [[nodiscard]] QString description() const override;
    QList<FigureWord> paint(QPainter& painter, const QRectF& room, const Appearance& look) const override;
    [[nodiscard]] QList<QPointF> points(const QRectF& room, const Appearance& look) const override;
    [[nodiscard]] QString point_text(qsizetype point) const override;

private:
    models::MatchPlot plot_;
};

} // namespace loopwright::charts
