#include "models/voltage_warning.hpp"

#include "models/keying_warning.hpp"
#include "models/quantity_words.hpp"
#include "survey/board_standing.hpp"
#include "survey/verdict.hpp"
#include "units/text.hpp"

#include <QCoreApplication>

#include <algorithm>

namespace loopwright::models {

namespace {
struct VoltageText {
    Q_DECLARE_TR_FUNCTIONS(Warnings)
};
} // namespace

VoltageWarning voltage_warning(const survey::Survey& survey) {
    if (survey::usable_voltage_varies(survey.request.design.capacitor)) {
        return standing_warning(survey::voltage_standing(survey));
    }
    const survey::BandRow* worst = survey::highest_voltage(survey);
    if (worst == nullptr || !worst->point.resonance) {
        return voltage_warning(nullptr);
    }
    const loop::Resonance& r = *worst->point.resonance;
    VoltageFigures figures;
    figures.peak = std::max(r.capacitor_voltage_peak, r.capacitor_voltage_peak_range.high);
    figures.band = QString::fromStdString(worst->band.name);
    figures.power = worst->point.power;
    figures.model = worst->point.model;
    if (const auto held = survey::voltage_limit(worst->point, survey.request.design)) {
        figures.held_against =
            VoltageText::tr("rated %1")
                .arg(held->as_rated ? short_text(*survey.request.design.capacitor.rating.peak_voltage)
                                    : QString::fromStdString(units::shown(held->limit)));
        figures.over = figures.peak > held->limit;
    }
    for (const survey::BandRow& row : survey.bands) {
        if (!row.point.resonance) {
            figures.unknown << QString::fromStdString(row.band.name);
        }
    }
    return voltage_warning(&figures);
}

} // namespace loopwright::models
