#pragma once
// The current around the loop, drawn on its outline: strokes across the conductor, as long as the current is
// strong, and its value at a few places. Reads without colour.
#include "drawings/loop_views.hpp"
#include "jobs/point_job.hpp"

#include <QCoreApplication>
#include <QPalette>
#include <QPointF>
#include <QRectF>
#include <QString>

#include <functional>
#include <vector>

class QPainter;

namespace loopwright::drawings {

class CurrentOverlay {
    Q_DECLARE_TR_FUNCTIONS(CurrentOverlay)
public:
    /// samples: ascending in share, at least two. conditions: frequency, power and model, in words.
    CurrentOverlay(std::vector<jobs::CurrentSample> samples, QString conditions);
    /// Belongs to an older state: painted grey, and the legend says so.
    void set_stale(bool stale) { stale_ = stale; }

    /// The current at a share of the conductor's length, linear between the samples [A rms].
    [[nodiscard]] double at(double share) const;
    [[nodiscard]] double largest() const;
    /// What the strokes mean, with the numbers, in one line.
    [[nodiscard]] QString legend() const;

    /// on_paper: from metres of the view to the painter. turns: of the loop; stacked: turns lie behind each
    /// other.
    void paint(QPainter& painter, const QPalette& palette, const View& view,
               const std::function<QPointF(const QPointF&)>& on_paper, int turns, bool stacked,
               const QRectF& bounds) const;

private:
    struct Place;
    [[nodiscard]] std::vector<Place> places(const QPolygonF& path, double step_px) const;
    void paint_numbers(QPainter& painter, const QPalette& palette, const std::vector<Place>& all, int turns,
                       const QRectF& bounds) const;
    std::vector<jobs::CurrentSample> samples_;
    QString conditions_;
    bool stale_ = false;
};

} // namespace loopwright::drawings
