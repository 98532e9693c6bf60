#pragma once
// Where a limit is exceeded around the loop, to scale: from above or from the side, with the loop, a person
// for comparison, and the outline of each tier.
#include "charts/figure.hpp"
#include "models/surroundings_plot.hpp"

namespace loopwright::charts {

enum class SeenFrom { above, side };

class SurroundingsFigure : public Figure {
public:
    /// brief: fewer words below, for a page that says the rest.
    SurroundingsFigure(models::SurroundingsPlot plot, SeenFrom from, bool brief = false)
        : plot_(std::move(plot)), from_(from), brief_(brief) {}
    [[nodiscard]] const models::SurroundingsPlot& plot() const { return plot_; }

    [[nodiscard]] QString id() const override;
    [[nodiscard]] QString title() const override;
    [[nodiscard]] QString description() const override;
    [[nodiscard]] double shape() const override { return from_ == SeenFrom::above ? 1.0 : 1.4; }
    QList<FigureWord> paint(QPainter& painter, const QRectF& room, const Appearance& look) const override;
    /// On the outline for the general public.
    [[nodiscard]] QList<QPointF> points(const QRectF& room, const Appearance& look) const override;
    [[nodiscard]] QString point_text(qsizetype point) const override;

private:
    struct Scene;
    [[nodiscard]] Scene scene(const QRectF& room, const Appearance& look) const;
    [[nodiscard]] const models::OutlineView& view() const {
        return from_ == SeenFrom::above ? plot_.above : plot_.side;
    }
    [[nodiscard]] QString footer() const;
    models::SurroundingsPlot plot_;
    SeenFrom from_;
    bool brief_;
};

} // namespace loopwright::charts
