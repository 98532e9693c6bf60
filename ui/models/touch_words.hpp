#pragma once
// What a hand and a thermometer would find on the loop, and the exemption by radiated power: beside the
// verdict, never instead of it. No widget.
#include "models/text_table_model.hpp"
#include "survey/keying.hpp"
#include "units/text.hpp"

#include <QStringList>

namespace loopwright::models {

/// Volts along the conductor from the capacitor to its middle, at each place the side with more; heights, and
/// what a hand reaches. Empty where not established.
[[nodiscard]] TextTable touch_table(const survey::KeyingBand& band, const design::Design& design,
                                    units::UnitSystem system);

/// Touch, heat with its interval, and the exemption where the FCC's limit was asked for, a sentence each.
[[nodiscard]] QStringList touch_lines(const survey::KeyingBand& band, const design::Design& design);

/// The exemption on all bands in one sentence; empty where the FCC's limit was not asked for.
[[nodiscard]] QString exemption_summary(const survey::Keying& keying);

} // namespace loopwright::models
