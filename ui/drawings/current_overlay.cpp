#include "drawings/current_overlay.hpp"

#include "drawings/dimension.hpp"
#include "units/text.hpp"

#include <QFontMetricsF>
#include <QPainter>

#include <algorithm>
#include <cmath>
#include <utility>

namespace loopwright::drawings {

namespace {

constexpr double longest_lines = 1.5; ///< of a stroke, in line heights
constexpr double step_lines = 0.32;   ///< between strokes

QString ampere(double rms_A) {
    return QString::fromStdString(units::shown(units::amperes(rms_A)));
}

} // namespace

/// Where a stroke stands on paper.
struct CurrentOverlay::Place {
    double share = 0;
    QPointF foot, inward; ///< of unit length
    double rms_A = 0;
};

CurrentOverlay::CurrentOverlay(std::vector<jobs::CurrentSample> samples, QString conditions)
    : samples_(std::move(samples)), conditions_(std::move(conditions)) {}

double CurrentOverlay::at(double share) const {
    const auto after =
        std::lower_bound(samples_.begin(), samples_.end(), share,
                         [](const jobs::CurrentSample& sample, double s) { return sample.share < s; });
    if (after == samples_.begin()) {
        return samples_.front().rms_A;
    }
    if (after == samples_.end()) {
        return samples_.back().rms_A;
    }
    const jobs::CurrentSample& before = *std::prev(after);
    const double part = (share - before.share) / std::max(after->share - before.share, 1e-12);
    return before.rms_A + part * (after->rms_A - before.rms_A);
}

double CurrentOverlay::largest() const {
    double most = 0;
    for (const jobs::CurrentSample& sample : samples_) {
        most = std::max(most, sample.rms_A);
    }
    return most;
}

QString CurrentOverlay::legend() const {
    const QString text = tr("strokes: current, rms, up to %1 (%2)").arg(ampere(largest()), conditions_);
    return stale_ ? tr("%1; of an older state").arg(text) : text;
}

std::vector<CurrentOverlay::Place> CurrentOverlay::places(const QPolygonF& path, double step_px) const {
    std::vector<double> along{0.0};
    for (qsizetype i = 1; i < path.size(); ++i) {
        along.push_back(along.back() + QLineF(path[i - 1], path[i]).length());
    }
    const double length = along.back();
    const QPointF middle = path.boundingRect().center();
    std::vector<Place> all;
    const int count = std::max(8, static_cast<int>(length / step_px));
    std::size_t piece = 1;
    for (int i = 0; length > 0.0 && i <= count; ++i) {
        const double s = length * i / count;
        while (piece + 1 < along.size() && along[piece] < s) {
            ++piece;
        }
        const auto at = static_cast<qsizetype>(piece);
        const QPointF step = path[at] - path[at - 1];
        const double size = std::max(along[piece] - along[piece - 1], 1e-9);
        QPointF inward(-step.y() / size, step.x() / size);
        const QPointF foot = path[at - 1] + step * ((s - along[piece - 1]) / size);
        if (QPointF::dotProduct(inward, middle - foot) < 0.0) {
            inward = -inward;
        }
        all.push_back({s / length, foot, inward, this->at(s / length)});
    }
    return all;
}

void CurrentOverlay::paint(QPainter& painter, const QPalette& palette, const View& view,
                           const std::function<QPointF(const QPointF&)>& on_paper, int turns, bool stacked,
                           const QRectF& bounds) const {
    const double line = QFontMetricsF(painter.font(), painter.device()).height();
    QPolygonF path;
    for (const QPointF& point : view.conductor) {
        path << on_paper(point);
    }
    const double scale = QLineF(on_paper({0, 0}), on_paper({1, 0})).length();
    const double half_width = 0.5 * view.width_m * scale;
    // Turns behind each other get a strip of their own, one inside the other.
    const double longest = longest_lines * line / (stacked ? std::max(1.0, 0.6 * turns) : 1.0);
    const auto all = places(path, step_lines * line);
    const double most = std::max(largest(), 1e-12);
    painter.setPen(QPen(palette.color(stale_ ? QPalette::PlaceholderText : QPalette::Text), line / 24.0));
    for (const Place& place : all) {
        const int turn = std::min(turns - 1, static_cast<int>(place.share * turns));
        const double from = half_width + line / 10.0 + (stacked ? turn * (longest + line / 6.0) : 0.0);
        const QPointF begin = place.foot + from * place.inward;
        painter.drawLine(begin, begin + longest * place.rms_A / most * place.inward);
    }
    paint_numbers(painter, palette, all, turns, bounds);
}

void CurrentOverlay::paint_numbers(QPainter& painter, const QPalette& palette, const std::vector<Place>& all,
                                   int turns, const QRectF& bounds) const {
    const QFontMetricsF metrics(painter.font(), painter.device());
    painter.setPen(palette.color(stale_ ? QPalette::PlaceholderText : QPalette::Text));
    // One side is as the other: beside the capacitor, a quarter on, opposite the capacitor.
    const std::vector<double> shares =
        turns == 1 ? std::vector{0.09, 0.25, 0.45} : std::vector{0.15 / turns, 0.5 - 0.05 / turns};
    for (const double share : shares) {
        const auto place = std::lower_bound(all.begin(), all.end(), share,
                                            [](const Place& one, double s) { return one.share < s; });
        if (place == all.end()) {
            continue;
        }
        const QString text = ampere(place->rms_A);
        const double width = metrics.horizontalAdvance(text), height = metrics.height();
        const QPointF out = -place->inward;
        const QPointF centre =
            place->foot + QPointF(out.x() * (width / 2.0 + 0.6 * height), out.y() * 1.1 * height);
        QRectF patch(0, 0, width + 0.3 * height, 0.95 * height);
        patch.moveCenter(centre);
        if (bounds.contains(patch)) {
            painter.fillRect(patch, palette.color(QPalette::Base));
        }
        paint_label(painter, centre, text, bounds);
    }
}

} // namespace loopwright::drawings
