#pragma once
// Sections of the sheet before keying that stand beside the table of bands.
#include "report/page.hpp"
#include "survey/keying.hpp"

#include <optional>
#include <string>
#include <vector>

namespace loopwright::report::detail {

template <class Quantity>
[[nodiscard]] Cell cell_of(const std::optional<Quantity>& value) {
    return value ? Cell(value->value()) : Cell();
}

/// Two digits, never rounded up; "none" where it is 0.
[[nodiscard]] Cell power_down(const std::optional<units::Power>& power);

/// "40m"; "-" where no band holds the frequency.
[[nodiscard]] std::string band_text(const survey::KeyingBand& band);
/// "40m", or the frequency.
[[nodiscard]] std::string where_of(const survey::KeyingBand& band);

/// Volts and current of each member of the capacitor, the stray left out, and the power that all of it
/// allows.
[[nodiscard]] Section members(const survey::Keying& keying);

/// What a hand and a thermometer would find.
[[nodiscard]] Section touch_and_heat(const survey::Keying& keying);

/// The FCC's exemption by effective radiated power, beside the field limits and never instead of them; empty
/// where its field limit is not asked for.
[[nodiscard]] std::vector<Sentence> exemptions(const survey::Keying& keying);

/// Every limit held against a band, once, with standard, edition, the table of each tier, and which tier's
/// figures are from memory.
[[nodiscard]] std::vector<Sentence> limits_checked(const survey::Keying& keying);

} // namespace loopwright::report::detail
