#pragma once
// Board and card with the voltage of the sheet before keying: there soil and height are varied besides the
// losses, so that its upper end is the higher one. Every page then tells the same.
#include "survey/card.hpp"
#include "survey/keying.hpp"
#include "survey/survey.hpp"

#include <string>
#include <vector>

namespace loopwright::survey {

/// The rows with both ends of the capacitor's voltage as far from the nominal value as on the sheet, and the
/// verdicts that follow. Twice is the same as once. As they were: rows of another power than the sheet's, and
/// bands that it lacks.
[[nodiscard]] std::vector<BandRow> with_keying(std::vector<BandRow> rows, const Keying& keying);

/// The survey's rows, with the sheet's voltage where there is a sheet.
[[nodiscard]] std::vector<BandRow> rows_of(const Survey& survey, const Keying* keying);

/// The same for one point of a band.
[[nodiscard]] loop::OperatingPoint with_keying(loop::OperatingPoint point, const std::string& band,
                                               const Keying& keying);

/// The same for the card, its remarks made anew. Working frequencies of a band share its ends' ratio.
[[nodiscard]] Card with_keying(Card card, const Keying& keying);

} // namespace loopwright::survey
