#pragma once
// Gain over direction on a disc: the radius counts decibels evenly, from the rim inward. The elevation cut is
// a half disc over ground, a whole one in free space; the azimuth cut is seen from above.
#include "charts/figure.hpp"
#include "models/pattern_plot.hpp"

namespace loopwright::charts {

enum class PolarCut { elevation, azimuth };

class PolarFigure : public Figure {
public:
    PolarFigure(models::PatternPlot plot, PolarCut cut) : plot_(std::move(plot)), cut_(cut) {}
    [[nodiscard]] const models::PatternPlot& plot() const { return plot_; }

    [[nodiscard]] QString id() const override;
    [[nodiscard]] QString title() const override;
    [[nodiscard]] QString description() const override;
    [[nodiscard]] double shape() const override;
    QList<FigureWord> paint(QPainter& painter, const QRectF& room, const Appearance& look) const override;
    [[nodiscard]] QList<QPointF> points(const QRectF& room, const Appearance& look) const override;
    [[nodiscard]] QString point_text(qsizetype point) const override;

private:
    struct Scene;
    [[nodiscard]] Scene scene(const QRectF& room, const Appearance& look) const;
    [[nodiscard]] const models::PolarCurve& loop() const;
    [[nodiscard]] const std::optional<models::PolarCurve>& dipole() const;
    [[nodiscard]] bool half() const { return cut_ == PolarCut::elevation && !plot_.free_space; }
    [[nodiscard]] QString footer() const;
    models::PatternPlot plot_;
    PolarCut cut_;
};

/// The radial scale: a rim at a multiple of 5 dBi not below any gain drawn, and so many dB to the middle.
inline constexpr double polar_range_dB = 40.0;
[[nodiscard]] double polar_rim_dBi(const models::PatternPlot& plot);

} // namespace loopwright::charts
