#pragma once
// Smith chart on the line's impedance: the locus of the input through resonance, the circle of the VSWR
// limit, the match. P. H. Smith, Electronics 12 (1939) 29.
#include "charts/figure.hpp"
#include "models/match_plot.hpp"

namespace loopwright::charts {

class SmithFigure : public Figure {
public:
    explicit SmithFigure(models::MatchPlot plot) : plot_(std::move(plot)) {}
    [[nodiscard]] const models::MatchPlot& plot() const { return plot_; }

    [[nodiscard]] QString id() const override;
    [[nodiscard]] QString title() const override;
    [[nodiscard]] QString description() const override;
    [[nodiscard]] double shape() const override { return 1.0; }
    QList<FigureWord> paint(QPainter& painter, const QRectF& room, const Appearance& look) const override;
    [[nodiscard]] QList<QPointF> points(const QRectF& room, const Appearance& look) const override;
    [[nodiscard]] QString point_text(qsizetype point) const override;

private:
    models::MatchPlot plot_;
};

/// Reflection coefficient (Z - Z0)/(Z + Z0): 0 in the middle of the chart, magnitude 1 on its rim.
[[nodiscard]] std::complex<double> reflection(std::complex<double> ohm, double line_ohm);

} // namespace loopwright::charts
