#pragma once
// The stacked shares of a height figure. Internal to charts/.
#include "charts/frame.hpp"
#include "models/height_plot.hpp"

#include <QStringList>

namespace loopwright::charts {

void paint_layers(QPainter& painter, const models::HeightPlot& plot, const Frame& frame,
                  const Appearance& look);
/// The name of a share where it is thick enough; what is thinner everywhere is said in a corner.
void write_layers(Lettering& words, const models::HeightPlot& plot, const Frame& frame);
/// "sky 12.3 %" for each.
[[nodiscard]] QStringList shares_in_words(const models::HeightPlotRow& row);

} // namespace loopwright::charts
