#include "models/height_plot.hpp"

#include "models/chart_text.hpp"
#include "models/headline.hpp"
#include "models/quantity_words.hpp"

#include <QCoreApplication>

#include <algorithm>
#include <cmath>

namespace loopwright::models {

namespace {

QString height_text(double metres) {
    return short_text(std::round(metres * 100.0) / 100.0, units::Dimension::length);
}

} // namespace

bool HeightPlot::established() const {
    return std::any_of(rows.begin(), rows.end(), [](const HeightPlotRow& row) { return row.established; });
}

HeightPlot no_height_plot(const QString& reason) {
    HeightPlot plot;
    plot.reason = reason;
    plot.conditions = ChartText::tr("full-wave model");
    return plot;
}

const HeightPlotRow* row_at(const HeightPlot& plot, double height_m) {
    const auto off = [height_m](const HeightPlotRow& row) {
        return std::abs(std::log(row.height_m / height_m));
    };
    const auto nearest =
        std::min_element(plot.rows.begin(), plot.rows.end(),
                         [&](const HeightPlotRow& a, const HeightPlotRow& b) { return off(a) < off(b); });
    return nearest == plot.rows.end() ? nullptr : &*nearest;
}

QString height_words(const HeightPlot& plot) {
    if (!plot.established()) {
        return ChartText::tr("Not established: %1").arg(plot.reason);
    }
    const auto most =
        std::max_element(plot.rows.begin(), plot.rows.end(),
                         [](const HeightPlotRow& a, const HeightPlotRow& b) { return a.sky < b.sky; });
    const HeightPlotRow* now = row_at(plot, plot.present_m);
    const QString best =
        ChartText::tr("most to the sky, %1, at %2").arg(percent(most->sky), height_text(most->height_m));
    if (!now->established) {
        return ChartText::tr("Not established at the present height; %1").arg(best);
    }
    return ChartText::tr(
               "Near the present height (%1) %2 of the power reaches the sky, %3 heats the ground; %4")
        .arg(height_text(plot.present_m), percent(now->sky), percent(now->ground), best);
}

} // namespace loopwright::models
