#include "drawings/loop_drawing.hpp"

#include "drawings/dimension.hpp"
#include "drawings/view_painter.hpp"
#include "models/model_words.hpp"
#include "models/quantity_words.hpp"

#include <QFontMetricsF>
#include <QPainter>

#include <algorithm>
#include <cmath>

namespace loopwright::drawings {

namespace {

/// Room around a view in line heights: title and capacitor's label; dimension of the height; edge; below.
constexpr double room_above = 3.4, room_left = 3.2, room_right = 1.2, room_below = 2.2;
/// Room at the foot of the drawing for the conductor's text and the scale bar.
constexpr double foot_lines = 2.6;
/// More of both where the current is drawn: numbers at the right, its legend.
constexpr double room_of_numbers = 4.0, legend_lines = 1.2;

/// 1, 2 or 5 times a power of ten, the largest not above x.
double round_length(double x) {
    const double decade = std::pow(10.0, std::floor(std::log10(x)));
    const double rest = x / decade;
    return decade * (rest >= 5.0 ? 5.0 : rest >= 2.0 ? 2.0 : 1.0);
}

/// The part of a rectangle that a view may fill.
QRectF room_for_view(const QRectF& rect, double line) {
    return rect.adjusted(room_left * line, room_above * line, -room_right * line, -room_below * line);
}

double fitting_scale(const View& view, double ground_m, const QRectF& rect, double line) {
    const QRectF room = room_for_view(rect, line);
    const double tall = view.extent.height() + ground_m;
    return std::min(room.width() / std::max(view.extent.width(), 1e-3), room.height() / std::max(tall, 1e-3));
}

/// Where (0, 0) of the view lies so that the view with its ground sits in the middle of its room.
QPointF origin_of(const View& view, double ground_m, const QRectF& rect, double line, double scale) {
    const QRectF room = room_for_view(rect, line);
    const QPointF middle(view.extent.center().x(), view.extent.center().y() - ground_m / 2.0);
    return {room.center().x() - scale * middle.x(), room.center().y() + scale * middle.y()};
}

} // namespace

LoopDrawing::LoopDrawing(const design::Design& design, units::UnitSystem system)
    : design_(design), system_(system), views_(views_of(design)) {}

QString LoopDrawing::length(double metres) const {
    return models::short_text(metres, units::Dimension::length, system_);
}

QString LoopDrawing::capacitor_text() const {
    return tr("capacitor %1 to %2")
        .arg(models::short_text(design_.capacitor.minimum), models::short_text(design_.capacitor.maximum));
}

QString LoopDrawing::conductor_text() const {
    const design::Conductor& conductor = design_.conductor;
    const QString diameter = length(conductor.diameter.value.value());
    QString form;
    switch (conductor.form) {
    case design::ConductorForm::wire:
        form = tr("wire %1").arg(diameter);
        break;
    case design::ConductorForm::tube:
        form = tr("tube %1, wall %2").arg(diameter, length(conductor.wall.value.value()));
        break;
    case design::ConductorForm::strip:
        form = tr("strip %1 × %2")
                   .arg(length(conductor.width.value.value()), length(conductor.thickness.value.value()));
        break;
    case design::ConductorForm::braid:
        form = tr("braid %1").arg(diameter);
        break;
    case design::ConductorForm::stranded:
        form = tr("stranded wire %1").arg(diameter);
        break;
    }
    return tr("%1; %2 of conductor").arg(form, length(views_.conductor_length_m));
}

QString LoopDrawing::coupling_text() const {
    const design::Coupling& coupling = *design_.coupling;
    switch (coupling.kind) {
    case design::CouplingKind::loop:
        return tr("coupling loop %1").arg(length(coupling.diameter.value.value()));
    case design::CouplingKind::tap:
        return tr("rod %1 long, %2 off")
            .arg(length(coupling.tap_length.value.value()), length(coupling.tap_spacing.value.value()));
    case design::CouplingKind::transformer:
        break;
    }
    return coupling.turns == 1 ? tr("core, one turn of the line (not to scale)")
                               : tr("core, %1 turns of the line (not to scale)").arg(coupling.turns);
}

QString LoopDrawing::turns_text() const {
    if (design_.loop.turns < 2) {
        return {};
    }
    return tr("%n turns, %1 apart", nullptr, design_.loop.turns)
        .arg(length(design_.loop.turn_spacing.value.value()));
}

void LoopDrawing::paint(QPainter& painter, const QRectF& rect, const QPalette& palette) const {
    painter.save();
    painter.setRenderHint(QPainter::Antialiasing);
    const double line = QFontMetricsF(painter.font(), painter.device()).height();
    const double foot = foot_lines + (current_ ? legend_lines : 0.0);
    const QRectF upper =
        rect.adjusted(0, 0, views_.side || !current_ ? 0.0 : -room_of_numbers * line, -foot * line);
    QRectF front = upper, side = upper;
    if (views_.side) {
        const double depth = views_.side->extent.width(), across = views_.front.extent.width();
        front.setRight(upper.right() - std::clamp(depth / (depth + across), 0.3, 0.5) * upper.width());
        side.setLeft(front.right());
    }
    const double ground_m = ground_room_m(standing_view(), views_.clearance_m);
    double scale = fitting_scale(views_.front, views_.side ? 0.0 : ground_m, front, line);
    if (views_.side) {
        scale = std::min(scale, fitting_scale(*views_.side, ground_m, side, line));
    }
    if (scale > 0.0) {
        paint_front(painter, front, palette, scale);
        if (views_.side) {
            paint_side(painter, side, palette, scale);
        }
        paint_foot(painter, rect, palette, scale);
    }
    painter.restore();
}

void LoopDrawing::paint_front(QPainter& painter, const QRectF& rect, const QPalette& palette,
                              double scale) const {
    const double line = QFontMetricsF(painter.font(), painter.device()).height();
    const View& view = views_.front;
    const double ground_m = views_.side ? 0.0 : ground_room_m(view, views_.clearance_m);
    ViewPainter on(painter, palette, view, scale, origin_of(view, ground_m, rect, line, scale));
    if (!views_.side) {
        paint_site(on, ground_m, rect);
    }
    paint_current(painter, rect, palette, on);
    on.conductor();
    on.capacitor(capacitor_text(), rect);
    if (views_.coupling_centre) {
        on.coupling(*views_.coupling_centre, design_.coupling->diameter.value.value() / 2.0, coupling_text(),
                    rect);
    } else if (views_.rod) {
        on.rod(*views_.rod, coupling_text(), rect);
    } else if (views_.core) {
        on.core(*views_.core, design_.coupling->turns, coupling_text(), rect);
    }
    on.width(length(view.extent.width()));
    if (std::abs(view.extent.height() / view.extent.width() - 1.0) > 0.005) {
        on.height(length(view.extent.height()));
    }
    painter.setPen(palette.color(QPalette::PlaceholderText));
    paint_label(painter, rect.topLeft(), views_.side ? tr("along the axis") : QString(), rect);
}

void LoopDrawing::paint_side(QPainter& painter, const QRectF& rect, const QPalette& palette,
                             double scale) const {
    const double line = QFontMetricsF(painter.font(), painter.device()).height();
    const View& view = *views_.side;
    const double ground_m = ground_room_m(view, views_.clearance_m);
    ViewPainter on(painter, palette, view, scale, origin_of(view, ground_m, rect, line, scale));
    paint_site(on, ground_m, rect);
    on.conductor();
    on.capacitor(turns_text(), rect);
    painter.setPen(palette.color(QPalette::PlaceholderText));
    paint_label(painter, rect.topLeft(), tr("from the side"), rect);
}

/// What the loop stands over, and where people stand.
void LoopDrawing::paint_site(ViewPainter& on, double ground_m, const QRectF& rect) const {
    const QString name = models::ground_name(design_.site.ground);
    if (!views_.clearance_m) {
        on.caption(name, rect);
        return;
    }
    const auto share =
        views_.standing_m ? std::optional(*views_.standing_m / *views_.clearance_m) : std::nullopt;
    on.ground(ground_m, ground_m < *views_.clearance_m, length(*views_.clearance_m), name, rect, share);
    if (views_.standing_m) {
        on.standing(ground_m, *views_.standing_m, *views_.clearance_m,
                    tr("people stand at %1").arg(length(*views_.standing_m)), rect);
    }
}

void LoopDrawing::paint_current(QPainter& painter, const QRectF& rect, const QPalette& palette,
                                const ViewPainter& on) const {
    if (current_) {
        const bool stacked = design_.loop.arrangement == design::Arrangement::stack;
        const double line = QFontMetricsF(painter.font(), painter.device()).height();
        current_->paint(
            painter, palette, views_.front, [&on](const QPointF& metres) { return on.at(metres); },
            design_.loop.turns, stacked, rect.adjusted(0, 0, room_of_numbers * line, 0));
    }
}

void LoopDrawing::paint_foot(QPainter& painter, const QRectF& rect, const QPalette& palette,
                             double scale) const {
    const QFontMetricsF metrics(painter.font(), painter.device());
    const double line = metrics.height();
    painter.setPen(QPen(palette.color(QPalette::Text), line / 18.0));
    const double base = rect.bottom() - 0.3 * line;
    painter.drawText(QPointF(rect.left(), base - metrics.descent()),
                     metrics.elidedText(conductor_text(), Qt::ElideRight, rect.width()));
    if (current_) {
        painter.drawText(QPointF(rect.left(), base - metrics.descent() - foot_lines * line),
                         metrics.elidedText(current_->legend(), Qt::ElideRight, rect.width()));
    }

    const double foot_m = 0.3048;
    const double unit_m = system_ == units::UnitSystem::imperial ? foot_m : 1.0;
    const double bar_m = unit_m * round_length(0.28 * rect.width() / scale / unit_m);
    const double x = rect.right() - bar_m * scale;
    const QString text =
        system_ == units::UnitSystem::imperial ? tr("%1 ft").arg(bar_m / foot_m) : length(bar_m);
    const bool crowded = metrics.horizontalAdvance(conductor_text()) > x - rect.left() - line;
    const double y = base - (crowded ? 1.3 : 0.2) * line;
    painter.drawLine(QPointF(x, y), QPointF(rect.right(), y));
    painter.drawLine(QPointF(x, y - 0.25 * line), QPointF(x, y + 0.25 * line));
    painter.drawLine(QPointF(rect.right(), y - 0.25 * line), QPointF(rect.right(), y + 0.25 * line));
    painter.drawText(
        QPointF(rect.right() - bar_m * scale / 2.0 - metrics.horizontalAdvance(text) / 2.0, y - 0.35 * line),
        text);
}

QString LoopDrawing::description() const {
    QString text = tr("Drawing of the loop to scale: %1 wide, %2 high, %3, %4.")
                       .arg(length(views_.front.extent.width()), length(views_.front.extent.height()),
                            conductor_text(), capacitor_text());
    const QString ground = models::ground_name(design_.site.ground);
    text += QLatin1Char(' ') + (views_.clearance_m
                                    ? tr("Lowest point %1 above %2.").arg(length(*views_.clearance_m), ground)
                                    : tr("In %1.").arg(ground));
    if (views_.standing_m) {
        text += QLatin1Char(' ') + tr("People stand at %1.").arg(length(*views_.standing_m));
    }
    if (design_.coupling) {
        text += QLatin1Char(' ') + tr("Opposite the capacitor: %1.").arg(coupling_text());
    }
    if (current_) {
        text += QLatin1Char(' ') + tr("Drawn on it: %1.").arg(current_->legend());
    }
    return text;
}

} // namespace loopwright::drawings
