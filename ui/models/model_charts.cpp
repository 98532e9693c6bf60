#include "models/model_charts.hpp"

#include "base/error.hpp"
#include "models/chart_text.hpp"
#include "models/curve_points.hpp"
#include "models/model_words.hpp"

#include <QCoreApplication>

#include <algorithm>
#include <cmath>

namespace loopwright::models {

namespace {

using loop::Model;
using loop::Resonance;

struct Pair {
    const survey::Survey& full_wave;
    const survey::Survey& closed_form;
};

Pair in_order(const survey::Survey& one, const survey::Survey& other) {
    if (one.request.model == other.request.model) {
        throw base::ProgramError("two surveys of the same model are no comparison of models");
    }
    return one.request.model == Model::full_wave ? Pair{one, other} : Pair{other, one};
}

template <class Figure>
void add(ChartContent& content, const Pair& pair, Curve curve, const Figure& figure) {
    for (const Model model : {Model::full_wave, Model::closed_form}) {
        const survey::Survey& survey = model == Model::full_wave ? pair.full_wave : pair.closed_form;
        curve.label = model_name(model);
        curve.compared = model == Model::closed_form;
        curve.points = points_of(survey, figure);
        content.curves.push_back(curve);
    }
}

/// Runs of frequencies in which a model gives no number; they meet halfway between points.
void add_zones(ChartContent& content, const Pair& pair) {
    for (const survey::Survey* survey : {&pair.full_wave, &pair.closed_form}) {
        const auto& curve = survey->curve;
        const QString words = ChartText::tr("%1: not established").arg(model_name(survey->request.model));
        bool open = false;
        for (std::size_t i = 0; i < curve.size(); ++i) {
            const double here = curve[i].frequency.value();
            if (curve[i].resonance) {
                open = false;
                continue;
            }
            const double to = i + 1 == curve.size() ? here : std::sqrt(here * curve[i + 1].frequency.value());
            if (open) {
                content.zones.back().to_Hz = to;
            } else {
                content.zones.push_back(
                    {i == 0 ? here : std::sqrt(here * curve[i - 1].frequency.value()), to, words});
            }
            open = true;
        }
    }
}

const loop::OperatingPoint* point_of(const survey::Survey& survey, const QString& band, double frequency_Hz) {
    for (const survey::BandRow& row : survey.bands) {
        if (QString::fromStdString(row.band.name) == band) {
            return &row.point;
        }
    }
    const auto off = [frequency_Hz](const loop::OperatingPoint& point) {
        return std::abs(std::log(point.frequency.value() / frequency_Hz));
    };
    const auto nearest = std::min_element(
        survey.curve.begin(), survey.curve.end(),
        [&](const loop::OperatingPoint& a, const loop::OperatingPoint& b) { return off(a) < off(b); });
    return nearest == survey.curve.end() ? nullptr : &*nearest;
}

} // namespace

std::vector<ChartContent> model_charts(const survey::Survey& one, const survey::Survey& other) {
    const Pair pair = in_order(one, other);
    ChartContent efficiency{QStringLiteral("models-efficiency"), ChartText::tr("Efficiency by both models")};
    efficiency.scale = {ChartText::tr("Efficiency, %"), 0.01, true, 1e-5, 1.6};
    add(efficiency, pair,
        {QStringLiteral("efficiency"), ChartText::tr("Efficiency"), {}, Measure::share, Meaning::sky},
        [](const Resonance& r) { return r.efficiency; });
    ChartContent resistance{QStringLiteral("models-resistance"),
                            ChartText::tr("Series resistance by both models")};
    resistance.scale = {ChartText::tr("Resistance, \u03a9"), 1.0, true, {}, {}};
    add(resistance, pair,
        {QStringLiteral("resistance"),
         ChartText::tr("Series resistance"),
         {},
         Measure::resistance,
         Meaning::figure},
        [](const Resonance& r) { return r.resistance.total().value(); });
    ChartContent capacitance{QStringLiteral("models-capacitance"),
                             ChartText::tr("Tuning capacitance by both models")};
    capacitance.scale = {ChartText::tr("Capacitance, pF"), 1e-12, true, 1e-12, {}};
    add(capacitance, pair,
        {QStringLiteral("tuning_capacitance"),
         ChartText::tr("Tuning capacitance"),
         {},
         Measure::capacitance,
         Meaning::capacitor},
        [](const Resonance& r) { return r.tuning_capacitance.value(); });
    std::vector<ChartContent> charts = {efficiency, resistance, capacitance};
    const design::Design& design = one.request.design;
    for (ChartContent& chart : charts) {
        for (const band::Band& band : band::bands_of(design.station.region)) {
            chart.bands.push_back({QString::fromStdString(band.name), band.low.value(), band.high.value()});
        }
        add_zones(chart, pair);
        chart.from_Hz = one.request.from.value();
        chart.to_Hz = one.request.to.value();
    }
    return charts;
}

ModelPoints model_points(const survey::Survey& one, const survey::Survey& other, const QString& band,
                         double frequency_Hz) {
    const Pair pair = in_order(one, other);
    return {point_of(pair.closed_form, band, frequency_Hz), point_of(pair.full_wave, band, frequency_Hz)};
}

} // namespace loopwright::models
