#include "charts/label_placer.hpp"

#include <algorithm>
#include <cmath>

namespace loopwright::charts {

namespace {
constexpr double spacing_px = 4.0; ///< of the points a line is known by
} // namespace

LabelPlacer::LabelPlacer(const QRectF& bounds) : bounds_(bounds) {}

void LabelPlacer::avoid(const QPolygonF& line) {
    for (qsizetype i = 0; i + 1 < line.size(); ++i) {
        const QPointF step = line[i + 1] - line[i];
        const double length = std::hypot(step.x(), step.y());
        const int pieces = std::clamp(static_cast<int>(length / spacing_px), 1, 500);
        for (int piece = 0; piece < pieces; ++piece) {
            points_.append(line[i] + step * (static_cast<double>(piece) / pieces));
        }
    }
    if (!line.isEmpty()) {
        points_.append(line.last());
    }
}

void LabelPlacer::take(const QRectF& rect) {
    taken_.append(rect);
}

QRectF LabelPlacer::inside(QRectF rect) const {
    rect.moveLeft(std::max(bounds_.left(), std::min(rect.left(), bounds_.right() - rect.width())));
    rect.moveTop(std::max(bounds_.top(), std::min(rect.top(), bounds_.bottom() - rect.height())));
    return rect;
}

double LabelPlacer::overlap(const QRectF& rect) const {
    double area = 0;
    for (const QRectF& other : taken_) {
        const QRectF common = rect.intersected(other);
        area += common.width() * common.height();
    }
    return area;
}

QRectF LabelPlacer::place(const QList<QRectF>& candidates) {
    constexpr double of_words = 100.0;
    QRectF best;
    double least = -1.0, best_overlap = 0.0;
    for (const QRectF& candidate : candidates) {
        const QRectF rect = inside(candidate);
        const auto covered = std::count_if(points_.begin(), points_.end(),
                                           [&](const QPointF& point) { return rect.contains(point); });
        const double shared = overlap(rect);
        const double cost = static_cast<double>(covered) + of_words * shared;
        if (least < 0.0 || cost < least) {
            least = cost;
            best = rect;
            best_overlap = shared;
        }
        if (cost == 0.0) {
            break;
        }
    }
    last_is_free_ = best_overlap < 1.0;
    take(best);
    return best;
}

} // namespace loopwright::charts
