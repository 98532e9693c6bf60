#pragma once
// Finds room for words among curves: of several places the one that covers least.
#include <QList>
#include <QPointF>
#include <QPolygonF>
#include <QRectF>

namespace loopwright::charts {

class LabelPlacer {
public:
    explicit LabelPlacer(const QRectF& bounds);
    /// A line that words should not cover; a gap between two polygons is free room.
    void avoid(const QPolygonF& line);
    /// Room that is taken.
    void take(const QRectF& rect);
    /// The best of the candidates, the earlier of equals; candidates outside the bounds are moved inside. The
    /// place is taken then. Never empty candidates.
    [[nodiscard]] QRectF place(const QList<QRectF>& candidates);
    /// True if the last place covers no other words.
    [[nodiscard]] bool last_is_free() const { return last_is_free_; }

private:
    [[nodiscard]] QRectF inside(QRectF rect) const;
    [[nodiscard]] double overlap(const QRectF& rect) const;
    QRectF bounds_;
    QList<QPointF> points_; ///< of the lines, close together
    QList<QRectF> taken_;
    bool last_is_free_ = true;
};

} // namespace loopwright::charts
