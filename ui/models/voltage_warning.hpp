#pragma once
// What the hazard strip says of the capacitor's voltage. No widget.
#include "survey/survey.hpp"

#include <QString>

namespace loopwright::models {

enum class VoltageState { unknown, no_rating, within, exceeded };

struct VoltageWarning {
    VoltageState state = VoltageState::unknown;
    QString text;   ///< one line
    QString detail; ///< what it means and what to do
};

/// Of the planned bands of a survey that the capacitor reaches and the model stands behind; the unfavourable
/// end of an interval counts.
[[nodiscard]] VoltageWarning voltage_warning(const survey::Survey& survey);

} // namespace loopwright::models
