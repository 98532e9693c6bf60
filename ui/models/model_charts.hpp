#pragma once
// The two models beside each other over frequency, and why they part.
#include "models/chart_content.hpp"
#include "survey/survey.hpp"

#include <QStringList>

namespace loopwright::models {

/// Efficiency, resistance and tuning capacitance of one design by both models; gaps where one of them does
/// not stand behind a number, which zones say in words. Either order of the two. Charts keep their number and
/// order. Throws base::ProgramError for two surveys of the same model.
[[nodiscard]] std::vector<ChartContent> model_charts(const survey::Survey& one, const survey::Survey& other);

/// The points of both models at the band, or at the point of the curves nearest to the frequency.
struct ModelPoints {
    const loop::OperatingPoint* closed_form = nullptr;
    const loop::OperatingPoint* full_wave = nullptr;
};
[[nodiscard]] ModelPoints model_points(const survey::Survey& one, const survey::Survey& other,
                                       const QString& band, double frequency_Hz);

/// How far the models are apart at a point, and the reasons, as lines; never empty.
[[nodiscard]] QStringList model_difference_words(const ModelPoints& points, const design::Ground& ground);

} // namespace loopwright::models
