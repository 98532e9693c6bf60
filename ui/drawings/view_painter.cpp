#include "drawings/view_painter.hpp"

#include "drawings/dimension.hpp"

#include <QFontMetricsF>
#include <QPainter>

#include <algorithm>
#include <array>

namespace loopwright::drawings {

namespace {

double line_height(const QPainter& painter) {
    return QFontMetricsF(painter.font(), painter.device()).height();
}

} // namespace

double ground_room_m(const View& view, const std::optional<double>& clearance_m) {
    if (!clearance_m) {
        return 0;
    }
    const double height = std::max(view.extent.height(), 0.3 * view.extent.width());
    return std::min(*clearance_m, *clearance_m <= highest_true_clearance * height
                                      ? *clearance_m
                                      : broken_clearance * height);
}

ViewPainter::ViewPainter(QPainter& painter, const QPalette& palette, const View& view, double scale,
                         const QPointF& origin)
    : painter_(painter), palette_(palette), view_(view), scale_(scale), origin_(origin),
      line_(line_height(painter)) {}

QPointF ViewPainter::at(const QPointF& metres) const {
    return {origin_.x() + scale_ * metres.x(), origin_.y() - scale_ * metres.y()};
}

QRectF ViewPainter::box() const {
    return QRectF(at(view_.extent.bottomLeft()), at(view_.extent.topRight())).normalized();
}

void ViewPainter::thin_pen(QPalette::ColorRole role) {
    painter_.setPen(QPen(palette_.color(role), line_ / 15.0));
    painter_.setBrush(Qt::NoBrush);
}

void ViewPainter::conductor() {
    QPolygonF path;
    for (const QPointF& point : view_.conductor) {
        path << at(point);
    }
    const double width = std::max(view_.width_m * scale_, line_ / 8.0);
    const double edge = line_ / 15.0;
    painter_.setBrush(Qt::NoBrush);
    painter_.setPen(QPen(palette_.color(QPalette::Text), width, Qt::SolidLine, Qt::FlatCap, Qt::RoundJoin));
    painter_.drawPolyline(path);
    if (width > 4.0 * edge) {
        painter_.setPen(QPen(palette_.color(QPalette::Midlight), width - 2.0 * edge, Qt::SolidLine,
                             Qt::FlatCap, Qt::RoundJoin));
        painter_.drawPolyline(path);
    }
}

void ViewPainter::capacitor(const QString& label, const QRectF& bounds) {
    const QPointF middle = at(view_.capacitor);
    const QPointF along(view_.along_capacitor.x(), -view_.along_capacitor.y());
    const QPointF across(-along.y(), along.x());
    const double plate = std::max(0.55 * line_, 1.2 * view_.width_m * scale_);
    const double gap = 0.16 * line_;
    painter_.setPen(QPen(palette_.color(QPalette::Text), line_ / 7.0, Qt::SolidLine, Qt::FlatCap));
    if (along.isNull()) {
        painter_.drawEllipse(middle, 0.4 * line_, 0.4 * line_);
    } else {
        for (const double side : std::array{-1.0, 1.0}) {
            const QPointF foot = middle + side * gap * along;
            painter_.drawLine(foot - plate * across, foot + plate * across);
        }
    }
    thin_pen(QPalette::Text);
    paint_label(painter_, QPointF(middle.x(), std::min(middle.y(), box().top()) - plate - 0.7 * line_), label,
                bounds);
}

void ViewPainter::coupling(const QPointF& centre, double radius_m, const QString& label,
                           const QRectF& bounds) {
    const QPointF middle = at(centre);
    const double radius = radius_m * scale_;
    painter_.setPen(QPen(palette_.color(QPalette::Text), std::max(1.0, line_ / 10.0)));
    constexpr int sixteenths = 16;
    constexpr int feed_opening = 10; // degrees to each side of the feed point, at the bottom
    painter_.drawArc(QRectF(middle.x() - radius, middle.y() - radius, 2.0 * radius, 2.0 * radius),
                     (270 + feed_opening) * sixteenths, (360 - 2 * feed_opening) * sixteenths);
    thin_pen(QPalette::Text);
    const QPointF above(middle.x(), middle.y() - radius - 0.7 * line_);
    constexpr double margin = 0.4, least = 5.0; // in line heights
    paint_label(painter_, above, label,
                room_inside(box(), above.y() + 0.5 * line_, margin * line_, least * line_, bounds));
}

void ViewPainter::width(const QString& text) {
    thin_pen(QPalette::PlaceholderText);
    const QRectF around = box();
    painter_.setPen(QPen(palette_.color(QPalette::Text), line_ / 18.0));
    paint_dimension(painter_, QLineF(around.left(), around.center().y(), around.right(), around.center().y()),
                    text);
}

void ViewPainter::height(const QString& text) {
    painter_.setPen(QPen(palette_.color(QPalette::Text), line_ / 18.0));
    const QRectF around = box();
    const double x = around.left() - 1.2 * line_;
    paint_extension(painter_, QPointF(around.center().x(), around.top()), QPointF(x, around.top()));
    paint_extension(painter_, QPointF(around.center().x(), around.bottom()), QPointF(x, around.bottom()));
    paint_dimension(painter_, QLineF(x, around.bottom(), x, around.top()), text);
}

namespace {
/// Room that a line of text takes between two lines, in line heights.
constexpr double text_room = 1.25;
} // namespace

/// Middle of the height's text: between the loop and the floor that people stand on, where that lies between.
double ViewPainter::height_text_y(double level, std::optional<double> standing_share) const {
    const double lowest = box().bottom();
    const double middle = (lowest + level) / 2.0;
    if (!standing_share || *standing_share >= 1.0) {
        return middle;
    }
    const double floor = level - *standing_share * (level - lowest);
    const bool label_below = level - floor >= text_room * line_;
    return label_below ? (lowest + floor) / 2.0 : std::min(middle, floor - (0.6 + text_room) * line_);
}

void ViewPainter::ground(double drawn_m, bool broken, const QString& height, const QString& name,
                         const QRectF& bounds, std::optional<double> standing_share) {
    painter_.setPen(QPen(palette_.color(QPalette::Text), line_ / 18.0));
    const QRectF around = box();
    const double level = around.bottom() + drawn_m * scale_;
    const double left = std::max(bounds.left(), around.left() - 3.0 * line_);
    const double right = std::min(bounds.right(), around.right() + 1.5 * line_);
    paint_ground(painter_, QLineF(left, level, right, level), 0.45 * line_);
    const QRectF below(left, bounds.top(), bounds.right() - left, bounds.height());
    paint_label(painter_, QPointF(left, level + 1.1 * line_), name, below);
    if (drawn_m * scale_ < 2.0) {
        return;
    }
    const double x = at({view_.lowest_x_m, 0}).x();
    paint_dimension(painter_, QLineF(x, around.bottom(), x, level), QString());
    if (broken) {
        const double middle = (around.bottom() + level) / 2.0;
        const double half = 0.3 * line_;
        painter_.setPen(QPen(palette_.color(QPalette::Base), line_ / 4.0));
        painter_.drawLine(QPointF(x, middle - 0.15 * line_), QPointF(x, middle + 0.15 * line_));
        painter_.setPen(QPen(palette_.color(QPalette::Text), line_ / 18.0));
        for (const double shift : std::array{-0.15, 0.15}) {
            const double y = middle + shift * line_;
            painter_.drawLine(QPointF(x - half, y + 0.15 * line_), QPointF(x + half, y - 0.15 * line_));
        }
    }
    const QFontMetricsF metrics(painter_.font(), painter_.device());
    const double text_x = x + 0.6 * line_ + metrics.horizontalAdvance(height) / 2.0;
    paint_label(painter_, QPointF(text_x, height_text_y(level, standing_share)), height, bounds);
}

void ViewPainter::standing(double drawn_m, double level_m, double clearance_m, const QString& text,
                           const QRectF& bounds) {
    const QRectF around = box();
    const double ground = around.bottom() + drawn_m * scale_;
    // Below the loop in the proportion that the height is drawn in, beside it to scale.
    const double true_y = around.bottom() - (level_m - clearance_m) * scale_;
    const double y = level_m < clearance_m ? ground - drawn_m * scale_ * level_m / clearance_m : true_y;
    const double shown_y = std::max(y, bounds.top() + 1.2 * line_);
    const double left = bounds.left(), right = std::max(left + 2.0 * line_, around.left() - 0.4 * line_);
    painter_.setPen(QPen(palette_.color(QPalette::Text), line_ / 12.0, Qt::DashLine));
    painter_.drawLine(QPointF(left, shown_y), QPointF(right, shown_y));
    painter_.setPen(QPen(palette_.color(QPalette::Text), line_ / 18.0));
    const bool below = level_m < clearance_m && ground - shown_y >= text_room * line_;
    const double text_y = shown_y + (below ? 0.6 : -0.6) * line_;
    const double wide = QFontMetricsF(painter_.font(), painter_.device()).horizontalAdvance(text);
    if (level_m < clearance_m) { // the line of the height does not run through the words
        painter_.fillRect(QRectF(left, text_y - 0.45 * line_, wide, 0.9 * line_),
                          palette_.brush(QPalette::Base));
    }
    paint_label(painter_, QPointF(left, text_y), text, bounds);
}

void ViewPainter::caption(const QString& text, const QRectF& bounds) {
    thin_pen(QPalette::PlaceholderText);
    paint_label(painter_, QPointF(box().center().x(), box().bottom() + 1.5 * line_), text, bounds);
}

} // namespace loopwright::drawings
