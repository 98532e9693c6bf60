#pragma once
// Axes, grid and titles of a figure with two straight scales. Positions: what the spans count in (a
// logarithmic scale has log10 of its values, with ticks at such positions).
#include "charts/lettering.hpp"
#include "charts/scales.hpp"

#include <vector>

namespace loopwright::charts {

struct FrameAxis {
    Span span;
    std::vector<Tick> ticks{}; ///< at positions
    QString title{};
    double least_label_px = 0; ///< so that frames above each other share their left side
    QString shorter_title{};   ///< where the title does not fit; empty: the title is shortened
};

class Frame {
public:
    /// Takes room for labels from the rectangle; the rest is the plot's area.
    Frame(const QRectF& room, const Appearance& look, FrameAxis x, FrameAxis y);

    [[nodiscard]] const QRectF& area() const { return area_; }
    [[nodiscard]] double px_of_x(double position) const;
    [[nodiscard]] double px_of_y(double position) const;
    [[nodiscard]] QPointF at(double x, double y) const { return {px_of_x(x), px_of_y(y)}; }
    /// Grid and the lines of both axes.
    void paint(QPainter& painter, const Appearance& look) const;
    /// The labels of ticks and axes.
    void write(Lettering& words) const;

private:
    QRectF area_;
    FrameAxis x_, y_;
    double label_width_ = 0, line_ = 0;
};

/// Ticks given in values, at positions of a logarithmic scale.
[[nodiscard]] std::vector<Tick> ticks_at_log10(std::vector<Tick> ticks);

/// A horizontal limit across an area at y, hatched above (reach < 0) or below (reach > 0); returns what it
/// covers.
QRectF paint_limit(QPainter& painter, const QRectF& area, double y, bool hatch_above, const Appearance& look);

} // namespace loopwright::charts
