#pragma once
// The charts of the Bands page, from one survey or from two laid over each other.
#include "models/chart_content.hpp"
#include "survey/survey.hpp"

#include <QCoreApplication>

namespace loopwright::models {

/// Efficiency and gain, tuning capacitance, peak capacitor voltage, unloaded Q, bandwidth, and where the
/// power goes, over the range of the survey's curve; gaps where a figure is not established. `compared` may
/// be null. Zones and limits are those of the first design. Charts keep their number and order.
[[nodiscard]] std::vector<ChartContent> survey_charts(const survey::Survey& survey,
                                                      const survey::Survey* compared = nullptr,
                                                      const QString& compared_name = {});

/// What the figures are for, in one line: "Full wave, over average ground · 5 W · FT8 · VSWR 2".
[[nodiscard]] QString conditions(const survey::Survey& survey);

} // namespace loopwright::models
