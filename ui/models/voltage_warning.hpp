#pragma once
// What may be said of the capacitor's voltage from a survey of bands alone. No widget.
#include "models/hazard_words.hpp"
#include "survey/survey.hpp"

namespace loopwright::models {

/// Of the planned bands of a survey that the capacitor reaches and the model stands behind; the unfavourable
/// end of an interval counts.
[[nodiscard]] VoltageWarning voltage_warning(const survey::Survey& survey);

} // namespace loopwright::models
