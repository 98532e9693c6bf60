// Rod and core of a coupling, on paper.
#include "drawings/dimension.hpp"
#include "drawings/view_painter.hpp"

#include <QFontMetricsF>
#include <QPainter>

#include <algorithm>
#include <cmath>

namespace loopwright::drawings {

namespace {
/// Height of a label inside the loop over its lowest point, as a share of the loop's height: between what is
/// opposite the capacitor and the dimension across the middle.
constexpr double label_share = 0.27;
} // namespace

/// A label in the lower half of the loop with a thin line to what it names.
void ViewPainter::label_inside(const QPointF& of, const QString& label, const QRectF& bounds) {
    const QRectF around = box();
    const double wide = QFontMetricsF(painter_.font(), painter_.device()).horizontalAdvance(label);
    const double y = around.bottom() - std::max(label_share * around.height(), 2.2 * line_);
    const QPointF centre(around.center().x(), y);
    thin_pen(QPalette::Text);
    const QPointF from(std::clamp(of.x(), centre.x() - 0.45 * wide, centre.x() + 0.45 * wide),
                       of.y() > y ? y + 0.55 * line_ : y - 0.55 * line_);
    painter_.drawLine(from, of);
    paint_label(painter_, centre, label, bounds);
}

void ViewPainter::rod(const RodView& rod, const QString& label, const QRectF& bounds) {
    QPolygonF path;
    for (const QPointF& point : rod.path) {
        path << at(point);
    }
    if (path.size() < 3) {
        return;
    }
    const double width = std::max(rod.width_m * scale_, line_ / 10.0);
    painter_.setBrush(Qt::NoBrush);
    painter_.setPen(QPen(palette_.color(QPalette::Text), width, Qt::SolidLine, Qt::FlatCap, Qt::RoundJoin));
    painter_.drawPolyline(QPolygonF(path.mid(1)));
    // The two places that the line is joined to.
    const double terminal = std::max(0.16 * line_, 0.7 * width);
    painter_.setPen(QPen(palette_.color(QPalette::Text), line_ / 12.0));
    painter_.setBrush(palette_.color(QPalette::Base));
    for (const QPointF& end : {path[0], path[1]}) {
        painter_.drawEllipse(end, terminal, terminal);
    }
    painter_.setBrush(Qt::NoBrush);
    label_inside(path[path.size() / 2], label, bounds);
}

void ViewPainter::core(const CoreView& core, int turns, const QString& label, const QRectF& bounds) {
    const QPointF middle = at(core.at);
    const QPointF along(core.along.x(), -core.along.y());
    const double half_length = 0.45 * line_;
    const double half_height = std::max(0.75 * line_, 0.8 * view_.width_m * scale_);
    painter_.save();
    painter_.translate(middle);
    painter_.rotate(std::atan2(along.y(), along.x()) * 180.0 / 3.14159265358979);
    painter_.setPen(QPen(palette_.color(QPalette::Text), line_ / 12.0));
    painter_.setBrush(palette_.color(QPalette::Mid));
    // The ring seen from its side: the conductor goes through, so it shows above and below it.
    const double half_wire = std::max(0.5 * view_.width_m * scale_, line_ / 16.0);
    for (const double side : {-1.0, 1.0}) {
        const double from = side * half_wire, to = side * half_height;
        painter_.drawRect(QRectF(QPointF(-half_length, std::min(from, to)),
                                 QSizeF(2.0 * half_length, std::abs(to - from))));
    }
    // Turns of the line on the half that lies inside the loop, as many as can be told apart.
    constexpr int most_drawn = 6;
    const int drawn = std::clamp(turns, 1, most_drawn);
    const QPointF inward = at(QPointF(view_.extent.center())) - middle;
    const double side = inward.x() * -along.y() + inward.y() * along.x() < 0.0 ? -1.0 : 1.0;
    for (int i = 0; i < drawn; ++i) {
        const double x = half_length * (2.0 * (i + 0.5) / drawn - 1.0);
        painter_.drawLine(QPointF(x, side * half_wire), QPointF(x, side * (half_height + 0.12 * line_)));
    }
    painter_.restore();
    painter_.setBrush(Qt::NoBrush);
    const double reach = std::hypot(inward.x(), inward.y());
    const QPointF top = reach > 0.0 ? middle + inward / reach * (half_height + 0.2 * line_) : middle;
    label_inside(top, label, bounds);
}

} // namespace loopwright::drawings
