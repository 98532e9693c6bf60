#pragma once
// The sheet before keying in words and figures: what window, strip and print share. No widget.
#include "exposure/limits.hpp"
#include "survey/keying.hpp"
#include "units/text.hpp"

#include <QString>
#include <QStringList>

namespace loopwright::models {

/// "within, as computed", "exceeded". Never calls anything harmless. settled: the unfavourable ends are in;
/// without them "within" is not said.
[[nodiscard]] QString keying_word(survey::KeyingVerdict verdict, bool settled);
/// One character, different for every verdict.
[[nodiscard]] QString keying_symbol(survey::KeyingVerdict verdict, bool settled);
/// Symbol and word of a band; no tick where it is within only if people keep away.
[[nodiscard]] QString verdict_of(const survey::KeyingBand& band, bool settled);
/// True where the key must not be pressed as things are.
[[nodiscard]] bool forbids(survey::KeyingVerdict verdict);

/// A distance to keep: rounded up to a centimetre, or to a tenth of a foot.
[[nodiscard]] QString distance_up(units::Length distance, units::UnitSystem system, bool with_unit = true);
/// A power not to exceed: two digits, rounded down.
[[nodiscard]] double power_down_W(units::Power power);
[[nodiscard]] QString power_down(units::Power power);
[[nodiscard]] QString tier_word(exposure::Tier tier);
[[nodiscard]] QString cause_word(exposure::Cause cause);
/// "along the axis (90°)".
[[nodiscard]] QString direction_words(units::Angle azimuth, bool vertical);
/// "40m", or the frequency where no band holds it.
[[nodiscard]] QString band_name(const survey::KeyingBand& band);
/// Standard, tier, and whether the figures are from memory.
[[nodiscard]] QString limit_words(const survey::KeyingDistance& distance);

/// Reasons of a band, worst first, each with what would mend it; then its remarks.
[[nodiscard]] QStringList reason_lines(const survey::KeyingBand& band);
/// Power, emission, habit and limits, in one line.
[[nodiscard]] QString keying_conditions(const design::Design& design);
/// The usual order of tuning on the air, and the greatest tune-up power.
[[nodiscard]] QStringList tuning_lines(const survey::KeyingBand* band, const design::Design& design);
/// What no distance covers.
[[nodiscard]] QString not_covered();

} // namespace loopwright::models
