#pragma once
// The retune card as a table of texts for the screen.
#include "models/text_table_model.hpp"
#include "survey/card.hpp"

namespace loopwright::models {

/// One row a row of the card, in its order.
[[nodiscard]] TextTable card_table(const survey::Card& card);

} // namespace loopwright::models
