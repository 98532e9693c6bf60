#pragma once
// What the hazard strip and the printed sheet say of all bands: the highest capacitor voltage, the distance
// people must keep. No widget.
#include "models/hazard_words.hpp"
#include "survey/keying.hpp"
#include "survey/voltage_standing.hpp"
#include "units/text.hpp"

namespace loopwright::models {

/// The most unfavourable verdict of all bands or rows.
[[nodiscard]] VoltageWarning standing_warning(const survey::VoltageStanding& standing);
/// Of the bands that the capacitor reaches; unfavourable ends.
[[nodiscard]] inline VoltageWarning keying_voltage(const survey::Keying& keying) {
    return standing_warning(survey::voltage_standing(keying));
}

struct DistanceWarning {
    bool established = false;
    bool exceeded = false; ///< people are nearer than that
    QString text;          ///< one line
    QString detail;        ///< what it means and what to do
};
[[nodiscard]] DistanceWarning keying_distance(const survey::Keying& keying, units::UnitSystem system);
/// Nothing was computed.
[[nodiscard]] DistanceWarning no_distance();

} // namespace loopwright::models
