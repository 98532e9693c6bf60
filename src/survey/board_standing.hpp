#pragma once
// The capacitor's voltage over the bands of a board alone, without a report before keying: the closed form.
#include "survey/survey.hpp"
#include "survey/voltage_standing.hpp"

namespace loopwright::survey {

/// Of the bands that the capacitor reaches, by the model's own intervals.
[[nodiscard]] VoltageStanding voltage_standing(const Survey& survey);

/// Whether what the capacitor stands is another on every band: fixed capacitors, or a rating of current.
[[nodiscard]] bool usable_voltage_varies(const design::Capacitor& capacitor) noexcept;

} // namespace loopwright::survey
