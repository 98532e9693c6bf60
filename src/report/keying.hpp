#pragma once
// The sheet before keying, as JSON (docs/reference/cli.md), CSV and a page.
#include "report/page.hpp"
#include "survey/keying.hpp"

#include <string>

namespace loopwright::report {

[[nodiscard]] std::string keying_json(const survey::Keying& keying);

/// A row a band and limit, every figure in SI units.
[[nodiscard]] Table keying_data(const survey::Keying& keying);

/// Hazards, a row a band, reasons with what would mend them, distances by limit, tuning on the air,
/// assumptions with the limits' editions, cautions.
[[nodiscard]] Page keying_page(const survey::Keying& keying);

/// "within, as computed", "out of reach", "not established", "exceeded": at most 19 characters.
[[nodiscard]] const char* words_of(survey::KeyingVerdict verdict) noexcept;

/// The same, but "if people keep away" where a band is within only on that condition.
[[nodiscard]] const char* words_of(const survey::KeyingBand& band) noexcept;

} // namespace loopwright::report
