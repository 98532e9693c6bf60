#pragma once
// The words on a chart and where they stand: band names, names at the ends of curves, limits, greyed ranges.
#include "charts/chart_palette.hpp"
#include "charts/plot_geometry.hpp"

#include <QFont>
#include <QList>
#include <QRectF>
#include <QString>

#include <optional>

namespace loopwright::charts {

struct Word {
    enum class Kind { band, curve, limit, zone };
    Kind kind = Kind::band;
    QRectF rect;
    QString text;
    bool upright = false; ///< written upward
    bool strong = false;
    std::optional<std::size_t> curve; ///< its line is drawn in front
};

/// Length of the piece of line in front of a curve's name.
inline constexpr double sample_px = 22.0;

/// How far the hatching of a limit reaches to the side that hurts.
inline constexpr double hatch_px = 7.0;

/// Band names stand above the plot; those that do not fit beside each other are left out, and so is what a
/// greyed range is for where there is no room. Limits and curves always have their words. `pieces`: of every
/// curve, as pieces_on_paper gives them.
[[nodiscard]] QList<Word> arrange_words(const models::ChartContent& content, const PlotGeometry& geometry,
                                        const QList<QList<QPolygonF>>& pieces, const Appearance& look,
                                        const QString& focus_band);

} // namespace loopwright::charts
