#pragma once
// What a row of the card says in words.
#include "survey/card.hpp"

namespace loopwright::survey::detail {

/// The remarks of a filled row, most important first. there: the design as it stands on the row's band.
[[nodiscard]] std::vector<CardRemark> card_remarks(const CardRow& row, const design::Design& there);

} // namespace loopwright::survey::detail
