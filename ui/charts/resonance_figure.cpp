#include "charts/resonance_figure.hpp"

#include "charts/strokes.hpp"
#include "charts/text.hpp"
#include "charts/vswr_frame.hpp"
#include "models/match_plot.hpp"
#include "models/quantity_words.hpp"

#include <QCoreApplication>
#include <QPainter>

#include <algorithm>
#include <cmath>

namespace loopwright::charts {

namespace {

using models::ResonancePlot;

constexpr double hertz_a_kHz = 1e3;
constexpr int curve_points = 161;
const models::Curve resonance_style{{}, {}, {}, models::Measure::number, models::Meaning::figure, 0};

/// Offsets from the wanted frequency: both the resonance with its span and the wanted frequency in it.
Span resonance_offsets_kHz(const ResonancePlot& plot) {
    if (!plot.established()) {
        return {-1.0, 1.0};
    }
    const double off = plot.resonance_Hz - plot.wanted_Hz, width = 1.5 * plot.span_Hz;
    return {std::min(off - width, -0.6 * width) / hertz_a_kHz,
            std::max(off + width, 0.6 * width) / hertz_a_kHz};
}

VswrFrame resonance_frame_of(const ResonancePlot& plot, const QRectF& room, const Appearance& look) {
    return {{Text::tr("VSWR at the present setting"), Text::tr("VSWR"),
             models::exact_frequency(std::round(plot.wanted_Hz)), models::resonance_words(plot)},
            resonance_offsets_kHz(plot),
            room,
            look};
}

QPointF on_paper(const VswrFrame& frame, const ResonancePlot& plot, double offset_Hz) {
    return frame.at(offset_Hz, models::vswr_at(plot, plot.wanted_Hz + offset_Hz));
}

double offset_Hz(const ResonancePlot& plot, qsizetype point) {
    const Span span = resonance_offsets_kHz(plot);
    const double share = static_cast<double>(point) / (curve_points - 1);
    return hertz_a_kHz * (span.low + share * (span.high - span.low));
}

void paint_resonance_curve(QPainter& painter, Lettering& words, const ResonancePlot& plot,
                           const VswrFrame& frame, const Appearance& look) {
    QPolygonF line;
    for (qsizetype i = 0; i < curve_points; ++i) {
        const double offset = offset_Hz(plot, i);
        if (models::vswr_at(plot, plot.wanted_Hz + offset) <= VswrFrame::highest) {
            line << on_paper(frame, plot, offset);
        }
    }
    painter.setBrush(Qt::NoBrush);
    painter.setPen(pen_of(resonance_style, look));
    painter.drawPolyline(line);
    words.avoid(line);
}

} // namespace

QString ResonanceFigure::id() const {
    return QStringLiteral("resonance");
}

QString ResonanceFigure::title() const {
    return Text::tr("VSWR at the present setting");
}

QString ResonanceFigure::description() const {
    return title() + QStringLiteral(". ") + models::resonance_words(plot_);
}

QList<QPointF> ResonanceFigure::points(const QRectF& room, const Appearance& look) const {
    QList<QPointF> list;
    if (plot_.established()) {
        const VswrFrame frame = resonance_frame_of(plot_, room, look);
        for (qsizetype i = 0; i < curve_points; ++i) {
            list.append(on_paper(frame, plot_, offset_Hz(plot_, i)));
        }
    }
    return list;
}

QString ResonanceFigure::point_text(qsizetype point) const {
    const double offset = offset_Hz(plot_, point);
    const double vswr = models::vswr_at(plot_, plot_.wanted_Hz + offset);
    return Text::tr("%1: VSWR %2")
        .arg(models::exact_frequency(std::round((plot_.wanted_Hz + offset) / 10.0) * 10.0),
             vswr > VswrFrame::highest ? Text::tr("above %1").arg(models::plain_number(VswrFrame::highest, 3))
                                       : models::plain_number(vswr, 3));
}

QList<FigureWord> ResonanceFigure::paint(QPainter& painter, const QRectF& room,
                                         const Appearance& look) const {
    painter.save();
    painter.setRenderHint(QPainter::Antialiasing);
    Lettering words(painter, room.adjusted(1, 1, -1, -1), look);
    const VswrFrame frame = resonance_frame_of(plot_, room, look);
    const QRectF& area = frame.area();
    if (plot_.established() && plot_.window_Hz > 0) {
        const double half = plot_.window_Hz / 2.0;
        painter.fillRect(QRectF(QPointF(frame.px_of_offset(-half), area.top()),
                                QPointF(frame.px_of_offset(half), area.bottom())),
                         look.focus_stripe);
    }
    frame.paint(painter, words, look);
    if (!plot_.established()) {
        painter.restore();
        return words.words();
    }
    frame.paint_limit_line(painter, words, plot_.vswr_limit, look);
    paint_resonance_curve(painter, words, plot_, frame, look);
    const double at = frame.px_of_offset(0.0);
    painter.setPen(QPen(look.focus, 1.6));
    painter.drawLine(QPointF(at, area.top()), QPointF(at, area.bottom()));
    words.avoid(QPolygonF{{at, area.top()}, {at, area.bottom()}});
    const QPointF here = on_paper(frame, plot_, 0.0);
    painter.setBrush(look.focus);
    painter.drawEllipse(here, 4.0, 4.0);
    words.write_beside(here, Text::tr("radio"), 7.0, Tone::strong);
    words.write_beside(on_paper(frame, plot_, plot_.resonance_Hz - plot_.wanted_Hz), Text::tr("loop"), 7.0);
    frame.write_limit(words, plot_.vswr_limit);
    painter.restore();
    return words.words();
}

} // namespace loopwright::charts
