#pragma once
// The dial as a scale: all of it above, the part around the setting below, with the predicted and the
// calibrated mark, the usable span and where the dial stands now.
#include "charts/figure.hpp"
#include "models/dial_plot.hpp"

namespace loopwright::charts {

class DialFigure : public Figure {
public:
    explicit DialFigure(models::DialPlot plot) : plot_(std::move(plot)) {}
    [[nodiscard]] const models::DialPlot& plot() const { return plot_; }

    [[nodiscard]] QString id() const override;
    [[nodiscard]] QString title() const override;
    [[nodiscard]] QString description() const override;
    [[nodiscard]] double shape() const override { return 2.6; }
    QList<FigureWord> paint(QPainter& painter, const QRectF& room, const Appearance& look) const override;

private:
    models::DialPlot plot_;
};

} // namespace loopwright::charts
