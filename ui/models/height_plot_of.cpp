// From the core's sweep over heights to what is drawn.
#include "models/chart_text.hpp"
#include "models/height_plot.hpp"
#include "models/model_words.hpp"
#include "survey/height.hpp"

#include <QCoreApplication>

namespace loopwright::models {

namespace {

HeightPlotRow row_of(const survey::HeightRow& from) {
    HeightPlotRow row;
    row.height_m = from.lowest_point.value();
    if (!from.point.resonance) {
        return row;
    }
    const loop::ResistanceParts& parts = from.point.resonance->resistance;
    const double total_ohm = parts.total().value();
    row.established = true;
    row.sky = parts.radiation.value() / total_ohm;
    row.ground = parts.ground ? parts.ground->value() / total_ohm : 0.0;
    row.conductor = parts.conductor.value() / total_ohm;
    row.joints = parts.joints.value() / total_ohm;
    row.capacitor = parts.capacitor.value() / total_ohm;
    if (from.point.resonance->gain_low_angle) {
        row.low_angle_dBi = from.point.resonance->gain_low_angle->value;
    }
    return row;
}

} // namespace

HeightPlot height_plot(const survey::HeightSweep& sweep) {
    HeightPlot plot;
    const design::Design& design = sweep.request.design;
    plot.frequency_Hz = sweep.request.frequency.value();
    plot.present_m = design.site.lowest_point.value.value();
    for (const survey::HeightRow& row : sweep.rows) {
        plot.rows.append(row_of(row));
    }
    if (!plot.established()) {
        plot.reason = ChartText::tr("the model gives no number at any of these heights");
    }
    plot.conditions = ChartText::tr("%1 \u00b7 shares of the power accepted")
                          .arg(model_and_ground(loop::Model::full_wave, design.site.ground));
    return plot;
}

} // namespace loopwright::models
