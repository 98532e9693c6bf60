#include "charts/surroundings_figure.hpp"

#include "charts/lettering.hpp"
#include "charts/person.hpp"
#include "charts/strokes.hpp"
#include "charts/text.hpp"
#include "models/keying_words.hpp"
#include "models/quantity_words.hpp"

#include <QCoreApplication>
#include <QPainter>

#include <algorithm>
#include <cmath>

namespace loopwright::charts {

namespace {

using models::OutlineCurve;

constexpr double room_px = 6.0, loop_px = 2.5, thin_px = 0.7, least_half_m = 1.2, beside_m = 0.45,
                 scale_share = 0.3;
constexpr int zone_alpha = 34;

models::Curve style_of(const OutlineCurve& curve) {
    return {{}, {}, curve.label, models::Measure::number, models::Meaning::figure, curve.main ? 0 : 1};
}

/// 0.5, 1, 2 or 5 times a power of ten, as long as fits.
double round_below(double metres) {
    const double decade = std::pow(10.0, std::floor(std::log10(metres)));
    for (const double step : {5.0, 2.0, 1.0}) {
        if (step * decade <= metres) {
            return step * decade;
        }
    }
    return decade;
}

QPolygonF polygon_on_paper(const QPolygonF& metres, const QPointF& origin, double px_per_m) {
    QPolygonF all;
    for (const QPointF& point : metres) {
        all << QPointF(origin.x() + px_per_m * point.x(), origin.y() - px_per_m * point.y());
    }
    return all;
}

/// The points of all pieces.
QPolygonF joined(const QList<QPolygonF>& pieces) {
    QPolygonF all;
    for (const QPolygonF& piece : pieces) {
        all << piece;
    }
    return all;
}

} // namespace

struct SurroundingsFigure::Scene {
    QRectF area, below;
    QPointF origin; ///< of the axis on the ground, or of the loop's centre
    double px_per_m = 1;
    QPointF person_m; ///< where the person stands
};

QString SurroundingsFigure::id() const {
    return from_ == SeenFrom::above ? QStringLiteral("around-above") : QStringLiteral("around-side");
}

QString SurroundingsFigure::title() const {
    const QString what = from_ == SeenFrom::above ? Text::tr("From above") : Text::tr("From the side");
    return plot_.established() ? what + QStringLiteral(", ") + models::place_words(plot_) : what;
}

QString SurroundingsFigure::footer() const {
    if (!plot_.established()) {
        return Text::tr("Not established: %1").arg(plot_.reason);
    }
    const QString distances = (plot_.bands.isEmpty() ? QString() : plot_.bands + QStringLiteral(" \u00b7 ")) +
                              plot_.limit + QStringLiteral(" \u00b7 ") + models::distances_in_words(plot_);
    const QString cut =
        std::any_of(plot_.side.curves.begin(), plot_.side.curves.end(),
                    [](const OutlineCurve& curve) { return curve.cut_above; })
            ? QLatin1Char(' ') + Text::tr("Cut off above: it reaches higher than fields are computed.")
            : QString();
    const QString right = Text::tr("To the right: %1.").arg(plot_.side.right) + cut;
    const bool above = from_ == SeenFrom::above;
    if (brief_) {
        return above ? distances : right + QLatin1Char(' ') + models::line_words(plot_);
    }
    QStringList lines = {distances};
    lines << (above ? Text::tr("Inside an outline a standing person's field exceeds the limit, as computed.")
                    : right + QLatin1Char(' ') + Text::tr("Inside an outline the field exceeds the limit."));
    lines << models::line_words(plot_) << models::not_covered();
    return lines.join(QLatin1Char('\n'));
}

QString SurroundingsFigure::description() const {
    return title() + QStringLiteral(". ") + footer().replace(QLatin1Char('\n'), QStringLiteral(". "));
}

SurroundingsFigure::Scene SurroundingsFigure::scene(const QRectF& room, const Appearance& look) const {
    const QFontMetricsF metrics(look.font);
    const double line = metrics.height(), width = room.width() - 2.0 * room_px;
    const double below =
        metrics.boundingRect(QRectF(0, 0, width, 1e5), Qt::TextWordWrap, footer()).height() + room_px;
    Scene result;
    result.area = room.adjusted(room_px, 2.2 * line, -room_px, -below - line);
    result.below = QRectF(room.left() + room_px, room.bottom() - below, width, below - room_px);
    QRectF extent = view().loop.boundingRect().united(QRectF(-least_half_m, 0, 2.0 * least_half_m, 0.01));
    double farthest_m = extent.right();
    for (const OutlineCurve& curve : view().curves) {
        if (!curve.outer().isEmpty()) {
            const QRectF bounds = joined(curve.outer()).boundingRect();
            extent = extent.united(bounds);
            farthest_m = std::max(farthest_m, bounds.right());
        }
    }
    const double stand_m = farthest_m + beside_m;
    if (from_ == SeenFrom::above) {
        result.person_m = QPointF(stand_m, 0.0);
        extent = extent.united(QRectF(stand_m - 0.3, -least_half_m, 0.6, 2.0 * least_half_m));
    } else {
        const double feet_m = plot_.free_space ? -0.5 * person_m : plot_.standing_m;
        result.person_m = QPointF(stand_m, feet_m);
        extent = extent.united(QRectF(stand_m - 0.3, feet_m, 0.6, person_m + 0.1));
        if (!plot_.free_space) {
            extent = extent.united(QRectF(-least_half_m, -0.05, 2.0 * least_half_m, 0.05));
        }
    }
    result.px_per_m = std::max(
        1e-3, std::min(result.area.width() / extent.width(), result.area.height() / extent.height()));
    // y upward: top() of the extent is the lowest.
    const QPointF middle = extent.center();
    result.origin = QPointF(result.area.center().x() - result.px_per_m * middle.x(),
                            result.area.center().y() + result.px_per_m * middle.y());
    return result;
}

QList<QPointF> SurroundingsFigure::points(const QRectF& room, const Appearance& look) const {
    if (!plot_.established() || view().curves.isEmpty()) {
        return {};
    }
    const Scene s = scene(room, look);
    return polygon_on_paper(joined(view().curves.first().outer()), s.origin, s.px_per_m);
}

QString SurroundingsFigure::point_text(qsizetype point) const {
    const OutlineCurve& curve = view().curves.first();
    const QPointF at = joined(curve.outer()).value(point);
    if (from_ == SeenFrom::above) {
        return Text::tr("%1, toward %2: %3")
            .arg(curve.label, models::direction_words(units::radians(std::atan2(at.y(), at.x())), false),
                 models::distance_up(units::metres(std::hypot(at.x(), at.y())), plot_.system));
    }
    return Text::tr("%1, at height %2: %3")
        .arg(curve.label, models::short_text(at.y(), units::Dimension::length, plot_.system),
             models::distance_up(units::metres(std::abs(at.x())), plot_.system));
}

namespace {

void paint_outlines(QPainter& painter, Lettering& words, const models::OutlineView& view,
                    const QPointF& origin, double px_per_m, const Appearance& look) {
    for (const OutlineCurve& curve : view.curves) {
        QColor fill = look.ink;
        fill.setAlpha(zone_alpha);
        painter.setBrush(fill);
        QPen pen = pen_of(style_of(curve), look);
        painter.setPen(pen);
        for (const QPolygonF& piece : curve.outer()) {
            const QPolygonF line = polygon_on_paper(piece, origin, px_per_m);
            painter.drawPolygon(line);
            words.avoid(line);
        }
        if (!curve.upper.isEmpty()) {
            pen.setWidthF(thin_px);
            painter.setBrush(Qt::NoBrush);
            painter.setPen(pen);
            for (const QPolygonF& piece : curve.outline) {
                painter.drawPolygon(polygon_on_paper(piece, origin, px_per_m));
            }
        }
    }
    painter.setBrush(Qt::NoBrush);
    painter.setPen(QPen(look.curve(models::Meaning::conductor), loop_px));
    const QPolygonF loop = polygon_on_paper(view.loop, origin, px_per_m);
    painter.drawPolygon(loop);
    words.avoid(loop);
}

void write_names(Lettering& words, const models::OutlineView& view, const QPointF& origin, double px_per_m) {
    for (const OutlineCurve& curve : view.curves) {
        if (curve.outer().isEmpty()) {
            continue;
        }
        const QSizeF size = words.size_of(curve.label) + QSizeF(30.0, 0.0);
        QList<QPointF> places;
        const QPolygonF line = polygon_on_paper(joined(curve.outer()), origin, px_per_m);
        for (qsizetype i = 0; i < line.size(); i += std::max<qsizetype>(1, line.size() / 24)) {
            const double up = line[i].y() < origin.y() ? -1.0 : 0.0;
            places.append(line[i] + QPointF(4.0, up * (size.height() + 3.0) + 2.0));
            places.append(line[i] + QPointF(-size.width() - 4.0, up * (size.height() + 3.0) + 2.0));
        }
        words.write_curve_name(places, style_of(curve));
    }
}

/// How long a round number of metres is.
void paint_scale_of_lengths(QPainter& painter, Lettering& words, const QRectF& area, double px_per_m,
                            units::UnitSystem system, const Appearance& look) {
    const double length_m = round_below(scale_share * area.width() / px_per_m);
    const double y = area.bottom() + 0.6 * words.line(), x = area.left();
    const double end = x + length_m * px_per_m;
    painter.setPen(QPen(look.ink, 1.2));
    painter.drawLine(QPointF(x, y), QPointF(end, y));
    for (const double at : {x, end}) {
        painter.drawLine(QPointF(at, y - 3.0), QPointF(at, y + 3.0));
    }
    const QString text = models::short_text(length_m, units::Dimension::length, system);
    const QSizeF size = words.size_of(text);
    words.write(QRectF(end + 5.0, y - size.height() / 2.0, size.width(), size.height()), text,
                Qt::AlignLeft | Qt::AlignVCenter);
}

} // namespace

QList<FigureWord> SurroundingsFigure::paint(QPainter& painter, const QRectF& room,
                                            const Appearance& look) const {
    painter.save();
    painter.setRenderHint(QPainter::Antialiasing);
    Lettering words(painter, room.adjusted(1, 1, -1, -1), look);
    write_title(words, room, title());
    const Scene s = scene(room, look);
    words.write_wrapped(s.below, footer(), Qt::AlignHCenter | Qt::AlignTop);
    if (!plot_.established()) {
        const QString text = Text::tr("not established");
        const QSizeF size = words.size_of(text);
        words.write_at({QRectF(s.area.center() - QPointF(size.width(), size.height()) / 2.0, size)}, text,
                       Tone::plain, true);
        painter.restore();
        return words.words();
    }
    paint_outlines(painter, words, view(), s.origin, s.px_per_m, look);
    const QPointF person = polygon_on_paper({s.person_m}, s.origin, s.px_per_m).first();
    painter.setPen(QPen(look.ink, 1.0));
    painter.setBrush(look.grid);
    if (from_ == SeenFrom::above) {
        paint_person_from_above(painter, person, s.px_per_m);
    } else {
        paint_person(painter, person, s.px_per_m);
        painter.setPen(QPen(look.quiet_ink, 1.0));
        const auto level = [&](double height_m, double from, double to) {
            const double y = s.origin.y() - s.px_per_m * height_m;
            painter.drawLine(QPointF(from, y), QPointF(to, y));
        };
        if (!plot_.free_space) {
            level(0.0, s.area.left(), s.area.right());
        }
        if (plot_.standing_m > 0.0) {
            level(plot_.standing_m, person.x() - 0.4 * s.px_per_m, s.area.right());
        }
    }
    const double tall_m = from_ == SeenFrom::above ? 0.4 : person_m;
    const QPointF corner_m(0.3, from_ == SeenFrom::above ? 0.5 * tall_m : tall_m);
    words.take(QRectF(person - corner_m * s.px_per_m, QSizeF(0.6, tall_m) * s.px_per_m));
    paint_scale_of_lengths(painter, words, s.area, s.px_per_m, plot_.system, look);
    const QSizeF right = words.size_of(view().right, Tone::quiet);
    words.write(QRectF(s.area.right() - right.width(), s.area.bottom() + 1.0, right.width(), right.height()),
                view().right, Qt::AlignRight | Qt::AlignVCenter, Tone::quiet);
    write_names(words, view(), s.origin, s.px_per_m);
    painter.restore();
    return words.words();
}

} // namespace loopwright::charts
