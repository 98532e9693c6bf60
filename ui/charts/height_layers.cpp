#include "charts/height_layers.hpp"

#include "charts/measures.hpp"
#include "charts/strokes.hpp"
#include "charts/text.hpp"
#include "models/headline.hpp"

#include <QCoreApplication>
#include <QPainter>

#include <algorithm>
#include <array>
#include <cmath>

namespace loopwright::charts {

namespace {

using models::HeightPlotRow;
using models::Meaning;

constexpr int fill_alpha = 95;

struct HeightLayer {
    double HeightPlotRow::*share;
    Meaning meaning;
    int stroke;
};
constexpr std::array<HeightLayer, 5> layers = {{{&HeightPlotRow::sky, Meaning::sky, 0},
                                                {&HeightPlotRow::ground, Meaning::soil, 4},
                                                {&HeightPlotRow::conductor, Meaning::conductor, 1},
                                                {&HeightPlotRow::joints, Meaning::joints, 3},
                                                {&HeightPlotRow::capacitor, Meaning::capacitor, 2}}};

QString name_of(Meaning meaning) {
    switch (meaning) {
    case Meaning::sky:
        return Text::tr("sky");
    case Meaning::soil:
        return Text::tr("ground");
    case Meaning::conductor:
        return Text::tr("conductor");
    case Meaning::joints:
        return Text::tr("joints");
    case Meaning::capacitor:
        return Text::tr("capacitor");
    case Meaning::figure:
        break;
    }
    return {};
}

models::Curve style_of(const HeightLayer& layer) {
    return {{}, {}, name_of(layer.meaning), models::Measure::share, layer.meaning, layer.stroke};
}
/// Runs of established rows.
QList<QList<HeightPlotRow>> runs_of(const models::HeightPlot& plot) {
    QList<QList<HeightPlotRow>> runs;
    bool open = false;
    for (const HeightPlotRow& row : plot.rows) {
        if (row.established && !open) {
            runs.append(QList<HeightPlotRow>());
        }
        if (row.established) {
            runs.last().append(row);
        }
        open = row.established;
    }
    return runs;
}

/// The share up to and with a layer, in per cent.
double up_to(const HeightPlotRow& row, std::size_t layer) {
    double sum = 0;
    for (std::size_t i = 0; i <= layer; ++i) {
        sum += row.*layers[i].share;
    }
    return 100.0 * sum;
}

QPolygonF line_above(const QList<HeightPlotRow>& run, std::size_t layer, const Frame& frame) {
    QPolygonF line;
    for (const HeightPlotRow& row : run) {
        line.append(frame.at(std::log10(row.height_m), up_to(row, layer)));
    }
    return line;
}

void paint_run(QPainter& painter, const QList<HeightPlotRow>& run, const Frame& frame,
               const Appearance& look) {
    for (std::size_t i = 0; i < layers.size(); ++i) {
        QPolygonF area = line_above(run, i, frame);
        for (auto row = run.crbegin(); row != run.crend(); ++row) {
            area.append(frame.at(std::log10(row->height_m), i == 0 ? 0.0 : up_to(*row, i - 1)));
        }
        QColor fill = look.curve(layers[i].meaning);
        fill.setAlpha(fill_alpha);
        painter.setPen(Qt::NoPen);
        painter.setBrush(fill);
        painter.drawPolygon(area);
    }
    painter.setBrush(Qt::NoBrush);
    for (std::size_t i = 0; i + 1 < layers.size(); ++i) {
        painter.setPen(pen_of(style_of(layers[i]), look));
        painter.drawPolyline(line_above(run, i, frame));
    }
}

/// The name of a layer where it is thick; what is too thin for its name is put into `thin`.
void write_thick(Lettering& words, const models::HeightPlot& plot, const Frame& frame, QStringList& thin) {
    for (std::size_t i = 0; i < layers.size(); ++i) {
        const QString name = name_of(layers[i].meaning);
        const QSizeF size = words.size_of(name);
        QList<std::pair<double, QRectF>> places;
        double most = 0;
        for (const HeightPlotRow& row : plot.rows) {
            if (!row.established) {
                continue;
            }
            most = std::max(most, row.*layers[i].share);
            const double top = frame.px_of_y(up_to(row, i)),
                         bottom = frame.px_of_y(i == 0 ? 0.0 : up_to(row, i - 1));
            const double x =
                std::clamp(frame.px_of_x(std::log10(row.height_m)), frame.area().left() + size.width(),
                           frame.area().right() - size.width());
            if (bottom - top > size.height()) {
                places.append({bottom - top, QRectF(QPointF(x - size.width() / 2.0,
                                                            (top + bottom) / 2.0 - size.height() / 2.0),
                                                    size)});
            }
        }
        std::stable_sort(places.begin(), places.end(),
                         [](const auto& a, const auto& b) { return a.first > b.first; });
        QList<QRectF> candidates;
        for (const auto& place : places) {
            candidates.append(place.second);
        }
        if (most > 0 && !words.write_at(candidates, name)) {
            thin << Text::tr("%1 at most %2").arg(name, models::percent(most, 2));
        }
    }
}

/// What was too thin for its name, in a corner where there is room; pointing at the chart says it too.
void write_thin(Lettering& words, const QStringList& thin, const QRectF& area) {
    for (const QString& text : thin) {
        const QSizeF size = words.size_of(text);
        if (size.width() + 2.0 * pad_px > area.width()) {
            continue;
        }
        QList<QRectF> candidates;
        for (const double left : {area.right() - size.width() - pad_px, area.left() + pad_px}) {
            for (double top = area.top() + 2.0; top + size.height() < area.bottom();
                 top += size.height() + 1.0) {
                candidates.append(QRectF(QPointF(left, top), size));
            }
        }
        words.write_at(candidates, text, Tone::quiet);
    }
}

} // namespace

void paint_layers(QPainter& painter, const models::HeightPlot& plot, const Frame& frame,
                  const Appearance& look) {
    for (const QList<HeightPlotRow>& run : runs_of(plot)) {
        paint_run(painter, run, frame, look);
    }
}

void write_layers(Lettering& words, const models::HeightPlot& plot, const Frame& frame) {
    QStringList thin;
    write_thick(words, plot, frame, thin);
    write_thin(words, thin, frame.area());
}

QStringList shares_in_words(const HeightPlotRow& row) {
    QStringList parts;
    for (const HeightLayer& layer : layers) {
        parts << QStringLiteral("%1 %2").arg(name_of(layer.meaning), models::percent(row.*layer.share));
    }
    return parts;
}

} // namespace loopwright::charts
