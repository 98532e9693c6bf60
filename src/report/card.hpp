#pragma once
// The retune card as JSON (docs/reference/cli.md), CSV and a page.
#include "report/page.hpp"
#include "survey/card.hpp"
#include "survey/keying.hpp"

#include <string>
#include <vector>

namespace loopwright::report {

/// keying: the report before keying of the same design, for voltage, distance and tune-up power; without it
/// those keys are null.
[[nodiscard]] std::string card_json(const survey::Card& card, const survey::Keying* keying);

/// A row a frequency, every figure in SI units.
[[nodiscard]] Table card_data(const survey::Card& card);

/// Hazards, tuning on the air, the table, remarks, how to read it, cautions.
[[nodiscard]] Page card_page(const survey::Card& card, const survey::Keying& keying);

/// One row for people and for scripts.
[[nodiscard]] Page card_row_page(const survey::CardRow& row, const survey::CardRequest& request);
[[nodiscard]] std::string card_row_json(const survey::CardRow& row, const survey::CardRequest& request);

/// Digits behind the decimal sign that a reading of this dial is worth: one more than its finest step, at
/// least one, at most four.
[[nodiscard]] int dial_decimals(const design::Dial& dial);

/// The order of tuning on the air and the greatest tune-up power at the operator's reach, from above to
/// below.
[[nodiscard]] std::vector<Sentence> tuning_order(const survey::Keying& keying);

/// "C1 C3": the added capacitors of the design that are there; "-" for none.
[[nodiscard]] std::string plugged_of(const survey::CardRow& row);

} // namespace loopwright::report
