#include "charts/distance_power_figure.hpp"

#include "charts/frame.hpp"
#include "charts/measures.hpp"
#include "charts/strokes.hpp"
#include "charts/text.hpp"
#include "models/keying_words.hpp"
#include "models/quantity_words.hpp"
#include "models/surroundings_plot.hpp"

#include <QCoreApplication>
#include <QPainter>

#include <algorithm>
#include <cmath>

namespace loopwright::charts {

namespace {

constexpr double power_tick_y_px = 24.0, power_tick_x_px = 44.0, as_entered_px = 0.7;
constexpr int most_power_ticks = 9;

models::Curve style_of(const models::PowerCurve& curve) {
    return {{}, {}, curve.label, models::Measure::number, models::Meaning::figure, curve.stroke};
}

/// log10 of the distances drawn, a decade at least.
Span distances(const models::SurroundingsPlot& plot) {
    double low = 1e9, high = 0.0;
    const auto add = [&](double metres) {
        low = std::min(low, metres);
        high = std::max(high, metres);
    };
    for (const models::PowerCurve& curve : plot.over_power) {
        for (const QPointF& point : curve.outer()) {
            add(point.y());
        }
    }
    if (high <= 0.0) {
        return {-1.0, 1.0};
    }
    if (plot.people_m) {
        add(*plot.people_m);
    }
    const Span span{std::log10(low) - 0.05, std::log10(high) + 0.05};
    return span.high - span.low >= 1.0 ? span : Span{span.high - 1.0, span.high};
}

Span powers() {
    return {std::log10(survey::lowest_power_W), std::log10(survey::highest_power_W)};
}

Frame distance_frame_of(const models::SurroundingsPlot& plot, const QRectF& room, const Appearance& look,
                        const QString& footer) {
    const QFontMetricsF metrics(look.font);
    const double line = metrics.height(), width = room.width() - 2.0 * pad_px;
    const double below =
        metrics.boundingRect(QRectF(0, 0, width, 1e5), Qt::TextWordWrap, footer).height() + pad_px;
    const QRectF space = room.adjusted(2.0, line + 6.0, 0.0, -below);
    const Span y = distances(plot);
    const auto count = [](double length, double each) {
        return std::clamp(static_cast<int>(length / each), 2, most_power_ticks);
    };
    const auto ticks = [](const Span& span, int most) {
        return ticks_at_log10(logarithmic_ticks({std::pow(10.0, span.low), std::pow(10.0, span.high)}, most));
    };
    return {space,
            look,
            {powers(), ticks(powers(), count(space.width(), power_tick_x_px)),
             Text::tr("Power, W peak envelope")},
            {y, ticks(y, count(space.height() - 3.0 * line, power_tick_y_px)), Text::tr("Distance, m")}};
}

/// A line across with words at its end.
void paint_marked_line(QPainter& painter, Lettering& words, const QLineF& line, const QString& text,
                       const Appearance& look) {
    painter.setPen(QPen(look.focus, 1.2));
    painter.drawLine(line);
    words.avoid(QPolygonF{line.p1(), line.p2()});
    const QSizeF size = words.size_of(text, Tone::strong);
    QList<QRectF> candidates;
    for (const double share : {0.02, 0.98, 0.3, 0.6}) {
        const QPointF at = line.pointAt(share);
        candidates.append(QRectF(at + QPointF(4.0, -size.height() - 2.0), size));
        candidates.append(QRectF(at + QPointF(-size.width() - 4.0, -size.height() - 2.0), size));
        candidates.append(QRectF(at + QPointF(4.0, 2.0), size));
    }
    words.write_at(candidates, text, Tone::strong, true);
}

void paint_curves(QPainter& painter, Lettering& words, const models::SurroundingsPlot& plot,
                  const Frame& frame, const Appearance& look) {
    const auto line_of = [&](const QList<QPointF>& points) {
        QPolygonF line;
        for (const QPointF& point : points) {
            line << frame.at(std::log10(point.x()), std::log10(point.y()));
        }
        return line;
    };
    for (const models::PowerCurve& curve : plot.over_power) {
        const QPolygonF line = line_of(curve.outer());
        QPen pen = pen_of(style_of(curve), look);
        painter.setPen(pen);
        painter.drawPolyline(line);
        words.avoid(line);
        if (!curve.upper.isEmpty()) {
            pen.setWidthF(as_entered_px);
            painter.setPen(pen);
            painter.drawPolyline(line_of(curve.points));
        }
    }
}

} // namespace

QString DistancePowerFigure::title() const {
    return plot_.established() ? short_title() + QStringLiteral(", ") + models::place_words(plot_)
                               : short_title();
}

QString DistancePowerFigure::short_title() {
    return Text::tr("Distance over power");
}

QString DistancePowerFigure::footer() const {
    if (!plot_.established()) {
        return Text::tr("Not established: %1").arg(plot_.reason);
    }
    return plot_.limit + QStringLiteral(" \u00b7 ") +
           Text::tr("accepted power, emission and habit as chosen") + QStringLiteral(" \u00b7 ") +
           models::line_words(plot_);
}

QString DistancePowerFigure::description() const {
    return title() + QStringLiteral(". ") + footer() + QStringLiteral(". ") +
           (plot_.established() ? models::distances_in_words(plot_) : QString());
}

QList<QPointF> DistancePowerFigure::points(const QRectF& room, const Appearance& look) const {
    QList<QPointF> list;
    if (plot_.established() && !plot_.over_power.isEmpty()) {
        const Frame frame = distance_frame_of(plot_, room, look, footer());
        for (const QPointF& point : plot_.over_power.first().outer()) {
            list.append(frame.at(std::log10(point.x()), std::log10(point.y())));
        }
    }
    return list;
}

QString DistancePowerFigure::point_text(qsizetype point) const {
    const models::PowerCurve& curve = plot_.over_power.first();
    return Text::tr("%1 at %2: %3")
        .arg(curve.label, models::short_text(curve.outer()[point].x(), units::Dimension::power),
             models::distance_up(units::metres(curve.outer()[point].y()), plot_.system));
}

QList<FigureWord> DistancePowerFigure::paint(QPainter& painter, const QRectF& room,
                                             const Appearance& look) const {
    painter.save();
    painter.setRenderHint(QPainter::Antialiasing);
    Lettering words(painter, room.adjusted(1, 1, -1, -1), look);
    const Frame frame = distance_frame_of(plot_, room, look, footer());
    const QFontMetricsF metrics(look.font);
    write_title(words, room, title(), short_title());
    frame.paint(painter, look);
    frame.write(words);
    const double below = words.wrapped_height(room.width() - 2.0 * pad_px, footer());
    words.write_wrapped(
        QRectF(room.left() + pad_px, room.bottom() - below - pad_px, room.width() - 2.0 * pad_px, below),
        footer(), Qt::AlignHCenter | Qt::AlignTop);
    const QRectF& area = frame.area();
    if (!plot_.established()) {
        const QString text = Text::tr("not established");
        const QSizeF size = words.size_of(text);
        words.write_at({QRectF(area.center() - QPointF(size.width(), size.height()) / 2.0, size)}, text,
                       Tone::plain, true);
        painter.restore();
        return words.words();
    }
    painter.setBrush(Qt::NoBrush);
    paint_curves(painter, words, plot_, frame, look);
    const Span x = powers(), y = distances(plot_);
    const double power = std::log10(std::max(plot_.power_W, 1e-9));
    if (power > x.low && power < x.high) {
        const double at = frame.px_of_x(power);
        paint_marked_line(painter, words, QLineF(at, area.top(), at, area.bottom()),
                          Text::tr("now %1").arg(models::short_text(plot_.power_W, units::Dimension::power)),
                          look);
    }
    if (plot_.people_m && std::log10(*plot_.people_m) > y.low && std::log10(*plot_.people_m) < y.high) {
        const double at = frame.px_of_y(std::log10(*plot_.people_m));
        paint_marked_line(painter, words, QLineF(area.left(), at, area.right(), at), Text::tr("people"),
                          look);
    }
    for (const models::PowerCurve& curve : plot_.over_power) {
        QList<QPointF> places;
        const QSizeF size = words.size_of(curve.label) + QSizeF(30.0, 0.0);
        for (const QPointF& point : curve.outer()) {
            const QPointF at = frame.at(std::log10(point.x()), std::log10(point.y()));
            if (at.x() > area.left() + size.width() && at.x() < area.right() - 4.0) {
                places.append(at + QPointF(-size.width() - 2.0, -size.height() - 3.0));
                places.append(at + QPointF(-size.width() / 2.0, 8.0));
            }
        }
        if (!places.isEmpty()) {
            words.write_curve_name(places, style_of(curve));
        }
    }
    painter.restore();
    return words.words();
}

} // namespace loopwright::charts
