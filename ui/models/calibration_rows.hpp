#pragma once
// What the points of a calibration tell, as rows and words.
#include "models/pairs_model.hpp"
#include "tuning/calibration.hpp"

#include <QList>
#include <QString>
#include <QStringList>

#include <optional>
#include <vector>

namespace loopwright::models {

/// One row a point. judged: of the same points in the same order, else no remarks. Remarks: how far off, and
/// what that means.
[[nodiscard]] QList<PairRow> calibration_rows(const std::vector<design::CalibrationPoint>& points,
                                              const std::vector<tuning::JudgedPoint>& judged);

/// "Measure next at 14.075 MHz, near 62.5°: it would narrow the card from ±3.1° to ±0.8°, then 7.1 MHz to
/// ±0.5°." Of a plan, one point after the other; empty for none.
[[nodiscard]] QString next_point_words(const std::vector<tuning::NextPoint>& plan, const design::Dial& dial);

/// One line for each property that the points tell: "Stray: 8.1 pF (7.6 to 8.7), in the file 5 pF".
[[nodiscard]] QStringList fitted_words(const std::vector<tuning::FittedPart>& parts);

/// Why the interval of a predicted reading is wide, and what narrows it: one sentence.
[[nodiscard]] QString wide_interval_words();

/// How much of the calibration counts: "5 of 6 points count."
[[nodiscard]] QString calibration_summary(const std::vector<tuning::JudgedPoint>& judged);

} // namespace loopwright::models
